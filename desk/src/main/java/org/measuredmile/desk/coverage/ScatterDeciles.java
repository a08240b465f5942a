package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/// How often intervals hold the truth on days whose runs scattered little, and on days whose runs scattered much.
///
/// An interval made from the scatter of the day's few runs alone is too narrow on quiet days and too wide on others;
/// one made from the moderated scatter should hold alike on all.
final class ScatterDeciles {
    private static final int TENTHS = 10;
    private static final int LEAST_DAYS = 100;

    private ScatterDeciles() {}

    /// A day's scatter of runs, in the unit of the figure, and whether its interval held.
    record Day(double scatter, boolean held) {}

    /// The share held in each tenth of the days, least scatter first; empty for fewer than a hundred days.
    static List<Double> of(List<Day> days) {
        if (days.size() < LEAST_DAYS) {
            return List.of();
        }
        var sorted =
                days.stream().sorted(Comparator.comparingDouble(Day::scatter)).toList();
        var shares = new ArrayList<Double>();
        for (int tenth = 0; tenth < TENTHS; tenth++) {
            int from = sorted.size() * tenth / TENTHS;
            int to = sorted.size() * (tenth + 1) / TENTHS;
            long held = sorted.subList(from, to).stream().filter(Day::held).count();
            shares.add((double) held / (to - from));
        }
        return shares;
    }
}
