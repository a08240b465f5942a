package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import org.measuredmile.comparison.standing.VariantChoice;
import org.measuredmile.desk.CsvText;
import org.measuredmile.desk.Entrants;
import org.measuredmile.publication.chart.RankComb;
import org.measuredmile.publication.chart.StandingTile;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// Makes the page of a standing, and the list of all that there are.
public final class Standings {
    private static final StandingTile.Size TILE = new StandingTile.Size(350, 38);
    private static final int MOST_TEETH = 24;

    private final Archive archive;
    private final Printing printing;
    private final Declaration trial;
    private final FigureSpec spec;

    public Standings(Archive archive, Printing printing, Declaration trial, FigureSpec spec) {
        this.archive = archive;
        this.printing = printing;
        this.trial = trial;
        this.spec = spec;
    }

    /// What came of asking for a standing: the standing, and what could not be understood of the wish.
    public record Asked(Standing standing, List<Variant> variants, List<String> faults) {}

    /// The standing of a variant, as far as it is stated, among the population of an expression.
    public Asked ask(Variant wanted, String among) {
        var faults = new ArrayList<String>();
        Population population = switch (Population.parse(among)) {
            case Population.Read.Stated(Population stated) -> stated;
            case Population.Read.Unclear(List<Finding> unclear) -> {
                unclear.forEach(one -> faults.add(one.line()));
                yield Population.EVERY_BIKE;
            }
        };
        var entrants = Entrants.of(archive, spec, population.ledger());
        var present =
                entrants.stream().map(Entrant::variant).distinct().sorted().toList();
        Variant variant = chosen(wanted, present);
        return new Asked(Standing.of(spec, variant, population, entrants), present, faults);
    }

    /// The wanted variant; where it leaves more than one, the first of those that fit.
    private Variant chosen(Variant wanted, List<Variant> present) {
        return switch (VariantChoice.of(trial, wanted, present)) {
            case VariantChoice.Chosen(Variant variant) -> variant;
            case VariantChoice.Unclear(List<Variant> fitting, List<Variant> _) ->
                fitting.isEmpty() ? wanted : fitting.getFirst();
        };
    }

    public StandingsView view(Asked asked, StandingsView.Wish wish, String csvHref) {
        var standing = asked.standing();
        var rows = standing.rows();
        var scale = printing.scale(spec.kind());
        Optional<StandingTile> tile = rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new StandingTile(
                        scale,
                        spec.better(),
                        TILE,
                        rows.stream().map(Standings::place).toList()));
        int columns = GroupColumns.of(rows).count();
        boolean hasCombs = !rows.isEmpty() && rows.size() <= MOST_TEETH;
        return new StandingsView(
                Printing.capital(spec.title()),
                trial.words(standing.variant()),
                "/standings/" + spec.id(),
                scale.unit().symbol(),
                scale.hasOther() ? scale.other().unit().symbol() : "",
                direction(),
                Printing.count(standing.count(), "bike", "bikes"),
                population(standing),
                asked.variants().stream()
                        .map(one -> new StandingsView.Choice(
                                Printing.capital(trial.words(one)),
                                Paths.standing(spec.id(), one),
                                one.equals(standing.variant())))
                        .toList(),
                wish,
                categories(),
                tile.map(StandingTile::head).orElse(""),
                tile.map(StandingTile::foot).orElse(""),
                hasCombs ? new RankComb(new double[rows.size()], 1).head() : "",
                hasCombs ? QuantityPrinter.chance(tallest(rows)) : "",
                columns,
                rows(rows, tile, new Columns(GroupColumns.of(rows), columns, hasCombs ? tallest(rows) : 0)),
                leftOut(standing),
                asked.faults(),
                csvHref);
    }

    /// How the columns beside the tiles are filled; `tallest` is 0 where there are no combs.
    private record Columns(GroupColumns groups, int count, double tallest) {}

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

    /// The population in words: `all cargo bikes with pedal drive, the ledger included`.
    private static String population(Standing standing) {
        var population = standing.population();
        var words = new StringBuilder("all ");
        words.append(population.category().isEmpty() ? "" : population.category() + " ");
        words.append("bikes");
        words.append(population.maker().isEmpty() ? "" : " of " + population.maker());
        words.append(
                switch (population.drive()) {
                    case "" -> "";
                    case "both" -> " with throttle and pedals";
                    default -> " with " + population.drive() + " drive";
                });
        words.append(population.ledger() ? ", the ledger included" : "");
        population.from().ifPresent(date -> words.append(", from ").append(Printing.day(date)));
        standing.date().ifPresent(date -> words.append(", to ").append(Printing.day(date)));
        return words.toString();
    }

    private List<String> categories() {
        return archive.bikes().stream()
                .map(BikeEntry::category)
                .filter(one -> !one.isEmpty())
                .distinct()
                .sorted()
                .toList();
    }

    private static StandingTile.Place place(StandingRow row) {
        return new StandingTile.Place(
                row.entrant().value(), row.entrant().anyDay().interval95());
    }

    private List<StandingsView.Row> rows(List<StandingRow> rows, Optional<StandingTile> tile, Columns columns) {
        var views = new ArrayList<StandingsView.Row>();
        for (int i = 0; i < rows.size(); i++) {
            var row = rows.get(i);
            var entrant = row.entrant();
            boolean ledger = entrant.isFromLedger();
            var kind = ledger ? StandingTile.Kind.LEDGER : StandingTile.Kind.MEASURED;
            views.add(new StandingsView.Row(
                    (row.joint() ? "=" : "") + row.rank(),
                    entrant.title(),
                    ledger ? "" : Paths.bike(entrant.bike()),
                    ledger ? join(entrant.category(), "ledger") : entrant.category(),
                    Printing.shortDay(entrant.date()),
                    printing.value(entrant.value(), entrant.anyDay(), spec.kind()),
                    tile.map(one -> one.row(place(row), kind)).orElse(""),
                    columns.groups().marks(i),
                    columns.tallest() > 0 ? comb(row, columns.tallest()) : "",
                    row.rankLow() == row.rankHigh()
                            ? Integer.toString(row.rankLow())
                            : row.rankLow() + " to " + row.rankHigh(),
                    ledger,
                    !row.toldApartFromNext(),
                    false));
        }
        return views;
    }

    private static String join(String first, String second) {
        return first.isEmpty() ? second : first + ", " + second;
    }

    private static String comb(StandingRow row, double tallest) {
        double[] chances = row.rankProbabilities().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        return new RankComb(chances, tallest).row(false);
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
                        Printing.count(entry.getValue().size(), "bike", "bikes"),
                        entry.getValue().stream().distinct().limit(12).collect(Collectors.joining(", "))))
                .toList();
    }

    /// The standing as delimited text: a line a bike, SI units, every digit.
    public String csv(Standing standing) {
        var out = new CsvText()
                .line(
                        "rank",
                        "joint",
                        "bike",
                        "title",
                        "category",
                        "date",
                        "value",
                        "unit",
                        "interval-low",
                        "interval-high",
                        "rank-low",
                        "rank-high",
                        "probability-best",
                        "told-apart-from-next",
                        "ledger");
        for (var row : standing.rows()) {
            var entrant = row.entrant();
            out.line(
                    Integer.toString(row.rank()),
                    row.joint() ? "yes" : "no",
                    entrant.bike(),
                    entrant.title(),
                    entrant.category(),
                    entrant.date().toString(),
                    CsvText.number(entrant.value()),
                    spec.kind().si().symbol(),
                    CsvText.number(entrant.anyDay().interval95().low()),
                    CsvText.number(entrant.anyDay().interval95().high()),
                    Integer.toString(row.rankLow()),
                    Integer.toString(row.rankHigh()),
                    CsvText.number(row.probabilityBest()),
                    row.toldApartFromNext() ? "yes" : "no",
                    entrant.isFromLedger() ? "yes" : "no");
        }
        return out.text();
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
