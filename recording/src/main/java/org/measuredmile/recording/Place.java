package org.measuredmile.recording;

import java.util.Locale;

/// Where in what a finding lies.
///
/// Shape: `source` is a file's name as the crew knows it (or empty); `where` says more in the source's own terms:
/// "line 812", "byte 48112", "12.4 s", "speed_kmh".
public record Place(String source, String where) {
    public static final Place NOWHERE = new Place("", "");

    public static Place in(String source) {
        return new Place(source, "");
    }

    public static Place atLine(String source, long line) {
        return new Place(source, "line " + line);
    }

    public static Place atByte(String source, long offset) {
        return new Place(source, "byte " + offset);
    }

    /// A time on the recording's own time base, in seconds from its start.
    public static Place atTime(String source, double seconds) {
        return new Place(source, String.format(Locale.ROOT, "%.1f s", seconds));
    }

    /// A field of a line of a file that people write.
    public static Place atField(String source, long line, String field) {
        return new Place(source, "line " + line + ", " + field);
    }

    /// `file: where`, or as much of it as there is.
    public String text() {
        if (source.isEmpty()) {
            return where;
        }
        return where.isEmpty() ? source : source + ": " + where;
    }
}
