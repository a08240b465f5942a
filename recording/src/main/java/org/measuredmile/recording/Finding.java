package org.measuredmile.recording;

/// Something the tool noticed, where, and what to do about it.
///
/// Shape: `code` is lower-case with hyphens and never changes meaning; `message` says what is so, with values and
/// units; `remedy` says what would mend it, and is empty when nothing is asked of anybody.
public record Finding(String code, Level level, Place place, String message, String remedy) {
    /// How much a finding weighs. The names are those of the JSON format.
    public enum Level {
        /// Worth knowing; nothing changed.
        NOTE,
        /// Something was left out, assumed, or widens an interval.
        WARNING,
        /// No figure, no run or no recording comes of it.
        REFUSED
    }

    public static Finding note(String code, Place place, String message) {
        return new Finding(code, Level.NOTE, place, message, "");
    }

    /// Something to look at that is not in one place.
    public static Finding warning(String code, String message, String remedy) {
        return warning(code, Place.NOWHERE, message, remedy);
    }

    public static Finding warning(String code, Place place, String message, String remedy) {
        return new Finding(code, Level.WARNING, place, message, remedy);
    }

    public static Finding refused(String code, Place place, String message, String remedy) {
        return new Finding(code, Level.REFUSED, place, message, remedy);
    }

    /// One line: place, message, remedy.
    public String line() {
        String at = place.text().isEmpty() ? "" : place.text() + ": ";
        return at + message + (remedy.isEmpty() ? "" : "; " + remedy);
    }
}
