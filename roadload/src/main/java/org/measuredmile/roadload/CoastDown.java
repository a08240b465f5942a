package org.measuredmile.roadload;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.measuredmile.recording.motion.ModelFit;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// The road load of coasting runs, found through the equation of motion and never from differentiated speed.
///
/// Free: rolling coefficient, drag area, one grade and one wind common to the runs (with opposite signs on the way
/// back), and a start speed of each run.
/// Unit: SI; grade as rise over run on the way out; head wind on the way out, m/s.
public final class CoastDown {
    /// The longest step of the integration, in seconds.
    private static final double STEP_S = 0.5;

    private CoastDown() {}

    /// One run: whether it went out or back, and speeds at times.
    ///
    /// Shape: both arrays of the same length, times rising.
    public record Run(boolean out, double[] timesS, double[] speedsMps) {}

    /// What is known beforehand of the four common parameters: means and standard deviations, infinite ones for
    /// nothing.
    public record Before(
            double rolling,
            double rollingSd,
            double dragAreaM2,
            double dragAreaSdM2,
            double gradeSd,
            double headWindMps,
            double headWindSdMps) {
        /// What keeps the numbers in the world without deciding them; the wind is free.
        public static final Before USUAL = new Before(0.009, 0.02, 0.6, 1, 0.01, 0, 1.5);

        /// Nothing at all.
        public static final Before NOTHING = new Before(
                0.009,
                Double.POSITIVE_INFINITY,
                0.6,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                0,
                Double.POSITIVE_INFINITY);
    }

    /// What the runs say.
    ///
    /// Shape: `covariance` of rolling coefficient, drag area, grade and head wind, in that order, from
    /// residuals and priors alone; `reducedChiSquare` against the errors that were stated. Without the gusts
    /// among those, runs differ by far more than this covariance says.
    public record Found(
            RoadLoad load,
            double grade,
            double headWindMps,
            double[] startsMps,
            double[][] covariance,
            double reducedChiSquare,
            List<String> onBound) {
        public double correlationOfLoad() {
            return covariance[0][1] / StrictMath.sqrt(covariance[0][0] * covariance[1][1]);
        }
    }

    /// The answer of the equation.
    public sealed interface Outcome {
        record Settled(Found found) implements Outcome {}

        record NotSettled(double lastCost) implements Outcome {}
    }

    /// Fits all runs at once.
    ///
    /// Unit: `sigmaMps` the standard deviation of a sample of speed.
    public static Outcome fit(List<Run> runs, Setting setting, Before before, double sigmaMps) {
        return fit(runs, setting, before, samples -> divided(samples, sigmaMps));
    }

    /// Fits all runs at once, with errors of the speeds that lean on each other.
    ///
    /// Shape: a covariance matrix a run, positive definite, in (m/s)².
    /// Source: generalised least squares, by the factor of the covariance: Aitken, Proceedings of the Royal
    /// Society of Edinburgh 55 (1935) 42-48, from memory.
    public static Outcome fit(List<Run> runs, Setting setting, Before before, List<double[][]> covariances) {
        var factors = covariances.stream()
                .map(one -> new CholeskyDecomposition(new Array2DRowRealMatrix(one, false))
                        .getL()
                        .getData())
                .toList();
        return fit(runs, setting, before, samples -> whitened(samples, factors));
    }

    private static Outcome fit(List<Run> runs, Setting setting, Before before, UnaryOperator<double[]> whitened) {
        double[] samples = runs.stream()
                .flatMapToDouble(run -> java.util.Arrays.stream(run.speedsMps()))
                .toArray();
        var parameters = parameters(runs, before);
        var fitted = ModelFit.fit(
                whitened.apply(samples), 1, values -> whitened.apply(speeds(runs, setting, values)), parameters);
        return switch (fitted) {
            case ModelFit.Outcome.NotSettled not -> new Outcome.NotSettled(not.lastCost());
            case ModelFit.Outcome.Settled settled -> new Outcome.Settled(found(settled, runs.size()));
        };
    }

    private static double[] divided(double[] samples, double sigma) {
        return java.util.Arrays.stream(samples).map(one -> one / sigma).toArray();
    }

    /// The samples as independent ones of standard deviation 1: L⁻¹·x, run by run, LLᵀ the covariance.
    private static double[] whitened(double[] samples, List<double[][]> factors) {
        double[] white = new double[samples.length];
        int from = 0;
        for (double[][] factor : factors) {
            for (int i = 0; i < factor.length; i++) {
                double left = samples[from + i];
                for (int k = 0; k < i; k++) {
                    left -= factor[i][k] * white[from + k];
                }
                white[from + i] = left / factor[i][i];
            }
            from += factor.length;
        }
        return white;
    }

    /// What is found, in the fit's order: rolling coefficient, drag area, grade, head wind, a start speed of
    /// each run.
    public static List<Parameter> parameters(List<Run> runs, Before before) {
        var parameters = new ArrayList<Parameter>(List.of(
                new Parameter("rolling", before.rolling(), before.rolling(), before.rollingSd(), 0, 0.08),
                new Parameter("drag-area", before.dragAreaM2(), before.dragAreaM2(), before.dragAreaSdM2(), 0, 2.5),
                new Parameter("grade", 0, 0, before.gradeSd(), -0.06, 0.06),
                new Parameter("wind", before.headWindMps(), before.headWindMps(), before.headWindSdMps(), -8, 8)));
        for (int i = 0; i < runs.size(); i++) {
            double start = runs.get(i).speedsMps()[0];
            parameters.add(Parameter.free("start " + (i + 1), start, start - 2, start + 2));
        }
        return parameters;
    }

    private static double[] speeds(List<Run> runs, Setting setting, double[] values) {
        var load = new RoadLoad(values[0], values[1]);
        var out = new Coasting.Along(values[2], values[3]);
        int size = runs.stream().mapToInt(run -> run.timesS().length).sum();
        double[] all = new double[size];
        int at = 0;
        for (int i = 0; i < runs.size(); i++) {
            var run = runs.get(i);
            double[] speeds = Coasting.speedsMps(
                    load, setting, run.out() ? out : out.back(), values[4 + i], run.timesS(), STEP_S);
            System.arraycopy(speeds, 0, all, at, speeds.length);
            at += speeds.length;
        }
        return all;
    }

    private static Found found(ModelFit.Outcome.Settled settled, int runs) {
        double[] values = settled.values();
        double[][] covariance = new double[4][];
        for (int i = 0; i < 4; i++) {
            covariance[i] = java.util.Arrays.copyOf(settled.covariance()[i], 4);
        }
        return new Found(
                new RoadLoad(values[0], values[1]),
                values[2],
                values[3],
                java.util.Arrays.copyOfRange(values, 4, 4 + runs),
                covariance,
                settled.reducedChiSquare(),
                settled.onBound());
    }
}
