package org.measuredmile.publication.chart;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/// The clock that a recording's seconds are told by: where it started, in which zone; or nothing but its own seconds.
///
/// Unit: positions in seconds of the recording.
public record ClockTicks(Optional<Instant> start, ZoneId zone) {
    private static final double[] STEPS_S = {
        0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400
    };
    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.UK);
    private static final DateTimeFormatter TENTHS = DateTimeFormatter.ofPattern("HH:mm:ss.S", Locale.UK);
    private static final DateTimeFormatter HUNDREDTHS = DateTimeFormatter.ofPattern("HH:mm:ss.SS", Locale.UK);

    /// A recording that does not say when it began.
    public static final ClockTicks NONE = new ClockTicks(Optional.empty(), ZoneOffset.UTC);

    /// Clock time to hundredths of a second; seconds from the start where there is no clock.
    public String exact(double timeS) {
        return start.map(from -> HUNDREDTHS.format(at(from, timeS)))
                .orElseGet(() -> String.format(Locale.ROOT, "%.2f\u00a0s", timeS));
    }

    /// Round times of the clock inside a range, at most so many.
    List<Ticks.Tick> within(double fromS, double toS, int most) {
        double step = STEPS_S[STEPS_S.length - 1];
        for (double one : STEPS_S) {
            if ((toS - fromS) / one <= most) {
                step = one;
                break;
            }
        }
        double offsetS = start.map(this::secondOfDay).orElse(0.0);
        var ticks = new ArrayList<Ticks.Tick>();
        long first = (long) Math.ceil((fromS + offsetS) / step - 1e-9);
        long last = (long) Math.floor((toS + offsetS) / step + 1e-9);
        for (long i = first; i <= last; i++) {
            double timeS = i * step - offsetS;
            ticks.add(new Ticks.Tick(timeS, label(timeS, step)));
        }
        return ticks;
    }

    /// What the axis counts, in words.
    String words() {
        return start.isPresent() ? "clock time" : "from its start";
    }

    private String label(double timeS, double stepS) {
        if (start.isEmpty()) {
            return seconds(timeS, stepS);
        }
        // A tick of a tenth may lie a hair before it in floating point; a millisecond decides.
        var at = at(start.get(), timeS);
        return (stepS >= 60 ? MINUTES : stepS >= 1 ? SECONDS : TENTHS).format(at);
    }

    private static String seconds(double timeS, double stepS) {
        if (stepS < 1) {
            return String.format(Locale.ROOT, "%.1f\u00a0s", timeS);
        }
        long whole = Math.round(timeS);
        return whole < 60 ? whole + "\u00a0s" : String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private java.time.ZonedDateTime at(Instant from, double timeS) {
        return from.plusMillis(Math.round(1000 * timeS)).atZone(zone);
    }

    private double secondOfDay(Instant from) {
        return from.atZone(zone).toLocalTime().toNanoOfDay() / 1e9;
    }
}
