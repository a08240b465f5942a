package org.measuredmile.recording.day;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/// The stretch of a recording that a person set for a run: the run is what lies in it and nothing else.
///
/// Shape: `0 <= fromS < toS`, at most a day apart.
/// Unit: seconds of the recording's own clock, before its clock offset; both ends belong to it.
public record Window(double fromS, double toS) {
    /// No run lasts longer, s.
    public static final double LONGEST_S = 86_400;

    private static final Pattern TEXT = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,30})?)-(\\d{1,9}(?:\\.\\d{1,30})?)");

    /// What came of reading a window's text.
    sealed interface Read {
        record Good(Window window) implements Read {}

        /// The text is no pair of times.
        record NoWindow() implements Read {}

        /// The times are there, and `why` they cannot be the ends of a run.
        record Wrong(String why) implements Read {}
    }

    public Window {
        fault(fromS, toS).ifPresent(why -> {
            throw new IllegalArgumentException(fromS + " to " + toS + ": " + why);
        });
    }

    /// Why two times cannot be the ends of a run; nothing when they can.
    public static Optional<String> fault(double fromS, double toS) {
        if (!Double.isFinite(fromS) || !Double.isFinite(toS)) {
            return Optional.of("an end is no number");
        }
        if (fromS < 0) {
            return Optional.of("it begins before the recording");
        }
        if (!(toS > fromS)) {
            return Optional.of("it ends before it begins");
        }
        return toS - fromS > LONGEST_S ? Optional.of("it lasts longer than a day") : Optional.empty();
    }

    /// Two times of a plot, to the millisecond, as a window.
    ///
    /// Error: an exception for times of which [#fault] says something.
    public static Window rounded(double fromS, double toS) {
        return new Window(Math.round(fromS * 1000) / 1000.0, Math.round(toS * 1000) / 1000.0);
    }

    static Read read(String text) {
        var matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            return new Read.NoWindow();
        }
        double fromS = new BigDecimal(matcher.group(1)).doubleValue();
        double toS = new BigDecimal(matcher.group(2)).doubleValue();
        var fault = fault(fromS, toS);
        return fault.isPresent() ? new Read.Wrong(fault.get()) : new Read.Good(new Window(fromS, toS));
    }

    /// The window as recordings.csv has it: `12.4-31.75`.
    public String text() {
        return ExactText.number(fromS) + "-" + ExactText.number(toS);
    }
}
