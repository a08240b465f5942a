package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Population;
import org.measuredmile.comparison.standing.Spread;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import org.measuredmile.comparison.standing.VariantChoice;
import org.measuredmile.desk.Entrants;
import org.measuredmile.desk.Machine;
import org.measuredmile.desk.SpreadWords;
import org.measuredmile.desk.StandingsJson;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/// `mile standings FIGURE [key=value…] --among "…"`: where each bike stands in a population.
@Command(
        name = "standings",
        description = "Rank the bikes of a population in one figure and one variant.",
        mixinStandardHelpOptions = true)
final class StandingsCommand implements Callable<Integer> {
    private static final int MOST_NAMED = 30;

    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(index = "0", paramLabel = "FIGURE", description = "a figure's id, as `mile reduce --json` gives it")
    private String figureId = "";

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "key=value", description = "how the runs were ridden")
    private List<String> variantTerms = List.of();

    @Option(
            names = "--among",
            paramLabel = "EXPRESSION",
            description = "the population (default: every bike): category=, maker=, drive=, sensor=, wheel=,"
                    + " battery=400-600 (Wh claimed), price=1000-2000 currency=EUR, model-year=, from=, until=,"
                    + " version=, at=reference or measured, ledger=yes")
    private String among = "";

    @Option(names = "--against", paramLabel = "BIKE", description = "each bike's chance of beating this one")
    private String against = "";

    @Option(names = "--full", description = "with --json: the probability of every rank")
    private boolean full;

    @Override
    public Integer call() {
        var trial = Trials.delivering(figureId).orElseThrow(() -> unknownFigure(figureId));
        var spec = trial.declaration().requireFigure(figureId);
        var population = population();
        try (var archive = chosen.open()) {
            var entrants = Entrants.of(archive, spec, true);
            var variant = variant(trial, population, entrants);
            var standing = Standing.of(spec, variant, population, entrants, Machine.PROCESSORS);
            var rival = rival(standing);
            if (shown.asJson()) {
                shown.json(Json.array().add(StandingsJson.write(standing, new StandingsJson.Wish(full, rival))));
            } else {
                print(trial, standing, rival);
            }
            return standing.count() == 0 ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    private static Trouble unknownFigure(String id) {
        String known = Trials.ALL.stream()
                .flatMap(trial -> trial.declaration().figures().stream())
                .map(FigureSpec::id)
                .collect(Collectors.joining(", "));
        return new Trouble("\"" + id + "\" is no figure; give one of " + known);
    }

    private Population population() {
        return switch (Population.parse(among)) {
            case Population.Read.Stated(var population) -> population;
            case Population.Read.Unclear(var faults) ->
                throw new Trouble(faults.stream().map(fault -> fault.line()).collect(Collectors.joining("\n")));
        };
    }

    private Optional<StandingsJson.Against> rival(Standing standing) {
        if (against.isEmpty()) {
            return Optional.empty();
        }
        if (standing.row(against).isEmpty()) {
            String bikes = standing.rows().stream()
                    .map(row -> row.entrant().bike())
                    .limit(MOST_NAMED)
                    .collect(Collectors.joining(", "));
            throw new Trouble("\"" + against + "\" does not stand among them; give one of " + bikes
                    + (standing.count() > MOST_NAMED ? " and so on" : ""));
        }
        return Optional.of(new StandingsJson.Against(against, standing.chancesOfBeating(against)));
    }

    private Variant variant(Trial trial, Population population, List<Entrant> entrants) {
        var asked = population.asking(Variant.of(terms()));
        boolean isGivenSo =
                trial.declaration().requireFigure(figureId).variantKeys().contains(Population.AT);
        if (asked.get(Population.AT).isPresent() && !isGivenSo) {
            throw new Trouble(figureId + " is given as measured only; leave " + Population.AT + "= out");
        }
        var present = entrants.stream().map(Entrant::variant).distinct().toList();
        if (present.isEmpty()) {
            return asked;
        }
        return switch (VariantChoice.of(trial.declaration(), asked, population, present)) {
            case VariantChoice.Chosen(var variant) -> variant;
            case VariantChoice.Unclear(var fitting, var all) -> {
                String what = fitting.isEmpty() ? "no result was ridden so" : "results differ in how they were ridden";
                String choices = (fitting.isEmpty() ? all : fitting)
                        .stream().map(Variant::text).collect(Collectors.joining("\n  "));
                throw new Trouble(figureId + " " + asked.text() + ": " + what + "; give one of\n  " + choices);
            }
        };
    }

    private Map<String, String> terms() {
        var terms = new LinkedHashMap<String, String>();
        for (String term : variantTerms) {
            int equals = term.indexOf('=');
            if (equals < 1 || equals == term.length() - 1) {
                throw new Trouble("\"" + term + "\" is not key=value; write it as in drive=throttle");
            }
            terms.put(term.substring(0, equals), term.substring(equals + 1));
        }
        return terms;
    }

    private void print(Trial trial, Standing standing, Optional<StandingsJson.Against> rival) {
        var spec = standing.figure();
        String variant = trial.declaration().words(standing.variant());
        shown.line(spec.title() + (variant.isEmpty() ? "" : ", " + variant));
        String expression = standing.population().expression();
        shown.line("among " + (expression.isEmpty() ? "every bike" : expression) + ": " + standing.count()
                + (standing.count() == 1 ? " bike" : " bikes")
                + " with a valid result"
                + standing.date().map(date -> ", to " + date).orElse(""));
        shown.line(order(spec.better()) + "; ± is the 95 % interval of any day; ranks from to: 95 of 100 draws");
        shown.line(Standing.RULE);
        var table = new Table(
                "rank",
                "bike",
                "result",
                "",
                "from to",
                "likely",
                "best",
                "top 3",
                than(spec.better()),
                rival.isPresent() ? "beats " + against : "",
                "");
        for (var row : standing.rows()) {
            row(spec, row, rival, table);
        }
        table.lines().forEach(shown::line);
        standing.spread().ifPresent(spread -> spread(spec, spread));
        leftOut(standing);
    }

    private void spread(FigureSpec spec, Spread spread) {
        var words = new SpreadWords(spec, spread, shown.printer());
        shown.line("mean " + words.at(spread.mean()) + "; median " + words.at(spread.median())
                + "; half of them from " + words.at(spread.lowerQuarter()) + " to " + words.at(spread.upperQuarter())
                + words.standardDeviation()
                        .map(one -> "; standard deviation " + one)
                        .orElse("")
                + " (quantiles: " + Spread.DEFINITION + ")");
        shown.line("\"" + than(spec.better()) + "\": the share of them that is behind, those of the same printed value"
                + " counted half");
    }

    private static String than(Better better) {
        return better == Better.NEITHER ? "larger than" : "better than";
    }

    private static String order(Better better) {
        return switch (better) {
            case LESS -> "least first, which is better";
            case MORE -> "most first, which is better";
            case NEITHER -> "largest first; neither end is better";
        };
    }

    private void row(FigureSpec spec, StandingRow row, Optional<StandingsJson.Against> rival, Table table) {
        var entrant = row.entrant();
        var result = Entrants.printed(spec, entrant, shown.printer());
        var other = Entrants.printed(spec, entrant, shown.printer().other());
        table.row(
                (row.joint() ? "=" : "") + row.rank(),
                entrant.title() + (entrant.isFromLedger() ? " (ledger)" : ""),
                result,
                result.equals(other) ? "" : other,
                row.rankLow() == row.rankHigh() ? "" + row.rankLow() : row.rankLow() + " to " + row.rankHigh(),
                Integer.toString(row.mostLikelyRank()),
                QuantityPrinter.chance(row.probabilityBest()),
                QuantityPrinter.chance(row.probabilityTopThree()),
                QuantityPrinter.chance(row.percentile().mean() / 100),
                rival.map(one -> beats(one, entrant)).orElse(""),
                row.toldApartFromNext() ? "" : "can't be told apart from the next");
    }

    private static String beats(StandingsJson.Against rival, Entrant entrant) {
        return entrant.bike().equals(rival.bike())
                ? ""
                : QuantityPrinter.chance(rival.chances().getOrDefault(entrant.bike(), 0.0));
    }

    private void leftOut(Standing standing) {
        var reasons = new LinkedHashMap<String, List<String>>();
        standing.leftOut()
                .forEach(one -> reasons.computeIfAbsent(one.reason(), reason -> new ArrayList<>())
                        .add(one.title()));
        reasons.forEach((reason, bikes) -> shown.line("not among them: " + bikes.size() + " (" + reason + ")"));
    }
}
