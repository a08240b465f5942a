package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/// A model fitted to raw samples by least squares, with what is known beforehand as extra residuals.
///
/// Shape: samples and a [Model] of them in, [Outcome] out: parameters in the order given, with their covariance. A
/// parameter is free or fixed, has bounds, and may have a prior that pulls it with the weight it deserves.
/// Error: a fit that does not settle is an outcome, not an exception.
/// Source: Levenberg and Marquardt's method with QR inside, by the optimisation library.
public final class ModelFit {
    private static final int MOST_STEPS = 200;
    private static final double COST_TOLERANCE = 1e-10;
    private static final double STEP_TOLERANCE = 1e-8;
    private static final double ON_BOUND = 1e-6;

    private ModelFit() {}

    /// What the model says the samples should be.
    @FunctionalInterface
    public interface Model {
        /// One value a sample, in the samples' order.
        double[] at(double[] parameters);
    }

    /// A quantity to be found: where to begin, what is known of it, how far it may go.
    ///
    /// Shape: `priorSd` is infinite when nothing is known; `low == high` fixes it.
    public record Parameter(String name, double start, double priorMean, double priorSd, double low, double high) {
        /// Free between bounds, nothing known.
        public static Parameter free(String name, double start, double low, double high) {
            return new Parameter(name, start, start, Double.POSITIVE_INFINITY, low, high);
        }

        /// Known as mean ± standard deviation, begun at the mean.
        public static Parameter known(String name, double mean, double sd, double low, double high) {
            return new Parameter(name, mean, mean, sd, low, high);
        }

        public static Parameter fixed(String name, double value) {
            return new Parameter(name, value, value, Double.POSITIVE_INFINITY, value, value);
        }

        boolean isFixed() {
            return low == high;
        }

        boolean hasPrior() {
            return !isFixed() && Double.isFinite(priorSd);
        }
    }

    /// What came of a fit.
    public sealed interface Outcome {
        /// Parameters that the samples and the priors agree on best.
        ///
        /// Shape: `cost` is the sum of all squared residuals, priors included; `reducedChiSquare` that of the
        /// samples alone over their number less that of the free parameters; `onBound` names parameters that
        /// ended at a bound, which are no results.
        record Settled(
                List<Parameter> parameters,
                double[] values,
                double[][] covariance,
                double cost,
                double reducedChiSquare,
                List<String> onBound)
                implements Outcome {
            /// The standard uncertainty of something that depends on the parameters with the given
            /// gradient.
            public double standardUncertainty(double[] gradient) {
                double variance = 0;
                for (int i = 0; i < gradient.length; i++) {
                    variance += gradient[i] * along(gradient, i);
                }
                return Math.sqrt(Math.max(0, variance));
            }

            /// The part of that standard uncertainty that comes from one parameter's prior being only a
            /// prior. It does not shrink when runs that share the parameter's true value are averaged.
            public double fromPriorOf(int parameter, double[] gradient) {
                var one = parameters.get(parameter);
                return one.hasPrior() ? Math.abs(along(gradient, parameter)) / one.priorSd() : 0;
            }

            private double along(double[] gradient, int row) {
                double sum = 0;
                for (int k = 0; k < gradient.length; k++) {
                    sum += covariance[row][k] * gradient[k];
                }
                return sum;
            }
        }

        /// No minimum was reached within the bound on steps.
        record NotSettled(double lastCost) implements Outcome {}
    }

    /// The best parameters for samples of standard deviation `sigma`.
    public static Outcome fit(double[] samples, double sigma, Model model, List<Parameter> parameters) {
        var residuals = new Residuals(samples, sigma, model, parameters);
        var problem = new LeastSquaresBuilder()
                .start(residuals.start())
                .target(new double[residuals.count()])
                .model(residuals::valueAndJacobian)
                .parameterValidator(residuals::withinBounds)
                .maxEvaluations(MOST_STEPS * 5)
                .maxIterations(MOST_STEPS)
                .build();
        var optimizer = new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(COST_TOLERANCE)
                .withParameterRelativeTolerance(STEP_TOLERANCE);
        try {
            return residuals.settled(optimizer.optimize(problem));
        } catch (MathRuntimeException stopped) {
            return new Outcome.NotSettled(residuals.lastCost);
        }
    }

    /// Residuals in units of their standard deviation: the samples' first, then one a prior.
    private static final class Residuals {
        private final double[] samples;
        private final double sigma;
        private final Model model;
        private final List<Parameter> parameters;
        private final List<Integer> free = new ArrayList<>();
        private final List<Integer> priors = new ArrayList<>();
        private double lastCost = Double.NaN;

        Residuals(double[] samples, double sigma, Model model, List<Parameter> parameters) {
            this.samples = samples;
            this.sigma = sigma;
            this.model = model;
            this.parameters = List.copyOf(parameters);
            for (int i = 0; i < parameters.size(); i++) {
                if (!parameters.get(i).isFixed()) {
                    free.add(i);
                }
                if (parameters.get(i).hasPrior()) {
                    priors.add(i);
                }
            }
        }

        int count() {
            return samples.length + priors.size();
        }

        double[] start() {
            return free.stream().mapToDouble(i -> parameters.get(i).start()).toArray();
        }

        RealVector withinBounds(RealVector point) {
            var clamped = point.copy();
            for (int k = 0; k < free.size(); k++) {
                var one = parameters.get(free.get(k));
                clamped.setEntry(k, Math.clamp(point.getEntry(k), one.low(), one.high()));
            }
            return clamped;
        }

        Pair<RealVector, RealMatrix> valueAndJacobian(RealVector point) {
            double[] at = point.toArray();
            double[] here = residuals(at);
            double cost = 0;
            for (double residual : here) {
                cost += residual * residual;
            }
            lastCost = cost;
            double[][] jacobian = new double[here.length][at.length];
            for (int k = 0; k < at.length; k++) {
                double step = 1e-6 * Math.max(Math.abs(at[k]), 0.1);
                double[] above = residuals(moved(at, k, step));
                double[] below = residuals(moved(at, k, -step));
                for (int i = 0; i < here.length; i++) {
                    jacobian[i][k] = (above[i] - below[i]) / (2 * step);
                }
            }
            return new Pair<>(new ArrayRealVector(here, false), new Array2DRowRealMatrix(jacobian, false));
        }

        private static double[] moved(double[] at, int index, double by) {
            double[] moved = at.clone();
            moved[index] += by;
            return moved;
        }

        private double[] residuals(double[] freeValues) {
            double[] values = all(freeValues);
            double[] predicted = model.at(values);
            double[] residuals = new double[count()];
            for (int i = 0; i < samples.length; i++) {
                residuals[i] = (predicted[i] - samples[i]) / sigma;
            }
            for (int k = 0; k < priors.size(); k++) {
                var one = parameters.get(priors.get(k));
                residuals[samples.length + k] = (values[priors.get(k)] - one.priorMean()) / one.priorSd();
            }
            return residuals;
        }

        private double[] all(double[] freeValues) {
            double[] values = parameters.stream().mapToDouble(Parameter::start).toArray();
            for (int k = 0; k < free.size(); k++) {
                values[free.get(k)] = freeValues[k];
            }
            return values;
        }

        Outcome settled(Optimum optimum) {
            double[] residuals = optimum.getResiduals().toArray();
            double ofSamples = 0;
            double ofAll = 0;
            for (int i = 0; i < residuals.length; i++) {
                ofAll += residuals[i] * residuals[i];
                ofSamples = i < samples.length ? ofAll : ofSamples;
            }
            double[] values = all(optimum.getPoint().toArray());
            return new Outcome.Settled(
                    parameters,
                    values,
                    covariance(optimum.getJacobian()),
                    ofAll,
                    ofSamples / Math.max(1, samples.length - free.size()),
                    atBounds(values));
        }

        private List<String> atBounds(double[] values) {
            return free.stream()
                    .filter(i -> isAtBound(parameters.get(i), values[i]))
                    .map(i -> parameters.get(i).name())
                    .toList();
        }

        private static boolean isAtBound(Parameter one, double value) {
            double width = one.high() - one.low();
            double margin = Double.isFinite(width) ? ON_BOUND * width : 0;
            return value <= one.low() + margin || value >= one.high() - margin;
        }

        /// (JᵀJ)⁻¹ by way of J = QR, so that JᵀJ is never formed.
        private double[][] covariance(RealMatrix jacobian) {
            int count = free.size();
            var r = new QRDecomposition(jacobian).getR().getSubMatrix(0, count - 1, 0, count - 1);
            double[][] inverse = invertedUpper(r);
            double[][] covariance = new double[parameters.size()][parameters.size()];
            for (int i = 0; i < count; i++) {
                for (int k = 0; k < count; k++) {
                    double sum = 0;
                    for (int c = Math.max(i, k); c < count; c++) {
                        sum += inverse[i][c] * inverse[k][c];
                    }
                    covariance[free.get(i)][free.get(k)] = sum;
                }
            }
            return covariance;
        }

        private static double[][] invertedUpper(RealMatrix upper) {
            int size = upper.getRowDimension();
            double[][] inverse = new double[size][size];
            for (int column = 0; column < size; column++) {
                for (int row = column; row >= 0; row--) {
                    double sum = row == column ? 1 : 0;
                    for (int k = row + 1; k <= column; k++) {
                        sum -= upper.getEntry(row, k) * inverse[k][column];
                    }
                    inverse[row][column] = sum / upper.getEntry(row, row);
                }
            }
            return inverse;
        }
    }
}
