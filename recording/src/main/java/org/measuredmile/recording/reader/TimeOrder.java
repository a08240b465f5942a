package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/// The rows of a table that make a strictly increasing time base, in that order.
///
/// Blocks that lie entirely before or after one another (an older part of a logger's memory after a newer one) are put
/// in their order of time. Of what remains out of order, as few rows as possible are left out: those not in the longest
/// strictly increasing subsequence (Schensted, Canadian Journal of Mathematics 13 (1961) 179-191), so that one wild
/// time far ahead costs itself and not all that follows.
///
/// `movedBlocks` counts blocks that changed place; `dropped` rows in file order, those with equal times in
/// `repeated`, those whose time steps back in `backwards`.
record TimeOrder(int[] rows, int movedBlocks, List<Integer> repeated, List<Integer> backwards) {

    static TimeOrder of(SampleTable table) {
        int[] timed = timedRows(table);
        if (isRising(table, timed)) {
            return new TimeOrder(timed, 0, List.of(), List.of());
        }
        List<int[]> blocks = blocks(table, timed);
        List<int[]> sorted = new ArrayList<>(blocks);
        sorted.sort(Comparator.comparingLong(block -> table.timeNs(timed[block[0]])));
        int moved = 0;
        int[] candidate = timed;
        if (blocks.size() > 1 && areDisjoint(table, timed, sorted)) {
            for (int i = 0; i < blocks.size(); i++) {
                moved += blocks.get(i)[0] == sorted.get(i)[0] ? 0 : 1;
            }
            candidate = joined(timed, sorted);
        }
        boolean[] kept = longestRise(table, candidate);
        return split(table, candidate, kept, moved);
    }

    /// The rows in order of time, each time once: for epochs whose time is the instrument's own stamp of the
    /// sample, written late but not wrong. Rows with the same time must have been joined before.
    static TimeOrder sorted(SampleTable table) {
        int[] timed = timedRows(table);
        if (isRising(table, timed)) {
            return new TimeOrder(timed, 0, List.of(), List.of());
        }
        int[] order = Arrays.stream(timed)
                .boxed()
                .sorted(Comparator.comparingLong(table::timeNs))
                .mapToInt(Integer::intValue)
                .toArray();
        boolean[] kept = longestRise(table, order);
        return split(table, order, kept, 0);
    }

    private static int[] timedRows(SampleTable table) {
        int[] timed = new int[table.rows()];
        int size = 0;
        for (int row = 0; row < table.rows(); row++) {
            if (table.timeNs(row) != SampleTable.UNTIMED) {
                timed[size++] = row;
            }
        }
        return size == timed.length ? timed : Arrays.copyOf(timed, size);
    }

    private static boolean isRising(SampleTable table, int[] rows) {
        for (int i = 1; i < rows.length; i++) {
            if (table.timeNs(rows[i]) <= table.timeNs(rows[i - 1])) {
                return false;
            }
        }
        return true;
    }

    private static List<int[]> blocks(SampleTable table, int[] timed) {
        List<int[]> blocks = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= timed.length; i++) {
            if (i == timed.length || table.timeNs(timed[i]) < table.timeNs(timed[i - 1])) {
                blocks.add(new int[] {from, i});
                from = i;
            }
        }
        return timed.length == 0 ? List.of() : blocks;
    }

    private static boolean areDisjoint(SampleTable table, int[] timed, List<int[]> sorted) {
        for (int i = 1; i < sorted.size(); i++) {
            long endBefore = table.timeNs(timed[sorted.get(i - 1)[1] - 1]);
            if (table.timeNs(timed[sorted.get(i)[0]]) < endBefore) {
                return false;
            }
        }
        return true;
    }

    private static int[] joined(int[] timed, List<int[]> blocks) {
        int[] all = new int[timed.length];
        int size = 0;
        for (int[] block : blocks) {
            System.arraycopy(timed, block[0], all, size, block[1] - block[0]);
            size += block[1] - block[0];
        }
        return all;
    }

    private static boolean[] longestRise(SampleTable table, int[] order) {
        int[] tails = new int[order.length];
        int[] before = new int[order.length];
        int length = 0;
        for (int i = 0; i < order.length; i++) {
            long time = table.timeNs(order[i]);
            int low = 0;
            int high = length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (table.timeNs(order[tails[middle]]) < time) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            before[i] = low == 0 ? -1 : tails[low - 1];
            // Of rows with the same time the first one written is kept.
            if (low == length || table.timeNs(order[tails[low]]) > time) {
                tails[low] = i;
            }
            length = Math.max(length, low + 1);
        }
        boolean[] kept = new boolean[order.length];
        for (int i = length == 0 ? -1 : tails[length - 1]; i >= 0; i = before[i]) {
            kept[i] = true;
        }
        return kept;
    }

    private static TimeOrder split(SampleTable table, int[] order, boolean[] kept, int moved) {
        List<Integer> repeated = new ArrayList<>();
        List<Integer> backwards = new ArrayList<>();
        int[] rows = new int[order.length];
        int size = 0;
        for (int i = 0; i < order.length; i++) {
            if (kept[i]) {
                rows[size++] = order[i];
            } else if (size > 0 && table.timeNs(rows[size - 1]) == table.timeNs(order[i])) {
                repeated.add(order[i]);
            } else {
                backwards.add(order[i]);
            }
        }
        return new TimeOrder(Arrays.copyOf(rows, size), moved, repeated, backwards);
    }
}
