package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Compares two clocks of one table and names the offset between them where it is a known one.
///
/// Source: GPS time ran 18 s ahead of UTC from 2017 on (IERS Bulletin C 52); its week number counts 1024 weeks, which
/// are 7168 days (IS-GPS-200).
final class ClockOffset {
    private static final long SECOND_NS = 1_000_000_000L;
    private static final long HOUR_S = 3600;
    private static final long FARTHEST_ZONE_H = 14;
    private static final long SLACK_S = 3;
    private static final long ROLLOVER_S = 7168 * 86_400L;

    private ClockOffset() {}

    /// A finding where the chosen clock is away from another one that counts from 1970.
    static Optional<Finding> of(Clock chosen, List<Clock> all, ClockChoice.Sample sample) {
        for (Clock other : all) {
            if (!chosen.isAbsolute() || other.form() != Clock.Form.EPOCH || other.equals(chosen)) {
                continue;
            }
            for (String[] cells : sample.rows()) {
                OptionalLong one = chosen.read(cells, sample.decimalMark());
                OptionalLong two = other.read(cells, sample.decimalMark());
                if (one.isPresent() && two.isPresent()) {
                    long offsetS = Math.floorDiv(one.getAsLong() - two.getAsLong(), SECOND_NS);
                    Optional<String> cause = cause(offsetS);
                    if (cause.isPresent()) {
                        return Optional.of(finding(offsetS, cause.get(), other, sample));
                    }
                    break;
                }
            }
        }
        return Optional.empty();
    }

    private static Finding finding(long offsetS, String cause, Clock other, ClockChoice.Sample sample) {
        String name = sample.names().get(other.timeColumn()).text();
        return Finding.warning(
                "clock-offset",
                Place.in(sample.source()),
                "the times are " + Math.abs(offsetS) + " s " + (offsetS > 0 ? "ahead of" : "behind") + " \""
                        + Remarks.quoted(name) + "\": " + cause,
                "state the clock's offset in recordings.csv; nothing was shifted");
    }

    private static Optional<String> cause(long offsetS) {
        long hours = Math.round(offsetS / (double) HOUR_S);
        if (hours != 0 && Math.abs(hours) <= FARTHEST_ZONE_H && Math.abs(offsetS - hours * HOUR_S) <= SLACK_S) {
            return Optional.of("whole hours, as when one is local time and the other UTC");
        }
        if (Math.abs(Math.abs(offsetS) - 18) <= 1) {
            return Optional.of("18 s, as when one is GPS time and the other UTC");
        }
        boolean rollover = Math.abs(Math.abs(offsetS) - ROLLOVER_S) <= 86_400;
        return rollover ? Optional.of("7168 days, as when a receiver miscounts 1024 weeks") : Optional.empty();
    }
}
