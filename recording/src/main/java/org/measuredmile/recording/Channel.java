package org.measuredmile.recording;

/// One quantity as an instrument recorded it: only samples that exist, in order of time.
///
/// Shape: `timesS` and `values` have the same length; times are strictly increasing; no value is NaN or infinite. A
/// missing sample is a sample that is not there. Arrays are handed over, not copied: neither side may write to them.
/// Unit: times in seconds from the recording's start; values in the unit of `kind`.
/// Error: IllegalArgumentException when the shape is broken.
public final class Channel {
    private final ChannelKind kind;
    private final String name;
    private final String writtenUnit;
    private final String source;
    private final double[] timesS;
    private final double[] values;

    /// @param name what the instrument called it
    /// @param writtenUnit the unit it was written in, as text; empty when the format fixes it
    public Channel(ChannelKind kind, String name, String writtenUnit, Series series) {
        this(kind, name, writtenUnit, "", series);
    }

    /// @param source the device that measured it, where the file tells it from the one that wrote the file;
    /// else empty
    public Channel(ChannelKind kind, String name, String writtenUnit, String source, Series series) {
        this.kind = kind;
        this.name = name;
        this.writtenUnit = writtenUnit;
        this.source = source;
        this.timesS = series.timesS();
        this.values = series.values();
        requireShape();
    }

    /// Times and values of the same length.
    public record Series(double[] timesS, double[] values) {}

    private void requireShape() {
        if (timesS.length != values.length) {
            throw new IllegalArgumentException(name + ": " + timesS.length + " times, " + values.length + " values");
        }
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < timesS.length; i++) {
            if (!(timesS[i] > before) || !Double.isFinite(values[i])) {
                throw new IllegalArgumentException(
                        name + ": sample " + i + " at " + timesS[i] + " s after " + before + " s holds " + values[i]);
            }
            before = timesS[i];
        }
    }

    public ChannelKind kind() {
        return kind;
    }

    public String name() {
        return name;
    }

    public String writtenUnit() {
        return writtenUnit;
    }

    /// The device that measured it, where the file says so; else empty.
    public String source() {
        return source;
    }

    public int size() {
        return timesS.length;
    }

    public boolean isEmpty() {
        return timesS.length == 0;
    }

    public double timeS(int index) {
        return timesS[index];
    }

    public double value(int index) {
        return values[index];
    }

    /// The times, in seconds; not to be written to.
    public double[] timesS() {
        return timesS;
    }

    /// The values; not to be written to.
    public double[] values() {
        return values;
    }

    /// The index of the first sample at or after a time; the size when there is none.
    public int indexAtOrAfter(double timeS) {
        int found = java.util.Arrays.binarySearch(timesS, timeS);
        return found >= 0 ? found : -found - 1;
    }

    /// The samples with `fromS <= time <= toS`, as a channel of its own.
    public Channel between(double fromS, double toS) {
        int from = indexAtOrAfter(fromS);
        int to = indexAtOrAfter(Math.nextUp(toS));
        int end = Math.max(from, to);
        return new Channel(
                kind,
                name,
                writtenUnit,
                source,
                new Series(
                        java.util.Arrays.copyOfRange(timesS, from, end),
                        java.util.Arrays.copyOfRange(values, from, end)));
    }

    /// The middle of the steps between samples, in seconds; NaN for fewer than two samples.
    public double medianStepS() {
        if (timesS.length < 2) {
            return Double.NaN;
        }
        double[] steps = new double[timesS.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timesS[i + 1] - timesS[i];
        }
        java.util.Arrays.sort(steps);
        return steps[steps.length / 2];
    }
}
