package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.measuredmile.recording.ChannelKind;

/// Takes out what a logger merely repeated between two epochs of a slower satellite receiver.
///
/// Without this a 10 Hz receiver logged at 50 Hz would seem to measure 50 times a second, and every filter downstream
/// would believe it.
final class HeldValues {
    private static final Set<ChannelKind> OF_THE_RECEIVER = Set.of(
            ChannelKind.LATITUDE,
            ChannelKind.LONGITUDE,
            ChannelKind.ALTITUDE,
            ChannelKind.SPEED,
            ChannelKind.COURSE,
            ChannelKind.SATELLITES,
            ChannelKind.DILUTION_OF_PRECISION);
    private static final Set<ChannelKind> INERTIAL = Set.of(
            ChannelKind.ACCELERATION_X,
            ChannelKind.ACCELERATION_Y,
            ChannelKind.ACCELERATION_Z,
            ChannelKind.TURN_RATE_X,
            ChannelKind.TURN_RATE_Y,
            ChannelKind.TURN_RATE_Z);

    private HeldValues() {}

    /// `marker` holds a slower clock's reading for each row, or is empty when there is none.
    static void takeOut(SampleTable table, LongColumn marker, Remarks remarks) {
        int[] receiver = columns(table, OF_THE_RECEIVER);
        boolean inertial = columns(table, INERTIAL).length > 0;
        if (receiver.length == 0 || !inertial || table.rows() < 3) {
            return;
        }
        boolean byMarker = marker.size() == table.rows() && agrees(table, marker, receiver);
        if (!byMarker && 2 * unchanged(table, receiver) < table.rows()) {
            return;
        }
        double[] last = new double[receiver.length];
        for (int row = 0; row < table.rows(); row++) {
            boolean held =
                    row > 0 && (byMarker ? marker.get(row) == marker.get(row - 1) : same(table, receiver, row, last));
            for (int i = 0; i < last.length; i++) {
                last[i] = held ? last[i] : table.get(receiver[i], row);
            }
            if (held && anything(table, receiver, row)) {
                remarks.count(Remark.HELD_VALUES, table.line(row));
            }
            for (int column : receiver) {
                if (held) {
                    table.set(column, row, Double.NaN);
                }
            }
        }
    }

    private static int[] columns(SampleTable table, Set<ChannelKind> kinds) {
        List<Integer> found = new ArrayList<>();
        for (int column = 0; column < table.columns().size(); column++) {
            if (kinds.contains(table.columns().get(column).kind())) {
                found.add(column);
            }
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    /// Whether no value of the receiver changes more often than the marker does: then the marker counts its epochs.
    /// (A logger may pass on a new position a row or two before the new time, so the changes need not coincide.)
    private static boolean agrees(SampleTable table, LongColumn marker, int[] receiver) {
        int epochs = 1;
        int[] changes = new int[receiver.length];
        for (int row = 1; row < table.rows(); row++) {
            epochs += marker.get(row) == marker.get(row - 1) ? 0 : 1;
            for (int i = 0; i < changes.length; i++) {
                int column = receiver[i];
                changes[i] += Double.compare(table.get(column, row), table.get(column, row - 1)) == 0 ? 0 : 1;
            }
        }
        int most = java.util.Arrays.stream(changes).max().orElse(0);
        return epochs > 1 && most * 5L <= epochs * 6L;
    }

    private static int unchanged(SampleTable table, int[] receiver) {
        int unchanged = 0;
        for (int row = 1; row < table.rows(); row++) {
            unchanged += !differs(table, receiver, row) && anything(table, receiver, row) ? 1 : 0;
        }
        return unchanged;
    }

    private static boolean differs(SampleTable table, int[] receiver, int row) {
        for (int column : receiver) {
            if (Double.compare(table.get(column, row), table.get(column, row - 1)) != 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean same(SampleTable table, int[] receiver, int row, double[] last) {
        for (int i = 0; i < last.length; i++) {
            if (Double.compare(table.get(receiver[i], row), last[i]) != 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean anything(SampleTable table, int[] receiver, int row) {
        for (int column : receiver) {
            if (!Double.isNaN(table.get(column, row))) {
                return true;
            }
        }
        return false;
    }
}
