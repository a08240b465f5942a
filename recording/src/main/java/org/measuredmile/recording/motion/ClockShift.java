package org.measuredmile.recording.motion;

import java.util.Locale;
import org.measuredmile.recording.Channel;

/// By how much another instrument's clock is off, however far: from when each of the two says that the bike was at
/// work.
///
/// Both are turned into work or rest on one grid (above a tenth of its upper values or not), the likeness is taken at
/// every
/// shift that leaves at least half of the shorter one in common, and the best must stand out from all that lie further
/// than [#RIVAL_S] from it.
/// Unit: seconds; added to the other channel's times, the shift brings them to the first one's.
/// Valid: rides with stops. One without any has no edges to lay on each other and is refused.
/// Source: cross-correlation of signs (Van Vleck and Middleton 1966, Proceedings of the IEEE 54, 2-19, from memory).
public sealed interface ClockShift {
    double STEP_S = 2;
    double RIVAL_S = 30;
    double LEAST_LIKENESS = 0.5;
    /// Another shift as good as this share of the best is refused.
    double RIVAL = 0.9;

    /// A shift that was found.
    record Known(double shiftS, double standardUncertaintyS, double likeness) implements ClockShift {
        public Channel applied(Channel other) {
            double[] times = other.timesS().clone();
            for (int i = 0; i < times.length; i++) {
                times[i] += shiftS;
            }
            return new Channel(
                    other.kind(),
                    other.name(),
                    other.writtenUnit(),
                    other.source(),
                    new Channel.Series(times, other.values()));
        }
    }

    /// No shift, and why not.
    record Refused(String reason) implements ClockShift {}

    /// The shift that lays `other` on `speed`.
    static ClockShift of(Channel speed, Channel other) {
        return new ClockShiftSearch(speed, other).found();
    }

    static Refused flat(double likeness) {
        return new Refused(String.format(
                Locale.ROOT,
                "riding and the other record's work are too little alike at any shift: %.2f at best, at least"
                        + " %.2f needed",
                likeness,
                LEAST_LIKENESS));
    }
}
