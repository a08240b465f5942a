package org.measuredmile.comparison.control;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.measuredmile.comparison.control.MixedModel.Factor;

/// The restricted likelihood of a mixed model: what the standard deviations between levels would make of
/// the values.
///
/// Shape: a random factor's spread is given as its standard deviation over that between runs, in the order
/// of the factors. The criterion is −2 times the logarithm of the restricted likelihood; the run's own
/// variance is at its best.
/// Error: IllegalArgumentException when as many fixed levels as values leave nothing for the runs.
/// Source: Bates and others (2015), see the package, equations 35 to 42.
final class Reml {
    private static final double TINY = 1e-300;

    private final MixedModel model;
    private final List<Factor> factors;
    private final int[] starts;
    private final int random;
    private final int size;
    private final RealMatrix products;
    private final RealVector withValues;
    private final double squares;

    Reml(MixedModel model) {
        this.model = model;
        this.factors = model.all();
        this.starts = new int[factors.size()];
        int at = 0;
        for (int k = 0; k < starts.length; k++) {
            starts[k] = at;
            at += factors.get(k).count();
        }
        this.size = at;
        this.random = size - model.fixed().count();
        if (model.n() <= model.fixed().count()) {
            throw new IllegalArgumentException(
                    model.n() + " values for " + model.fixed().count() + " fixed levels");
        }
        this.products = new Array2DRowRealMatrix(size, size);
        this.withValues = new ArrayRealVector(size);
        double sum = 0;
        for (int i = 0; i < model.n(); i++) {
            sum += model.y()[i] * model.y()[i];
            for (int k = 0; k < starts.length; k++) {
                int row = column(k, i);
                withValues.addToEntry(row, model.y()[i]);
                for (int j = 0; j < starts.length; j++) {
                    products.addToEntry(row, column(j, i), 1);
                }
            }
        }
        this.squares = sum;
    }

    private int column(int factor, int value) {
        return starts[factor] + factors.get(factor).levels()[value];
    }

    /// What some ratios of spread give.
    ///
    /// Shape: `covariance` is that of the fixed effects over the run variance, in the order of the levels;
    /// `effects` are the fixed effects, then `predicted` those of the random levels, factor after factor.
    record Fit(double criterion, double runVariance, double[] effects, double[] predicted, double[][] covariance) {}

    int degreesOfFreedom() {
        return model.n() - model.fixed().count();
    }

    double criterion(double... ratios) {
        var system = system(ratios);
        var solver = decompose(system);
        var right = right(ratios);
        return criterion(solver, left(solver, right));
    }

    Fit fit(double... ratios) {
        var solver = decompose(system(ratios));
        var right = right(ratios);
        RealVector solved = solver.getSolver().solve(right);
        double left = Math.max(TINY, squares - solved.dotProduct(right));
        int fixed = size - random;
        double[] effects = new double[fixed];
        for (int i = 0; i < fixed; i++) {
            effects[i] = model.origin() + solved.getEntry(random + i);
        }
        double[] predicted = new double[random];
        for (int i = 0; i < random; i++) {
            predicted[i] = solved.getEntry(i) * ratioOf(i, ratios);
        }
        double[][] covariance = solver.getSolver()
                .getInverse()
                .getSubMatrix(random, size - 1, random, size - 1)
                .getData();
        return new Fit(criterion(solver, left), left / degreesOfFreedom(), effects, predicted, covariance);
    }

    private double left(CholeskyDecomposition solver, RealVector right) {
        return Math.max(TINY, squares - solver.getSolver().solve(right).dotProduct(right));
    }

    private double criterion(CholeskyDecomposition solver, double left) {
        RealMatrix lower = solver.getL();
        double logDeterminant = 0;
        for (int i = 0; i < size; i++) {
            logDeterminant += 2 * StrictMath.log(lower.getEntry(i, i));
        }
        int degrees = degreesOfFreedom();
        return logDeterminant + degrees * (1 + StrictMath.log(2 * Math.PI * left / degrees));
    }

    private static CholeskyDecomposition decompose(RealMatrix system) {
        return new CholeskyDecomposition(system, 1e-9, 1e-14);
    }

    private RealMatrix system(double[] ratios) {
        var system = products.copy();
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                double one = system.getEntry(i, j) * ratioOf(i, ratios) * ratioOf(j, ratios);
                system.setEntry(i, j, i == j && i < random ? one + 1 : one);
            }
        }
        return system;
    }

    private RealVector right(double[] ratios) {
        var right = withValues.copy();
        for (int i = 0; i < random; i++) {
            right.setEntry(i, right.getEntry(i) * ratioOf(i, ratios));
        }
        return right;
    }

    private double ratioOf(int column, double[] ratios) {
        if (column >= random) {
            return 1;
        }
        int factor = ratios.length - 1;
        while (starts[factor] > column) {
            factor--;
        }
        return ratios[factor];
    }
}
