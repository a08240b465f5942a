package org.measuredmile.comparison.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureSpec;

/// The order of a population in one figure and one variant.
///
/// Shape: one row a bike, best first; where neither end is better, the largest first. `leftOut` says of every result
/// that is not among the rows why. Bikes whose values print alike share their rank.
public record Standing(
        FigureSpec figure, Variant variant, Population population, List<StandingRow> rows, List<LeftOut> leftOut) {
    /// A result that does not stand in the population, and why.
    public record LeftOut(String bike, String title, String reason) {}

    public Standing {
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
    }

    /// The standing of those entrants that belong to the population and are of exactly the variant.
    ///
    /// Shape: of a bike's results the latest stands; one of the crew's own stands before one of the ledger.
    public static Standing of(FigureSpec figure, Variant variant, Population population, List<Entrant> entrants) {
        var leftOut = new ArrayList<LeftOut>();
        var standing = new TreeMap<String, Entrant>();
        var latestVersion = entrants.stream().mapToInt(Entrant::version).max().orElse(Entrant.LEDGER);
        for (var entrant : entrants) {
            var reason = reasonAgainst(figure, variant, population, entrant, latestVersion);
            if (reason.isPresent()) {
                leftOut.add(leftOut(entrant, reason.get()));
                continue;
            }
            var other = standing.get(entrant.bike());
            if (other == null) {
                standing.put(entrant.bike(), entrant);
            } else if (precedes(entrant, other)) {
                leftOut.add(leftOut(other, "a later result of the same bike stands"));
                standing.put(entrant.bike(), entrant);
            } else {
                leftOut.add(leftOut(entrant, "a later result of the same bike stands"));
            }
        }
        var ordered = standing.values().stream()
                .sorted(bestFirst(figure.better()).thenComparing(Entrant::title).thenComparing(Entrant::bike))
                .toList();
        return new Standing(figure, variant, population, rows(figure, ordered), leftOut);
    }

    private static Optional<String> reasonAgainst(
            FigureSpec figure, Variant variant, Population population, Entrant entrant, int latestVersion) {
        if (!entrant.variant().equals(variant)) {
            return Optional.of("another variant: " + entrant.variant().text());
        }
        boolean isOldVersion = !figure.comparable() && !entrant.isFromLedger() && entrant.version() != latestVersion;
        if (isOldVersion) {
            return Optional.of("version " + entrant.version() + " of the trial does not compare with " + latestVersion);
        }
        return population.excludes(entrant);
    }

    private static LeftOut leftOut(Entrant entrant, String reason) {
        return new LeftOut(entrant.bike(), entrant.title(), reason);
    }

    private static boolean precedes(Entrant one, Entrant other) {
        if (one.isFromLedger() != other.isFromLedger()) {
            return other.isFromLedger();
        }
        return one.date().isAfter(other.date());
    }

    private static Comparator<Entrant> bestFirst(Better better) {
        var rising = Comparator.comparingDouble(Entrant::value);
        return better == Better.LESS ? rising : rising.reversed();
    }

    private static List<StandingRow> rows(FigureSpec figure, List<Entrant> ordered) {
        if (ordered.isEmpty()) {
            return List.of();
        }
        var printed = printed(figure, ordered);
        var draws = RankDraws.of(ordered, figure.better() == Better.LESS, RankDraws.DRAWS);
        var groups = groups(ordered);
        var rows = new ArrayList<StandingRow>();
        int rank = 1;
        for (int i = 0; i < ordered.size(); i++) {
            boolean sameAsBefore = i > 0 && printed.get(i).equals(printed.get(i - 1));
            boolean sameAsNext = i + 1 < ordered.size() && printed.get(i).equals(printed.get(i + 1));
            rank = sameAsBefore ? rank : i + 1;
            boolean apart = i + 1 == ordered.size()
                    || Contrast.between(ordered.get(i), ordered.get(i + 1)).tellsApart();
            rows.add(new StandingRow(
                    ordered.get(i),
                    rank,
                    sameAsBefore || sameAsNext,
                    draws.rankAt(i, 0.025),
                    draws.rankAt(i, 0.975),
                    draws.probabilities(i),
                    groups.get(i),
                    apart));
        }
        return rows;
    }

    /// The values as one column prints them: to the place of the middle half-width's second digit.
    ///
    /// Unit: that of the metric system, whatever is shown, so that a rank does not depend on who looks.
    private static List<BigDecimal> printed(FigureSpec figure, List<Entrant> entrants) {
        var unit = figure.kind().shown(UnitSystem.METRIC);
        var halfWidths = entrants.stream()
                .map(entrant ->
                        unit.differenceFromSi(entrant.anyDay().interval95().halfWidth()))
                .sorted()
                .toList();
        double middle = halfWidths.get(halfWidths.size() / 2);
        return entrants.stream()
                .map(entrant -> unit.fromSi(entrant.value()))
                .map(value -> middle > 0
                        ? Rounding.toDecimals(
                                value, Rounding.toSignificant(middle, 2).scale())
                        : BigDecimal.valueOf(value).stripTrailingZeros())
                .toList();
    }

    /// For each row the numbers of the groups it belongs to: stretches of the order whose ends can't be told apart.
    private static List<List<Integer>> groups(List<Entrant> ordered) {
        var groups = new ArrayList<List<Integer>>();
        ordered.forEach(entrant -> groups.add(new ArrayList<>()));
        int number = 0;
        int reached = 0;
        for (int first = 0; first < ordered.size(); first++) {
            int last = first;
            for (int other = first + 1; other < ordered.size(); other++) {
                if (!Contrast.between(ordered.get(first), ordered.get(other)).tellsApart()) {
                    last = other;
                }
            }
            if (last > first && last > reached) {
                number++;
                reached = last;
                for (int row = first; row <= last; row++) {
                    groups.get(row).add(number);
                }
            }
        }
        return groups;
    }

    /// How many bikes have a valid result in it.
    public int count() {
        return rows.size();
    }

    /// The day up to which it holds: the population's own bound, or the latest result's day.
    public Optional<LocalDate> date() {
        return population
                .until()
                .or(() -> rows.stream().map(row -> row.entrant().date()).max(Comparator.naturalOrder()));
    }
}
