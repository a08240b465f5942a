package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Spread;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import org.measuredmile.comparison.standing.VariantChoice;
import org.measuredmile.desk.KeptStandings;
import org.measuredmile.desk.SpreadWords;
import org.measuredmile.desk.StandingsJson;
import org.measuredmile.publication.chart.RankComb;
import org.measuredmile.publication.chart.StandingTile;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// Makes the page of a standing, and the list of all that there are.
public final class Standings {
    private static final StandingTile.Size TILE = new StandingTile.Size(300, 38);
    private static final StandingTile.Size LOW_TILE = new StandingTile.Size(350, 26);
    private static final int MOST_TEETH = 24;
    /// With more rows than this the table scrolls in itself and draws intervals only.
    private static final int MOST_DRAWN = 60;

    private final KeptStandings kept;
    private final Printing printing;
    private final Declaration trial;
    private final FigureSpec spec;

    /// What the rows of a page depend on, beside the figures.
    private record Rows(FigureKey key, Population population, Optional<String> against, UnitSystem system) {}

    public Standings(KeptStandings kept, Printing printing, Declaration trial, FigureSpec spec) {
        this.kept = kept;
        this.printing = printing;
        this.trial = trial;
        this.spec = spec;
    }

    /// What came of asking for a standing: the standing, and what could not be understood of the wish.
    public record Asked(
            StandingWish wish,
            Standing standing,
            List<Variant> variants,
            Optional<StandingsJson.Against> against,
            List<String> faults) {}

    /// The standing of a variant, as far as it is stated, among the population of an expression.
    public Asked ask(StandingWish wish) {
        var faults = new ArrayList<String>();
        Population population = switch (Population.parse(wish.expression())) {
            case Population.Read.Stated(Population stated) -> stated;
            case Population.Read.Unclear(List<Finding> unclear) -> {
                unclear.forEach(one -> faults.add(one.line()));
                yield Population.EVERY_BIKE;
            }
        };
        var present = kept.entrants(spec).stream()
                .filter(entrant -> population.ledger() || !entrant.isFromLedger())
                .map(Entrant::variant)
                .distinct()
                .sorted()
                .toList();
        if (population.terms().at() == Population.Conditions.REFERENCE
                && !spec.variantKeys().contains(Population.AT)) {
            faults.add(Printing.capital(spec.title()) + " is given as measured only, not at reference conditions.");
        }
        var standing = kept.standing(spec, chosen(wish.variant(), population, present), population);
        return new Asked(wish, standing, present, against(wish, standing, faults), faults);
    }

    private Optional<StandingsJson.Against> against(StandingWish wish, Standing standing, List<String> faults) {
        String bike = wish.wish().against();
        if (bike.isEmpty()) {
            return Optional.empty();
        }
        if (standing.row(bike).isEmpty()) {
            faults.add("“" + bike + "” does not stand among them, so no chance of beating it is shown.");
            return Optional.empty();
        }
        return Optional.of(new StandingsJson.Against(bike, kept.chancesOfBeating(standing, bike)));
    }

    /// The wanted variant; where it leaves more than one, the first of those that fit.
    private Variant chosen(Variant wanted, Population population, List<Variant> present) {
        return switch (VariantChoice.of(trial, wanted, population, present)) {
            case VariantChoice.Chosen(Variant variant) -> variant;
            case VariantChoice.Unclear(List<Variant> fitting, List<Variant> _) ->
                fitting.isEmpty() ? population.asking(wanted) : fitting.getFirst();
        };
    }

    public StandingsView view(Asked asked, StandingsView.Links links) {
        var standing = asked.standing();
        var rows = standing.rows();
        boolean many = rows.size() > MOST_DRAWN;
        Optional<StandingTile> tile = rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new StandingTile(
                        printing.scale(spec.kind()),
                        spec.better(),
                        many ? LOW_TILE : TILE,
                        rows.stream().map(Standings::place).toList()));
        var groups = GroupColumns.of(many ? List.of() : rows);
        boolean hasCombs = !rows.isEmpty() && rows.size() <= MOST_TEETH;
        double tallest = hasCombs ? tallest(rows) : 0;
        return new StandingsView(
                heading(asked),
                form(asked),
                new StandingsView.Plot(
                        tile.map(StandingTile::head).orElse(""),
                        tile.map(StandingTile::foot).orElse(""),
                        hasCombs ? new RankComb(new double[rows.size()], 1).head() : "",
                        hasCombs ? QuantityPrinter.chance(tallest) : "",
                        groups.count()),
                direction(),
                spec.better() == Better.NEITHER ? "Larger than" : "Better than",
                Standing.RULE,
                Printing.count(standing.count(), "bike", "bikes"),
                standing.population().words(standing.date()),
                many,
                asked.against()
                        .flatMap(one -> standing.row(one.bike()))
                        .map(row -> row.entrant().title())
                        .orElse(""),
                kept.whatIsMade(
                        new Rows(
                                new FigureKey(spec.id(), standing.variant()),
                                standing.population(),
                                asked.against().map(StandingsJson.Against::bike),
                                printing.system()),
                        () -> rows(asked, tile, groups, tallest)),
                standing.spread().map(this::facts).orElse(List.of()),
                leftOut(standing),
                asked.faults(),
                links);
    }

    private StandingsView.Heading heading(Asked asked) {
        var scale = printing.scale(spec.kind());
        return new StandingsView.Heading(
                Printing.capital(spec.title()),
                trial.words(asked.standing().variant()),
                "/standings/" + spec.id(),
                scale.unit().symbol(),
                scale.hasOther() ? scale.other().unit().symbol() : "",
                asked.variants().stream()
                        .map(one -> new StandingsView.Choice(
                                Printing.capital(trial.words(one)),
                                asked.wish().href(spec.id(), one),
                                one.equals(asked.standing().variant())))
                        .toList());
    }

    private StandingsView.Form form(Asked asked) {
        var bikes = kept.bikes().values();
        var rows = asked.standing().rows();
        return new StandingsView.Form(
                asked.wish().wish(),
                asked.standing().variant().values(),
                written(bikes.stream().map(Bike::category)),
                written(bikes.stream().map(Bike::wheelSize)),
                written(bikes.stream().map(bike -> bike.price().currency())),
                rows.size() > MOST_DRAWN
                        ? List.of()
                        : rows.stream()
                                .map(row -> new StandingsView.Rival(
                                        row.entrant().bike(), row.entrant().title()))
                                .toList());
    }

    private static List<String> written(Stream<String> facts) {
        return facts.filter(one -> !one.isEmpty()).distinct().sorted().toList();
    }

    private static double tallest(List<StandingRow> rows) {
        return rows.stream()
                .flatMap(row -> row.rankProbabilities().stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(1);
    }

    private String direction() {
        return switch (spec.better()) {
            case LESS -> "Less is better: towards the arrowhead.";
            case MORE -> "More is better: towards the arrowhead.";
            case NEITHER -> "Neither end is better; the largest stands first.";
        };
    }

    private static StandingTile.Place place(StandingRow row) {
        return new StandingTile.Place(
                row.entrant().value(), row.entrant().anyDay().interval95());
    }

    private List<StandingsView.Row> rows(
            Asked asked, Optional<StandingTile> tile, GroupColumns groups, double tallest) {
        var rows = asked.standing().rows();
        var known = kept.bikes();
        var views = new ArrayList<StandingsView.Row>();
        for (int i = 0; i < rows.size(); i++) {
            var row = rows.get(i);
            var entrant = row.entrant();
            boolean ledger = entrant.isFromLedger();
            boolean subject = asked.against()
                    .filter(one -> one.bike().equals(entrant.bike()))
                    .isPresent();
            var kind = subject && !ledger
                    ? StandingTile.Kind.SUBJECT
                    : ledger ? StandingTile.Kind.LEDGER : StandingTile.Kind.MEASURED;
            views.add(new StandingsView.Row(
                    (row.joint() ? "=" : "") + row.rank(),
                    entrant.title(),
                    known.containsKey(entrant.bike()) ? Paths.bike(entrant.bike()) : "",
                    Stream.of(entrant.category(), ledger ? "ledger" : "")
                            .filter(one -> !one.isEmpty())
                            .collect(Collectors.joining(", ")),
                    Printing.shortDay(entrant.date()),
                    printing.value(entrant.value(), entrant.anyDay(), spec.kind()),
                    tile.map(one -> one.row(place(row), kind)).orElse(""),
                    groups.count() == 0 ? List.of() : groups.marks(i),
                    tallest > 0 ? comb(row, tallest, subject) : "",
                    chances(row, asked.against()),
                    ledger,
                    !row.toldApartFromNext(),
                    subject));
        }
        return views;
    }

    private static StandingsView.Chances chances(StandingRow row, Optional<StandingsJson.Against> against) {
        String bike = row.entrant().bike();
        return new StandingsView.Chances(
                row.rankLow() == row.rankHigh()
                        ? Integer.toString(row.rankLow())
                        : row.rankLow() + " to " + row.rankHigh(),
                Integer.toString(row.mostLikelyRank()),
                QuantityPrinter.chance(row.probabilityBest()),
                QuantityPrinter.chance(row.probabilityTopThree()),
                QuantityPrinter.chance(row.percentile().mean() / 100),
                against.filter(one -> !one.bike().equals(bike))
                        .map(one -> QuantityPrinter.chance(
                                Objects.requireNonNullElse(one.chances().get(bike), 0.0)))
                        .orElse(""));
    }

    private static String comb(StandingRow row, double tallest, boolean subject) {
        double[] chances = row.rankProbabilities().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        return new RankComb(chances, tallest).row(subject);
    }

    private List<StandingsView.Fact> facts(Spread spread) {
        var facts = new ArrayList<StandingsView.Fact>();
        facts.add(fact("Mean", spread, spread.mean()));
        facts.add(fact("Median", spread, spread.median()));
        facts.add(fact("Lowest", spread, spread.lowest()));
        facts.add(fact("Lower quarter", spread, spread.lowerQuarter()));
        facts.add(fact("Upper quarter", spread, spread.upperQuarter()));
        facts.add(fact("Highest", spread, spread.highest()));
        var here = new SpreadWords(spec, spread, printing.printer());
        var there = new SpreadWords(spec, spread, printing.printer().other());
        here.standardDeviation()
                .ifPresent(one -> facts.add(fact(
                        "Standard deviation", one, there.standardDeviation().orElse(""))));
        return facts;
    }

    private StandingsView.Fact fact(String name, Spread spread, double si) {
        return fact(
                name,
                new SpreadWords(spec, spread, printing.printer()).at(si),
                new SpreadWords(spec, spread, printing.printer().other()).at(si));
    }

    private static StandingsView.Fact fact(String name, String value, String other) {
        return new StandingsView.Fact(name, value, other.equals(value) ? "" : other);
    }

    /// What is left out, gathered by reason; results in another variant are no news.
    private static List<BikeView.Missing> leftOut(Standing standing) {
        Map<String, List<String>> byReason = standing.leftOut().stream()
                .filter(one -> !one.reason().startsWith("another variant"))
                .collect(Collectors.groupingBy(
                        Standing.LeftOut::reason,
                        TreeMap::new,
                        Collectors.mapping(Standing.LeftOut::title, Collectors.toList())));
        return byReason.entrySet().stream()
                .map(entry -> new BikeView.Missing(
                        Printing.capital(entry.getKey()),
                        Printing.count(entry.getValue().size(), "result", "results"),
                        entry.getValue().stream().distinct().limit(12).collect(Collectors.joining(", "))))
                .toList();
    }

    /// Every figure and variant that any bike has a result in, by chapter.
    public static StandingsView.Contents contents(Archive archive) {
        var counts = new TreeMap<FigureKey, Map<String, StoredFigure>>();
        archive.figures(FigureQuery.LATEST)
                .forEach(one -> counts.computeIfAbsent(one.figure().key(), key -> new TreeMap<>())
                        .put(one.bike(), one));
        var parts = new ArrayList<StandingsView.Part>();
        for (Chapter chapter : Chapter.values()) {
            var entries = new ArrayList<StandingsView.Entry>();
            for (var trial : Trials.ALL) {
                trial.declaration().figures().stream()
                        .filter(spec -> spec.chapter() == chapter)
                        .forEach(spec -> counts.forEach((key, bikes) -> {
                            if (key.figure().equals(spec.id())) {
                                entries.add(entry(trial.declaration(), spec, key, bikes.size()));
                            }
                        }));
            }
            if (!entries.isEmpty()) {
                parts.add(new StandingsView.Part(chapter.title(), entries));
            }
        }
        return new StandingsView.Contents(parts);
    }

    private static StandingsView.Entry entry(Declaration trial, FigureSpec spec, FigureKey key, int bikes) {
        return new StandingsView.Entry(
                Printing.capital(spec.title()),
                trial.words(key.variant()),
                Printing.count(bikes, "bike", "bikes"),
                Paths.standing(spec.id(), key.variant()),
                Optional.of(spec.better())
                        .filter(better -> better != Better.NEITHER)
                        .map(better -> better == Better.LESS ? "less is better" : "more is better"));
    }
}
