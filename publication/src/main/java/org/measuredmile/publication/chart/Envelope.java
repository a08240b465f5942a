package org.measuredmile.publication.chart;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.Channel;

/// A channel's samples as lines that hold every spike: of all samples in one step along the page, the first, the
/// lowest, the highest and the last are drawn, in their order. A gap ends a line and is told.
///
/// Shape: `lines` as path data; `samples` are single samples where they stand far enough apart to be seen as such.
record Envelope(List<String> lines, List<Gap> gaps, List<Sample> samples) {
    private static final double STEP_PX = 1;
    private static final double APART_PX = 7;
    private static final double SHORTEST_GAP_S = 0.1;

    /// A stretch of time without samples.
    record Gap(double fromS, double toS) {}

    /// One sample, in seconds and in the unit shown.
    record Sample(double timeS, double shown) {}

    /// The steps longer than this are gaps: well above the channel's own rhythm, also where that is uneven.
    static double gapLimitS(Channel channel) {
        int count = channel.size();
        if (count < 3) {
            return Double.POSITIVE_INFINITY;
        }
        double[] steps = new double[count - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = channel.timeS(i + 1) - channel.timeS(i);
        }
        java.util.Arrays.sort(steps);
        double middle = steps[steps.length / 2];
        double upper = steps[(int) ((steps.length - 1) * 0.9)];
        return Math.max(SHORTEST_GAP_S, upper > 1.4 * middle ? 3 * upper : 2.2 * middle);
    }

    /// The samples inside the time axis, with the next one beyond each end.
    static Envelope of(Channel channel, Scale scale, Axis time, Axis upright) {
        int from = Math.max(0, channel.indexAtOrAfter(time.low()) - 1);
        int to = Math.min(channel.size(), channel.indexAtOrAfter(time.high()) + 1);
        return new Drawn(channel, scale, time, upright).lines(from, to);
    }

    private static final class Drawn {
        private final Channel channel;
        private final Scale scale;
        private final Axis time;
        private final Axis upright;
        private final double gapLimitS;
        private final List<String> lines = new ArrayList<>();
        private final List<Gap> gaps = new ArrayList<>();
        private StringBuilder line = new StringBuilder();

        private Drawn(Channel channel, Scale scale, Axis time, Axis upright) {
            this.channel = channel;
            this.scale = scale;
            this.time = time;
            this.upright = upright;
            this.gapLimitS = gapLimitS(channel);
        }

        private Envelope lines(int from, int to) {
            int begin = from;
            while (begin < to) {
                int end = begin + 1;
                double column = column(begin);
                while (end < to && column(end) == column && !isGapBefore(end)) {
                    end++;
                }
                if (begin > from && isGapBefore(begin)) {
                    finish();
                    gaps.add(new Gap(channel.timeS(begin - 1), channel.timeS(begin)));
                }
                column(begin, end);
                begin = end;
            }
            finish();
            return new Envelope(lines, gaps, samples(from, to));
        }

        private double column(int index) {
            return Math.floor(time.at(channel.timeS(index)) / STEP_PX);
        }

        private boolean isGapBefore(int index) {
            return index > 0 && channel.timeS(index) - channel.timeS(index - 1) > gapLimitS;
        }

        private void column(int begin, int end) {
            int lowest = begin;
            int highest = begin;
            for (int i = begin + 1; i < end; i++) {
                lowest = channel.value(i) < channel.value(lowest) ? i : lowest;
                highest = channel.value(i) > channel.value(highest) ? i : highest;
            }
            int first = Math.min(lowest, highest);
            int second = Math.max(lowest, highest);
            point(begin);
            if (first != begin) {
                point(first);
            }
            if (second != first) {
                point(second);
            }
            if (end - 1 > second) {
                point(end - 1);
            }
        }

        private void point(int index) {
            line.append(line.isEmpty() ? 'M' : 'L')
                    .append(Svg.number(x(channel.timeS(index))))
                    .append(' ')
                    .append(Svg.number(upright.at(scale.shown(channel.value(index)))));
        }

        /// The neighbours beyond the view are drawn at its edge: near enough, as no more than one step is cut.
        private double x(double timeS) {
            return Math.clamp(time.at(timeS), time.fromPx(), time.toPx());
        }

        private void finish() {
            if (!line.isEmpty()) {
                lines.add(line.toString());
                line = new StringBuilder();
            }
        }

        private List<Sample> samples(int from, int to) {
            double inView = Math.max(1, to - from);
            if ((time.toPx() - time.fromPx()) / inView < APART_PX) {
                return List.of();
            }
            var samples = new ArrayList<Sample>();
            for (int i = from; i < to; i++) {
                if (channel.timeS(i) >= time.low() && channel.timeS(i) <= time.high()) {
                    samples.add(new Sample(channel.timeS(i), scale.shown(channel.value(i))));
                }
            }
            return samples;
        }
    }
}
