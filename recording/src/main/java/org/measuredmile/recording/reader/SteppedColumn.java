package org.measuredmile.recording.reader;

/// A growing row of longs that mostly go up by one and the same step for a while: only where the step changes is
/// anything kept.
///
/// Line numbers go up by one from sample to sample, bytes by the length of a message, numbers of segments by nothing;
/// millions of them cost a few bytes.
final class SteppedColumn {
    private final LongColumn from = new LongColumn();
    private final LongColumn firsts = new LongColumn();
    private final LongColumn steps = new LongColumn();
    private int size;
    private long next;

    void add(long value) {
        int last = from.size() - 1;
        if (last >= 0 && size - from.get(last) == 1) {
            steps.set(last, value - firsts.get(last));
        } else if (last < 0 || value != next) {
            from.add(size);
            firsts.add(value);
            steps.add(0);
            last++;
        }
        next = value + steps.get(last);
        size++;
    }

    long get(int index) {
        int low = 0;
        int high = from.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (from.get(middle) <= index) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return firsts.get(low) + steps.get(low) * (index - from.get(low));
    }
}
