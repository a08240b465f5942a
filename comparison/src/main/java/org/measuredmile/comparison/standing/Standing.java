package org.measuredmile.comparison.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
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
    /// Which of a bike's results stands, in words for whoever reads a rank.
    public static final String RULE = "Of each bike the latest result stands that a person accepted and that the"
            + " current version of its trial gave, whatever the configuration; one of the crew's own stands before one"
            + " of the ledger.";

    private static final Comparator<Entrant> LATEST = Comparator.comparing(Entrant::date)
            .thenComparing(entrant -> entrant.origin().day())
            .thenComparing(entrant -> entrant.origin().configuration());

    /// A result that does not stand in the population, and why.
    public record LeftOut(String bike, String title, String reason) {}

    public Standing {
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
    }

    /// The standing of those entrants that belong to the population and are of exactly the variant.
    ///
    /// Shape: which of a bike's results stands is [#RULE]; of one date, the one of the day whose id sorts last.
    public static Standing of(FigureSpec figure, Variant variant, Population population, List<Entrant> entrants) {
        return of(figure, variant, population, entrants, Workers.ONE);
    }

    /// The same, its draws shared out among workers.
    public static Standing of(
            FigureSpec figure, Variant variant, Population population, List<Entrant> entrants, Workers workers) {
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
        return new Standing(figure, variant, population, rows(figure, ordered, workers), leftOut);
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
        return LATEST.compare(one, other) > 0;
    }

    private static Comparator<Entrant> bestFirst(Better better) {
        var rising = Comparator.comparingDouble(Entrant::value);
        return better == Better.LESS ? rising : rising.reversed();
    }

    private static List<StandingRow> rows(FigureSpec figure, List<Entrant> ordered, Workers workers) {
        if (ordered.isEmpty()) {
            return List.of();
        }
        var ties = Ties.of(printed(figure, ordered));
        var draws = RankDraws.of(ordered, figure.better() == Better.LESS, RankDraws.DRAWS, workers);
        var neighbours = new Neighbours(ordered);
        var groups = neighbours.groups();
        var rows = new ArrayList<StandingRow>();
        for (int i = 0; i < ordered.size(); i++) {
            var chances = draws.probabilities(i);
            rows.add(new StandingRow(
                    ordered.get(i),
                    ties.rank(i),
                    ties.same(i) > 1,
                    chances.rankAt(0.025),
                    chances.rankAt(0.975),
                    chances,
                    groups.get(i),
                    i + 1 == ordered.size() || neighbours.apart(i, i + 1),
                    ties.percentile(i)));
        }
        return rows;
    }

    /// The values as one column prints them: to the place of the middle half-width's second digit.
    ///
    /// Unit: that of the metric system, whatever is shown, so that a rank does not depend on who looks.
    private static List<BigDecimal> printed(FigureSpec figure, List<Entrant> entrants) {
        var unit = figure.kind().shown(UnitSystem.METRIC);
        double[] halfWidths = entrants.stream()
                .mapToDouble(entrant ->
                        unit.differenceFromSi(entrant.anyDay().interval95().halfWidth()))
                .sorted()
                .toArray();
        double middle = halfWidths[halfWidths.length / 2];
        int decimals = middle > 0 ? Rounding.toSignificant(middle, 2).scale() : 0;
        return entrants.stream()
                .map(entrant -> unit.fromSi(entrant.value()))
                .map(value -> middle > 0
                        ? Rounding.toDecimals(value, decimals)
                        : BigDecimal.valueOf(value).stripTrailingZeros())
                .toList();
    }

    /// How its values lie; empty where no bike stands in it.
    public Optional<Spread> spread() {
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(Spread.of(
                        rows.stream().map(row -> row.entrant().value()).toList()));
    }

    /// The row of a bike.
    public Optional<StandingRow> row(String bike) {
        return rows.stream().filter(row -> row.entrant().bike().equals(bike)).findFirst();
    }

    /// The probability that each bike of the standing is better than one of them, by bike, in the draws that
    /// the ranks are made from; empty where that one does not stand in it. Equal draws count half.
    public SortedMap<String, Double> chancesOfBeating(String bike) {
        var chances = new TreeMap<String, Double>();
        row(bike).ifPresent(rival -> {
            var ordered = rows.stream().map(StandingRow::entrant).toList();
            double[] found =
                    Beating.chances(ordered, figure.better() == Better.LESS, rows.indexOf(rival), RankDraws.DRAWS);
            for (int i = 0; i < found.length; i++) {
                chances.put(ordered.get(i).bike(), found[i]);
            }
        });
        return chances;
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
