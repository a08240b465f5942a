package org.measuredmile.recording.reader;

import java.nio.ByteBuffer;

/// How the fields of one definition of the record message go into columns, worked out once and followed for each
/// message: no look-up and no object for a sample.
///
/// Shape: parallel arrays, one place for each field that is taken. `latitudeAt`, `longitudeAt` and `packedAt` are −1
/// where the message has none.
final class FitPlan {
    private final FitBase[] bases;
    private final int[] places;
    private final DoubleColumn[] columns;
    private final double[] divisors;
    private final double[] addends;
    private final boolean[] adds;
    final int latitudeAt;
    final int longitudeAt;
    final int packedAt;

    /// One field that is taken; `adds` is true for one whose value is added to what its column holds already.
    record Step(FitBase base, int place, DoubleColumn column, FitField field, boolean adds) {}

    /// Where the fields stand that are not plain numbers.
    record Special(int latitudeAt, int longitudeAt, int packedAt) {}

    FitPlan(java.util.List<Step> steps, Special special) {
        int size = steps.size();
        bases = new FitBase[size];
        places = new int[size];
        columns = new DoubleColumn[size];
        divisors = new double[size];
        addends = new double[size];
        adds = new boolean[size];
        for (int i = 0; i < size; i++) {
            Step step = steps.get(i);
            bases[i] = step.base;
            places[i] = step.place;
            columns[i] = step.column;
            divisors[i] = step.field.divisor();
            addends[i] = step.field.addend();
            adds[i] = step.adds;
        }
        latitudeAt = special.latitudeAt;
        longitudeAt = special.longitudeAt;
        packedAt = special.packedAt;
    }

    /// Puts the fields of a message that begins at a place of the window into a row.
    void apply(ByteBuffer bytes, int at, int row) {
        for (int i = 0; i < bases.length; i++) {
            double number = bases[i].number(bytes, at + places[i]);
            if (!Double.isNaN(number)) {
                double value = number / divisors[i] + addends[i];
                DoubleColumn column = columns[i];
                column.padTo(row + 1);
                column.set(row, adds[i] ? column.get(row) + value : value);
            }
        }
    }
}
