package org.measuredmile.recording.reader;

import java.util.Arrays;

/// A growing row of longs without an object for each.
final class LongColumn {
    private long[] values = new long[256];
    private int size;

    void add(long value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size + (size >> 1));
        }
        values[size++] = value;
    }

    long get(int index) {
        return values[index];
    }

    void set(int index, long value) {
        values[index] = value;
    }

    int size() {
        return size;
    }
}
