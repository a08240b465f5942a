package org.measuredmile.recording.reader;

/// A growing row of longs that go up by the same step nearly always: only where they do not is anything kept.
///
/// Line numbers go up by one from sample to sample, numbers of segments by nothing; millions of them cost a few bytes.
final class SteppedColumn {
    private final long step;
    private final LongColumn from = new LongColumn();
    private final LongColumn firsts = new LongColumn();
    private int size;
    private long next;

    SteppedColumn(long step) {
        this.step = step;
    }

    void add(long value) {
        if (size == 0 || value != next) {
            from.add(size);
            firsts.add(value);
        }
        next = value + step;
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
        return firsts.get(low) + step * (index - from.get(low));
    }
}
