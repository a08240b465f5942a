package org.measuredmile.recording.reader;

import java.util.Arrays;

/// A growing row of longs without an object for each, in pieces, so that growing copies nothing.
final class LongColumn {
    private static final int PIECE_BITS = 12;
    private static final int PIECE = 1 << PIECE_BITS;

    private long[][] pieces = new long[4][];
    private int size;

    void add(long value) {
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
        pieces[piece] = new long[PIECE];
    }

    long get(int index) {
        return pieces[index >>> PIECE_BITS][index & (PIECE - 1)];
    }

    void set(int index, long value) {
        pieces[index >>> PIECE_BITS][index & (PIECE - 1)] = value;
    }

    int size() {
        return size;
    }

    /// Gives its memory back; nothing can be read any more.
    void clear() {
        pieces = new long[4][];
        size = 0;
    }
}
