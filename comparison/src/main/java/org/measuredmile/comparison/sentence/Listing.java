package org.measuredmile.comparison.sentence;

import java.util.List;

/// Several things in a row, as prose joins them: `wind, gusts and road load`.
final class Listing {
    private Listing() {}

    static String and(List<String> things) {
        int last = things.size() - 1;
        return switch (things.size()) {
            case 0 -> "";
            case 1 -> things.getFirst();
            default -> String.join(", ", things.subList(0, last)) + " and " + things.get(last);
        };
    }

    /// Several clauses in a row, each behind a comma: `it is so, it is not, and it may be`.
    static String clauses(List<String> clauses) {
        int last = clauses.size() - 1;
        return clauses.size() < 2
                ? String.join("", clauses)
                : String.join(", ", clauses.subList(0, last)) + ", and " + clauses.get(last);
    }
}
