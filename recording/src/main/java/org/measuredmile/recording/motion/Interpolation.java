package org.measuredmile.recording.motion;

import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;

/// A channel's value between its samples, on the straight line between the two; nothing outside them or in a gap.
final class Interpolation {
    private Interpolation() {}

    static OptionalDouble at(Channel channel, double timeS, double longestStepS) {
        int next = channel.indexAtOrAfter(timeS);
        if (next < channel.size() && channel.timeS(next) == timeS) {
            return OptionalDouble.of(channel.value(next));
        }
        if (next == 0 || next >= channel.size()) {
            return OptionalDouble.empty();
        }
        double stepS = channel.timeS(next) - channel.timeS(next - 1);
        if (stepS > longestStepS) {
            return OptionalDouble.empty();
        }
        double share = (timeS - channel.timeS(next - 1)) / stepS;
        return OptionalDouble.of((1 - share) * channel.value(next - 1) + share * channel.value(next));
    }
}
