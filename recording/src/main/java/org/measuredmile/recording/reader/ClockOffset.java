package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// Compares two clocks of one table and names the offset between them where it is a known one.
final class ClockOffset {
    private static final long SECOND_NS = 1_000_000_000L;

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
                    Optional<String> cause = ClockCause.of(offsetS);
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
}
