package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.List;

/// Components of variance by sums of squares: each random factor in turn takes out what the fixed factor
/// and those before it leave, and each sum of squares is set equal to its expectation.
///
/// Shape: `lines` in the order of the random factors, then the runs. A factor without a degree of freedom
/// of its own cannot be told from those before it. A variance may come out negative; it stands as it is,
/// and means zero.
/// Source: Henderson's third method, as SAS calls it Type I; for balanced values the usual analysis of
/// variance.
record SequentialSquares(List<Line> lines) {
    private static final double NOTHING_LEFT = 1e-9;

    /// One factor's share: sum of squares, degrees of freedom, and the variance that follows.
    record Line(String name, double sumOfSquares, int degreesOfFreedom, double variance) {
        double meanSquare() {
            return sumOfSquares / degreesOfFreedom;
        }

        /// The variance as it is reported.
        double reported() {
            return Math.max(0, variance);
        }
    }

    SequentialSquares {
        lines = List.copyOf(lines);
    }

    static SequentialSquares of(MixedModel model) {
        return new Orthogonal(model).solve();
    }

    /// An orthogonal basis, grown factor by factor, and the values less their part along it.
    private static final class Orthogonal {
        private final MixedModel model;
        private final List<double[]> basis = new ArrayList<>();
        private final double[] rest;

        Orthogonal(MixedModel model) {
            this.model = model;
            this.rest = model.y().clone();
        }

        SequentialSquares solve() {
            var random = model.random();
            grow(model.fixed());
            int count = random.size();
            double[] squares = new double[count + 1];
            int[] degrees = new int[count + 1];
            double[][] expected = new double[count + 1][count];
            for (int k = 0; k < count; k++) {
                int before = basis.size();
                squares[k] = grow(random.get(k));
                degrees[k] = basis.size() - before;
                for (int j = k; j < count; j++) {
                    expected[k][j] = coefficient(before, random.get(j));
                }
            }
            for (double one : rest) {
                squares[count] += one * one;
            }
            degrees[count] = model.n() - basis.size();
            return backwards(squares, degrees, expected);
        }

        private SequentialSquares backwards(double[] squares, int[] degrees, double[][] expected) {
            int count = squares.length - 1;
            double[] variances = new double[count + 1];
            variances[count] = degrees[count] == 0 ? 0 : squares[count] / degrees[count];
            for (int k = count - 1; k >= 0; k--) {
                double known = degrees[k] * variances[count];
                for (int j = k + 1; j < count; j++) {
                    known += expected[k][j] * variances[j];
                }
                variances[k] = degrees[k] == 0 ? 0 : (squares[k] - known) / expected[k][k];
            }
            var lines = new ArrayList<Line>();
            for (int k = 0; k <= count; k++) {
                String name = k < count ? model.random().get(k).name() : "run";
                lines.add(new Line(name, squares[k], degrees[k], variances[k]));
            }
            return new SequentialSquares(lines);
        }

        /// Adds a factor's columns to the basis, takes them out of the values, and gives the squares so
        /// taken out.
        private double grow(MixedModel.Factor factor) {
            double squares = 0;
            for (int level = 0; level < factor.count(); level++) {
                double[] column = new double[model.n()];
                double size = 0;
                for (int i = 0; i < column.length; i++) {
                    column[i] = factor.levels()[i] == level ? 1 : 0;
                    size += column[i];
                }
                // Twice is enough: what rounding left of the others is gone after the second time.
                takeOut(column);
                takeOut(column);
                double left = Math.sqrt(dot(column, column));
                if (left <= NOTHING_LEFT * Math.sqrt(size)) {
                    continue;
                }
                for (int i = 0; i < column.length; i++) {
                    column[i] /= left;
                }
                basis.add(column);
                double along = dot(column, rest);
                squares += along * along;
                add(rest, column, -along);
            }
            return squares;
        }

        private void takeOut(double[] column) {
            for (double[] one : basis) {
                add(column, one, -dot(column, one));
            }
        }

        /// What a factor's variance adds to the expectation of the squares along the basis from a vector
        /// on.
        private double coefficient(int from, MixedModel.Factor factor) {
            double sum = 0;
            for (double[] one : basis.subList(from, basis.size())) {
                double[] byLevel = new double[factor.count()];
                for (int i = 0; i < one.length; i++) {
                    byLevel[factor.levels()[i]] += one[i];
                }
                sum += dot(byLevel, byLevel);
            }
            return sum;
        }

        private static double dot(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < a.length; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }

        private static void add(double[] to, double[] what, double times) {
            for (int i = 0; i < to.length; i++) {
                to[i] += times * what[i];
            }
        }
    }

    Line line(String name) {
        return lines.stream()
                .filter(line -> line.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
