package org.measuredmile.trial;

import org.measuredmile.recording.day.Variant;

/// Which figure: its id and its variant.
public record FigureKey(String figure, Variant variant) implements Comparable<FigureKey> {
    @Override
    public int compareTo(FigureKey other) {
        int byId = figure.compareTo(other.figure);
        return byId != 0 ? byId : variant.compareTo(other.variant);
    }

    /// `figure key=value`, as on a command line.
    public String text() {
        return variant.text().isEmpty() ? figure : figure + " " + variant.text();
    }
}
