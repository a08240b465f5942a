package org.measuredmile.comparison.spec;

import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;

/// Lines of a spec.csv for tests.
final class SpecLines {
    private SpecLines() {}

    static SpecLine line(String item, String claimed, String unit) {
        return line(item, claimed, unit, "");
    }

    static SpecLine line(String item, String claimed, String unit, String conditions) {
        return new SpecLine(item, claimed, unit, conditions, "the maker's page", "2031-01-15", "", "", "", place());
    }

    static Place place() {
        return Place.atLine("spec.csv", 4);
    }
}
