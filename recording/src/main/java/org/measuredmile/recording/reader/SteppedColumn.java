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
    /// The stretch that grows now: where it began, with what, by which step, and what would carry it on.
    private int lastFrom;

    private long lastFirst;
    private long lastStep;
    private long next;

    void add(long value) {
        if (size - lastFrom == 1) {
            long step = value - lastFirst;
            steps.set(steps.size() - 1, step);
            lastStep = step;
            next = value + step;
        } else if (value != next || size == 0) {
            from.add(size);
            firsts.add(value);
            steps.add(0);
            lastFrom = size;
            lastFirst = value;
            next = value;
        } else {
            next += lastStep;
        }
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
