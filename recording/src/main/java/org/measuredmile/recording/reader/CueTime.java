package org.measuredmile.recording.reader;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// The line of a cue that says from when to when.
///
/// Shape: hours may be missing; thousandths come after a point or a comma; what follows the second time are settings
/// of the place on the picture, which are passed over.
/// Source: W3C, WebVTT, 4.1 (timestamps: two digits of minutes and seconds below 60, three of the fraction); fewer
/// digits and the comma are common practice in SRT, no source.
final class CueTime {
    static final String STAMP = "(?:\\d{1,4}:)?\\d{1,2}:\\d{1,2}(?:[.,]\\d{1,9})?";
    private static final Pattern LINE =
            Pattern.compile("[ \\t]*(" + STAMP + ")[ \\t]*-->[ \\t]*(" + STAMP + ")(?:[ \\t].*)?");

    private CueTime() {}

    /// From when to when, in seconds.
    record Span(double fromS, double toS) {}

    /// The span that a line states; nothing when it is no such line, or its minutes or seconds pass 59.
    static Optional<Span> read(String line) {
        Matcher matcher = LINE.matcher(line);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        OptionalDouble from = seconds(matcher.group(1));
        OptionalDouble to = seconds(matcher.group(2));
        return from.isPresent() && to.isPresent()
                ? Optional.of(new Span(from.getAsDouble(), to.getAsDouble()))
                : Optional.empty();
    }

    private static OptionalDouble seconds(String stamp) {
        String[] parts = stamp.replace(',', '.').split(":", -1);
        double seconds = Double.parseDouble(parts[parts.length - 1]);
        int minutes = Integer.parseInt(parts[parts.length - 2]);
        int hours = parts.length == 3 ? Integer.parseInt(parts[0]) : 0;
        return seconds < 60 && minutes < 60
                ? OptionalDouble.of(hours * 3600.0 + minutes * 60 + seconds)
                : OptionalDouble.empty();
    }
}
