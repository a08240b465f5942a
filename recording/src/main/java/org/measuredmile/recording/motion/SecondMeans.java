package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.measuredmile.recording.Channel;

/// A speed channel averaged over whole seconds of its own time base.
///
/// Shape: `speedMps[i]` is the mean of the samples in the second that starts `startS + i` seconds after the recording's
/// start; NaN where fewer than half of a second's samples are there. No second is filled in.
/// Unit: metres per second.
public record SecondMeans(double[] speedMps, int startS) {
    /// Averages a channel. One sample a second or more is wanted; of a slower channel every other second is
    /// missing.
    public static SecondMeans of(Channel channel) {
        if (channel.isEmpty()) {
            return new SecondMeans(new double[0], 0);
        }
        int first = (int) Math.floor(channel.timeS(0));
        int last = (int) Math.floor(channel.timeS(channel.size() - 1));
        double[] sums = new double[last - first + 1];
        int[] counts = new int[sums.length];
        for (int i = 0; i < channel.size(); i++) {
            int second = (int) Math.floor(channel.timeS(i)) - first;
            sums[second] += channel.value(i);
            counts[second]++;
        }
        double perSecond = channel.size() < 2 ? 1 : Math.max(1, 1 / channel.medianStepS());
        for (int i = 0; i < sums.length; i++) {
            sums[i] = counts[i] > 0 && counts[i] >= perSecond / 2 ? sums[i] / counts[i] : Double.NaN;
        }
        return new SecondMeans(sums, first);
    }

    /// The same, every speed multiplied.
    public SecondMeans times(double factor) {
        return new SecondMeans(
                Arrays.stream(speedMps).map(speed -> speed * factor).toArray(), startS);
    }

    public int size() {
        return speedMps.length;
    }

    public boolean isPresent(int second) {
        return !Double.isNaN(speedMps[second]);
    }

    /// Seconds from the recording's start at which a second begins.
    public double timeS(int second) {
        return startS + (double) second;
    }

    /// Seconds from `from` to before `to`, by index.
    public record Span(int from, int to) {
        public int lengthS() {
            return to - from;
        }
    }

    /// The spans in which the bike moves: no second slower than the least speed, no gap longer than the given one.
    ///
    /// Shape: in order; a span begins and ends with a second that is there.
    public List<Span> moving(double leastMps, int longestGapS) {
        var spans = new ArrayList<Span>();
        int from = -1;
        int last = -1;
        for (int i = 0; i < speedMps.length; i++) {
            boolean moves = speedMps[i] >= leastMps;
            boolean stands = speedMps[i] < leastMps;
            if (from >= 0 && (stands || i - last - 1 > longestGapS)) {
                spans.add(new Span(from, last + 1));
                from = -1;
            }
            if (moves) {
                from = from < 0 ? i : from;
                last = i;
            }
        }
        if (from >= 0) {
            spans.add(new Span(from, last + 1));
        }
        return spans;
    }

    /// The seconds of a span that are there, by index.
    public int[] presentIn(Span span) {
        return java.util.stream.IntStream.range(span.from(), span.to())
                .filter(this::isPresent)
                .toArray();
    }

    /// Speeds at the given seconds.
    public double[] at(int[] seconds) {
        return Arrays.stream(seconds).mapToDouble(i -> speedMps[i]).toArray();
    }
}
