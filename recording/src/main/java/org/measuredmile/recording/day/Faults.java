package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;

/// The faults of one reading, collected in the order they are met.
final class Faults {
    private static final int LONGEST_QUOTE = 40;
    private static final Pattern LINE = Pattern.compile("line (\\d+)");

    private final List<Finding> found = new ArrayList<>();

    void add(DayFault fault, Place place, Object... what) {
        Object[] shown = new Object[what.length];
        for (int i = 0; i < what.length; i++) {
            shown[i] = what[i] instanceof Quoted(String text) ? shorten(text) : what[i];
        }
        found.add(fault.at(place, shown));
    }

    void addAll(List<Finding> more) {
        found.addAll(more);
    }

    /// All of them: files in the order they were met, each file's by line, what has no line first.
    List<Finding> all() {
        List<String> files =
                found.stream().map(one -> one.place().source()).distinct().toList();
        List<Finding> ordered = new ArrayList<>(found);
        ordered.sort(Comparator.<Finding>comparingInt(
                        one -> files.indexOf(one.place().source()))
                .thenComparingLong(one -> line(one.place())));
        return List.copyOf(ordered);
    }

    private static long line(Place place) {
        Matcher line = LINE.matcher(place.where());
        return line.lookingAt() ? Long.parseLong(line.group(1)) : 0;
    }

    boolean areFatal() {
        return found.stream().anyMatch(one -> one.level() == Finding.Level.REFUSED);
    }

    /// Text of the file's own: shortened where it is long, signs that do not print replaced.
    record Quoted(String text) {}

    static Quoted quoted(String text) {
        return new Quoted(text);
    }

    private static String shorten(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", " ");
        int signs = printable.codePointCount(0, printable.length());
        return signs <= LONGEST_QUOTE
                ? printable
                : printable.substring(0, printable.offsetByCodePoints(0, LONGEST_QUOTE)) + "…";
    }
}
