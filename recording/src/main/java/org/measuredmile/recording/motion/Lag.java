package org.measuredmile.recording.motion;

import java.util.Locale;
import org.measuredmile.recording.Channel;

/// By how much one channel comes later than another that shows the same motion.
///
/// Both are brought to one grid. At each shift within ± [#MOST_LAG_S] the correlation is taken; the best shift is
/// refined
/// by least squares, b(t) = α + β·a(t − τ) + e, whose uncertainty allows for residuals that resemble their neighbours:
/// u²(τ) = Σ_blocks (Σ e·a′)² / (Σ a′·b′)², blocks of [#BLOCK_S].
/// Unit: seconds; positive where the second channel is the later one.
/// Valid: two channels of one quantity, or of two that rise and fall together (see [#rate]).
/// Source: time delay by cross-correlation (Knapp and Carter 1976, IEEE Trans. ASSP 24, 320–327, from memory); variance
/// by blocks after White (1980), Econometrica 48, 817–838, from memory.
public sealed interface Lag {
    double MOST_LAG_S = 5;
    double BLOCK_S = 10;
    /// A flatter likeness is refused.
    double LEAST_CORRELATION = 0.6;
    /// Another shift as good as this share of the best is refused.
    double RIVAL = 0.95;
    /// A shift known no better than this is refused, s.
    double MOST_UNCERTAINTY_S = 0.5;

    /// A lag that was found.
    record Known(double lagS, double standardUncertaintyS, double correlation) implements Lag {
        /// The later channel with its lag taken out.
        public Channel removedFrom(Channel later) {
            double[] times = later.timesS().clone();
            for (int i = 0; i < times.length; i++) {
                times[i] -= lagS;
            }
            return new Channel(
                    later.kind(),
                    later.name(),
                    later.writtenUnit(),
                    later.source(),
                    new Channel.Series(times, later.values()));
        }
    }

    /// No lag, and why not.
    record Refused(String reason) implements Lag {}

    /// How much later `b` is than `a`.
    static Lag between(Channel a, Channel b) {
        double stepS = Math.max(0.02, Math.max(a.medianStepS(), b.medianStepS()));
        if (!(stepS <= MOST_LAG_S / 4)) {
            return new Refused("a channel has too few samples, or they are too far apart");
        }
        return new LagSearch(a, b, stepS).found();
    }

    /// How fast a channel rises, by differences over about `overS`: what an accelerometer shows of a speed.
    static Channel rate(Channel channel, double overS) {
        int reach = Math.max(1, (int) Math.round(overS / channel.medianStepS() / 2));
        int count = Math.max(0, channel.size() - 2 * reach);
        double[] times = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            double fromS = channel.timeS(i);
            double toS = channel.timeS(i + 2 * reach);
            times[i] = (fromS + toS) / 2;
            values[i] = (channel.value(i + 2 * reach) - channel.value(i)) / (toS - fromS);
        }
        return new Channel(
                channel.kind(),
                "rate of " + channel.name(),
                channel.writtenUnit() + "/s",
                channel.source(),
                new Channel.Series(times, values));
    }

    /// Words for a lag that does not stand out.
    static Refused flat(double correlation) {
        return new Refused(String.format(
                Locale.ROOT,
                "the channels are too little alike: correlation %.2f at best, at least %.2f needed",
                correlation,
                LEAST_CORRELATION));
    }
}
