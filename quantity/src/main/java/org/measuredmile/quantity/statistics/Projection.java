package org.measuredmile.quantity.statistics;

/// Vectors with directions taken out of them: what is left of a column beside others in a least-squares fit.
///
/// Shape: arrays of one length. A vector given to [#without] is changed and handed back.
/// Source: partial regression by projection (Frisch and Waugh, Econometrica 1 (1933) 387-401, from memory).
public final class Projection {
    private Projection() {}

    /// The direction of all ones, of length one.
    public static double[] constant(int size) {
        double[] direction = new double[size];
        java.util.Arrays.fill(direction, size == 0 ? 0 : 1 / Math.sqrt(size));
        return direction;
    }

    /// What is left of a vector beside a direction of length one.
    public static double[] without(double[] vector, double[] direction) {
        double share = dot(vector, direction);
        for (int i = 0; i < vector.length; i++) {
            vector[i] -= share * direction[i];
        }
        return vector;
    }

    /// The vector brought to length one; unchanged where it has none.
    public static double[] unit(double[] vector) {
        double length = Math.sqrt(dot(vector, vector));
        for (int i = 0; i < vector.length && length > 0; i++) {
            vector[i] /= length;
        }
        return vector;
    }

    public static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }
}
