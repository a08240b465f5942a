package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/// A growing row of doubles without an object for each, in pieces, so that growing copies nothing.
final class DoubleColumn {
    private static final int PIECE_BITS = 12;
    private static final int PIECE = 1 << PIECE_BITS;

    private double[][] pieces = new double[4][];
    private int size;

    void add(double value) {
        int piece = size >>> PIECE_BITS;
        int at = size & (PIECE - 1);
        if (at == 0) {
            begin(piece);
        }
        pieces[piece][at] = value;
        size++;
    }

    private void begin(int piece) {
        if (piece == pieces.length) {
            pieces = Arrays.copyOf(pieces, piece * 2);
        }
        pieces[piece] = new double[PIECE];
    }

    /// Makes the column `length` long with NaN in what is new.
    void padTo(int length) {
        while (size < length) {
            add(Double.NaN);
        }
    }

    /// Sets a value of a column that may still be shorter; what lies between holds NaN.
    void put(int index, double value) {
        padTo(index);
        if (index == size) {
            add(value);
        } else {
            set(index, value);
        }
    }

    void set(int index, double value) {
        pieces[index >>> PIECE_BITS][index & (PIECE - 1)] = value;
    }

    double get(int index) {
        return pieces[index >>> PIECE_BITS][index & (PIECE - 1)];
    }

    int size() {
        return size;
    }

    double[] toArray() {
        double[] all = new double[size];
        for (int from = 0; from < size; from += PIECE) {
            System.arraycopy(pieces[from >>> PIECE_BITS], 0, all, from, Math.min(PIECE, size - from));
        }
        return all;
    }

    /// Replaces every value by another.
    void replaceAll(DoubleUnaryOperator change) {
        for (int from = 0; from < size; from += PIECE) {
            double[] piece = pieces[from >>> PIECE_BITS];
            int end = Math.min(PIECE, size - from);
            for (int i = 0; i < end; i++) {
                piece[i] = change.applyAsDouble(piece[i]);
            }
        }
    }

    /// Gives its memory back; nothing can be read any more.
    void clear() {
        pieces = new double[4][];
        size = 0;
    }
}
