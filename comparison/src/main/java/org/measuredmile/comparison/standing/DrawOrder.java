package org.measuredmile.comparison.standing;

import java.util.Arrays;

/// Puts the bikes in the order of one draw: a first place by a scale of even steps, then the rest by insertion.
///
/// Shape: a value and its bike's number are one long, the number in the last bits, so that nothing but longs is moved;
/// values that differ by less than those bits hold (10 of 52 for a thousand bikes) keep the order of the numbers.
/// The scale reaches from the first to the last value of the first draw sorted; what lies outside stands at its ends.
final class DrawOrder {
    private static final int STEPS_A_BIKE = 2;
    /// So many in one step are sorted by the library first.
    private static final int CROWD = 48;

    private final int count;
    private final long low;
    private final long[] sorted;
    private final long[] keys;
    private final int[] steps;
    private final int[] starts;
    private boolean hasScale;
    private double bottom;
    private double perUnit;

    DrawOrder(int count) {
        this.count = count;
        this.low = Long.highestOneBit(Math.max(1, count)) * 2 - 1;
        this.sorted = new long[count];
        this.keys = new long[count];
        this.steps = new int[count];
        this.starts = new int[count * STEPS_A_BIKE + 1];
    }

    /// The bike that is at a place of the order, both from 0.
    int bike(int place) {
        return (int) (sorted[place] & low);
    }

    /// Sorts the values of one draw of a block, smallest first.
    void sort(double[] values, int draw) {
        if (hasScale) {
            place(values, draw);
            insert();
            return;
        }
        for (int i = 0, at = draw; i < count; i++, at += DrawColumns.STRIDE) {
            sorted[i] = key(values[at], i);
        }
        Arrays.sort(sorted);
        setScale(values, draw);
    }

    /// A value as a long that is ordered as it is, its last bits given to the bike's number; both zeros are one.
    private long key(double value, int bike) {
        long bits = Double.doubleToRawLongBits(value + 0.0);
        return ((bits ^ ((bits >> 63) & Long.MAX_VALUE)) & ~low) | bike;
    }

    /// From the 2nd to the 98th hundredth of this draw: a wild value must not spread the scale.
    private void setScale(double[] values, int draw) {
        int margin = count / 50;
        bottom = values[bike(margin) * DrawColumns.STRIDE + draw];
        double top = values[bike(count - 1 - margin) * DrawColumns.STRIDE + draw];
        perUnit = top > bottom ? (starts.length - 1) / (top - bottom) : 0;
        hasScale = true;
    }

    private void place(double[] values, int draw) {
        Arrays.fill(starts, 0);
        int last = starts.length - 2;
        for (int i = 0, at = draw; i < count; i++, at += DrawColumns.STRIDE) {
            double value = values[at];
            keys[i] = key(value, i);
            int step = Math.max(0, Math.min(last, (int) ((value - bottom) * perUnit)));
            steps[i] = step;
            starts[step + 1]++;
        }
        for (int step = 0; step < last; step++) {
            starts[step + 1] += starts[step];
        }
        for (int i = 0; i < count; i++) {
            sorted[starts[steps[i]]++] = keys[i];
        }
    }

    private void insert() {
        sortCrowds();
        for (int i = 1; i < count; i++) {
            long key = sorted[i];
            int at = i;
            while (at > 0 && sorted[at - 1] > key) {
                sorted[at] = sorted[at - 1];
                at--;
            }
            sorted[at] = key;
        }
    }

    /// Sorts the steps that hold so many that insertion would be slow; the starts have moved to the steps' ends.
    private void sortCrowds() {
        int from = 0;
        for (int step = 0; step < starts.length - 1; step++) {
            int to = starts[step];
            if (to - from > CROWD) {
                Arrays.sort(sorted, from, to);
            }
            from = to;
        }
    }
}
