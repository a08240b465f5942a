package org.measuredmile.recording.check;

import java.util.HashSet;

/// Which of two files that hold one ride serves, and why.
///
/// Shape: `both` where a person has given each of them runs that the other lacks.
record Choice(DayRecording kept, DayRecording other, boolean both, String why) {
    /// One of two files that are alike throughout, or that ran at the same time.
    static Choice of(DayRecording one, DayRecording two) {
        if (!one.runs().isEmpty() || !two.runs().isEmpty()) {
            return named(one, two);
        }
        boolean first = order(one, two) >= 0;
        DayRecording kept = first ? one : two;
        DayRecording other = first ? two : one;
        return new Choice(kept, other, false, why(kept, other));
    }

    /// One of two files of which one may be but a part of the other.
    static Choice of(DayRecording one, DayRecording two, SameSamples match) {
        if (one.runs().isEmpty() && two.runs().isEmpty() && match.wholeOfFirst() != match.wholeOfSecond()) {
            return match.wholeOfFirst()
                    ? new Choice(two, one, false, "lasts longer")
                    : new Choice(one, two, false, "lasts longer");
        }
        return of(one, two);
    }

    /// What a person wrote comes first: the file that holds all the runs that the other one holds, and their ends.
    private static Choice named(DayRecording one, DayRecording two) {
        boolean first = holdsAllOf(one, two);
        boolean second = holdsAllOf(two, one);
        if (!first && !second) {
            return new Choice(one, two, true, "");
        }
        DayRecording kept = first ? one : two;
        DayRecording other = first ? two : one;
        return new Choice(
                kept,
                other,
                false,
                other.runs().isEmpty()
                        ? "has runs named in recordings.csv"
                        : "has all the runs that recordings.csv names in either");
    }

    private static boolean holdsAllOf(DayRecording one, DayRecording two) {
        return new HashSet<>(one.runs()).containsAll(two.runs())
                && one.windows().containsAll(two.windows());
    }

    private static int order(DayRecording one, DayRecording two) {
        int order = Boolean.compare(one.ownSpeed().isPresent(), two.ownSpeed().isPresent());
        order = order != 0 ? order : Long.compare(one.kinds(), two.kinds());
        return order != 0 ? order : Integer.compare(one.samples(), two.samples());
    }

    private static String why(DayRecording kept, DayRecording other) {
        if (kept.ownSpeed().isPresent() && other.ownSpeed().isEmpty()) {
            return "has a speed of its own";
        }
        if (kept.kinds() > other.kinds()) {
            return "has more channels (" + kept.kinds() + " against " + other.kinds() + ")";
        }
        return kept.samples() > other.samples()
                ? "has more samples (" + kept.samples() + " against " + other.samples() + ")"
                : "comes first by name, and they are alike";
    }
}
