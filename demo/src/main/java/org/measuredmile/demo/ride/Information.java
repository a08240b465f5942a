package org.measuredmile.demo.ride;

/// Fisher's information about some parameters, as a matrix that observations and prior knowledge add to.
///
/// Shape: linearised; rows are the sensitivities of one observation of unit variance.
/// Source: C. R. Rao (1945) and H. Cramér (1946), the bound on an estimate's variance; from memory.
final class Information {
    private final double[][] matrix;

    Information(int parameters) {
        matrix = new double[parameters][parameters];
    }

    /// An observation of unit variance.
    void observed(double[] sensitivity) {
        for (int i = 0; i < matrix.length; i++) {
            for (int k = 0; k < matrix.length; k++) {
                matrix[i][k] += sensitivity[i] * sensitivity[k];
            }
        }
    }

    /// What is known of one parameter beforehand.
    void known(int parameter, double sd) {
        matrix[parameter][parameter] += 1 / (sd * sd);
    }

    /// What is left about the parameters from `first` on when those before it are nobody's concern.
    Information without(int first) {
        double[][] a = copy();
        for (int p = 0; p < first; p++) {
            for (int i = p + 1; i < a.length; i++) {
                double factor = a[i][p] / a[p][p];
                for (int k = p; k < a.length; k++) {
                    a[i][k] -= factor * a[p][k];
                }
            }
        }
        var left = new Information(a.length - first);
        for (int i = first; i < a.length; i++) {
            System.arraycopy(a[i], first, left.matrix[i - first], 0, a.length - first);
        }
        return left;
    }

    /// The same from so many independent days or runs.
    Information times(int count) {
        var all = new Information(matrix.length);
        for (int i = 0; i < matrix.length; i++) {
            for (int k = 0; k < matrix.length; k++) {
                all.matrix[i][k] = count * matrix[i][k];
            }
        }
        return all;
    }

    /// The least variance of what changes with the parameters by a gradient: gᵀ·M⁻¹·g, by elimination.
    double variance(double[] gradient) {
        double[][] a = copy();
        double[] b = gradient.clone();
        double variance = 0;
        for (int p = 0; p < a.length; p++) {
            variance += b[p] * b[p] / a[p][p];
            for (int i = p + 1; i < a.length; i++) {
                double factor = a[i][p] / a[p][p];
                for (int k = p; k < a.length; k++) {
                    a[i][k] -= factor * a[p][k];
                }
                b[i] -= factor * b[p];
            }
        }
        return variance;
    }

    private double[][] copy() {
        double[][] copied = new double[matrix.length][];
        for (int i = 0; i < copied.length; i++) {
            copied[i] = matrix[i].clone();
        }
        return copied;
    }
}
