package org.measuredmile.recording.reader;

import java.util.Arrays;

/// A growing row of doubles without an object for each.
final class DoubleColumn {
    private double[] values = new double[256];
    private int size;

    void add(double value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + (size >> 1));
        }
        values[size++] = value;
    }

    /// Makes the column `length` long with NaN in what is new.
    void padTo(int length) {
        while (size < length) {
            add(Double.NaN);
        }
    }

    void set(int index, double value) {
        values[index] = value;
    }

    double get(int index) {
        return values[index];
    }

    int size() {
        return size;
    }

    double[] toArray() {
        return Arrays.copyOf(values, size);
    }
}
