package org.measuredmile.comparison.sidebyside;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import org.measuredmile.trial.Better;

/// What can be said of one row in one sentence: who is ahead of whom, and who can't be told apart.
///
/// It says no more than the real differences of the row do, and holds no number, so that it is the same in every
/// system of units.
record Saying(List<String> names, FigureRow row) {
    private static final int MOST_CLAUSES = 2;

    Saying {
        names = List.copyOf(names);
    }

    String text() {
        var ordered = ordered();
        if (!row.notCompared().isEmpty() || ordered.size() < 2) {
            return row.notCompared();
        }
        long real = row.differences().stream().filter(Difference::real).count();
        if (real == 0) {
            return ordered.size() == 2
                    ? capital(the(ordered)) + " can't be told apart."
                    : "None of the " + number(ordered.size()) + " can be told from another.";
        }
        if (ordered.size() > 2 && real == row.differences().size()) {
            var first = List.of(ordered.getFirst());
            return capital(the(first)) + " " + words().one() + " than " + others(ordered.size() - 1)
                    + "; all are told apart, in the order "
                    + list(ordered.stream().map(names::get).toList()) + ".";
        }
        return partly(ordered);
    }

    /// Clauses for the bikes that are ahead of some, then what remains.
    private String partly(List<Integer> ordered) {
        var byBeaten = new LinkedHashMap<List<Integer>, List<Integer>>();
        for (int bike : ordered) {
            var beaten = ordered.stream().filter(other -> isAhead(bike, other)).toList();
            if (!beaten.isEmpty()) {
                byBeaten.computeIfAbsent(beaten, _ -> new ArrayList<>()).add(bike);
            }
        }
        var clauses = new ArrayList<String>();
        byBeaten.forEach((beaten, ahead) -> {
            String verb = ahead.size() == 1 ? words().one() : words().several();
            boolean isAll = beaten.size() > 1 && beaten.size() == ordered.size() - 1;
            clauses.add(the(ahead) + " " + verb + " than " + (isAll ? others(beaten.size()) : the(beaten)));
        });
        var said = new ArrayList<>(clauses.subList(0, Math.min(MOST_CLAUSES, clauses.size())));
        if (clauses.size() > MOST_CLAUSES) {
            said.add("further differences are below");
        }
        var open = row.differences().stream().filter(one -> !one.real()).toList();
        if (open.size() == 1) {
            said.add(the(List.of(open.getFirst().one(), open.getFirst().other())) + " can't be told apart");
        } else if (!open.isEmpty()) {
            said.add("the other " + open.size() + " pairs can't be told apart");
        }
        return capital(String.join("; ", said)) + ".";
    }

    private Comparative words() {
        return Comparative.of(row.figure());
    }

    private static String others(int count) {
        return count == 2 ? "both the others" : "all the others";
    }

    /// The measured bikes, the one ahead first.
    private List<Integer> ordered() {
        double sign = row.figure().better() == Better.LESS ? 1 : -1;
        return row.measuredBikes().stream()
                .sorted(Comparator.comparingDouble(bike -> sign
                        * row.measured(bike).orElseThrow().result().figure().value()))
                .toList();
    }

    private boolean isAhead(int bike, int other) {
        return row.differences().stream()
                .filter(one -> one.real() && one.isBetween(bike, other))
                .anyMatch(one -> (row.figure().better() == Better.LESS)
                        == (one.one() == bike ? one.value() < 0 : one.value() > 0));
    }

    private String the(List<Integer> bikes) {
        return list(bikes.stream().map(bike -> "the " + names.get(bike)).toList());
    }

    /// `a`, `a and b`, `a, b and c`.
    static String list(List<String> words) {
        return words.size() < 2
                ? String.join("", words)
                : String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.getLast();
    }

    private static String number(int count) {
        return List.of("three", "four", "five", "six").get(count - 3);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
