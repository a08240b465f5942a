package org.measuredmile.recording.check;

import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.ClockCause;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.TestDay;

/// Lays a recording's date beside the test day's.
final class DateCheck {
    private static final double DAY_S = 86_400;

    private DateCheck() {}

    static List<Finding> of(DayRecording file, TestDay day) {
        List<Finding> findings = new ArrayList<>();
        if (file.isDated()) {
            LocalDate begins = file.begins().atZone(day.timeZone()).toLocalDate();
            LocalDate ends = file.ends().atZone(day.timeZone()).toLocalDate();
            if (day.date().isBefore(begins) || day.date().isAfter(ends)) {
                findings.add(otherDay(file, day, begins));
            }
            double zoneS = day.timeZone().getRules().getOffset(file.begins()).getTotalSeconds();
            if (!file.recording().zoneStated() && file.offsetS() == 0 && zoneS != 0) {
                findings.add(Finding.note(
                        "zone-proposed",
                        Place.in(file.name()),
                        String.format(
                                Locale.ROOT,
                                "its times state no zone and were read as UTC; if its clock shows the day's own "
                                        + "time (%s), clock-offset-s is %.0f",
                                day.timeZone().getId(),
                                -zoneS)));
            }
        }
        return findings;
    }

    private static Finding otherDay(DayRecording file, TestDay day, LocalDate begins) {
        long days = ChronoUnit.DAYS.between(begins, day.date());
        String cause = ClockCause.of(days * DAY_S)
                .filter(words -> Math.abs(days) > 2)
                .or(() -> byZone(file, day))
                .map(words -> ": " + words)
                .orElse("");
        return Finding.warning(
                "other-day",
                Place.in(file.name()),
                "it begins on " + begins + " (" + day.timeZone().getId() + "), the test day is " + day.date() + ", "
                        + Math.abs(days) + (Math.abs(days) == 1 ? " day " : " days ") + (days > 0 ? "later" : "earlier")
                        + cause,
                "if it is this day's, state its clock's offset in recordings.csv ("
                        + Duration.ofDays(days).toSeconds()
                        + " s for whole days); if not, take it out of the day's folder");
    }

    /// A file that only lies beyond midnight by its zone.
    private static java.util.Optional<String> byZone(DayRecording file, TestDay day) {
        LocalDate asWritten = file.begins().atZone(java.time.ZoneOffset.UTC).toLocalDate();
        return !file.recording().zoneStated() && asWritten.equals(day.date())
                ? java.util.Optional.of("as when its clock shows local time, which states no zone")
                : java.util.Optional.empty();
    }
}
