package org.measuredmile.desk;

import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.standing.Spread;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/// A standing, as `mile standings --json` and the page's link give it.
///
/// Unit: values and intervals in the SI unit named by `unit`; intervals are any-day ones.
public final class StandingsJson {
    private StandingsJson() {}

    /// What is asked for beside the rows: every rank's probability, and the chances of beating one bike.
    public record Wish(boolean full, Optional<Against> against) {}

    /// A bike, and how probably each is better than it, by bike.
    public record Against(String bike, Map<String, Double> chances) {}

    public static JsonNode write(Standing standing, Wish wish) {
        var object = Json.object().put("figure", standing.figure().id());
        object.set("variant", FigureJson.variant(standing.variant()));
        object.put("unit", standing.figure().kind().si().symbol());
        object.put("better", standing.figure().better().name().toLowerCase(java.util.Locale.ROOT));
        object.set("population", population(standing));
        object.put("rule", Standing.RULE);
        object.set("spread", orNull(standing.spread().map(StandingsJson::spread)));
        wish.against().ifPresent(against -> object.put("against", against.bike()));
        object.set("rows", Json.array(standing.rows(), row -> row(row, wish)));
        object.set(
                "leftOut",
                Json.array(
                        standing.leftOut(),
                        one -> Json.object().put("bike", one.bike()).put("reason", one.reason())));
        return object;
    }

    private static JsonNode population(Standing standing) {
        var population = Json.object()
                .put("expression", standing.population().expression())
                .put("count", standing.count());
        population.set(
                "date", orNull(standing.date().map(date -> JsonNodeFactory.instance.stringNode(date.toString()))));
        population.put("ledger", standing.population().ledger());
        return population;
    }

    private static JsonNode orNull(Optional<? extends JsonNode> node) {
        return node.<JsonNode>map(one -> one).orElseGet(JsonNodeFactory.instance::nullNode);
    }

    private static JsonNode spread(Spread spread) {
        var object = Json.object();
        object.set("mean", Json.number(spread.mean()));
        object.set("median", Json.number(spread.median()));
        object.set("standardDeviation", Json.number(spread.standardDeviation().orElse(Double.NaN)));
        object.set("lowest", Json.number(spread.lowest()));
        object.set("lowerQuarter", Json.number(spread.lowerQuarter()));
        object.set("upperQuarter", Json.number(spread.upperQuarter()));
        object.set("highest", Json.number(spread.highest()));
        return object.put("quantiles", Spread.DEFINITION);
    }

    private static JsonNode row(StandingRow row, Wish wish) {
        var entrant = row.entrant();
        var object = Json.object().put("bike", entrant.bike());
        object.set("value", Json.number(entrant.value()));
        object.set("interval95", FigureJson.interval(entrant.anyDay().interval95()));
        object.put("rank", row.rank()).put("joint", row.joint());
        object.set("rankInterval95", Json.array().add(row.rankLow()).add(row.rankHigh()));
        object.put("mostLikelyRank", row.mostLikelyRank());
        object.put("probabilityBest", row.probabilityBest());
        object.put("probabilityTopThree", row.probabilityTopThree());
        wish.against()
                .ifPresent(against -> object.set(
                        "probabilityBetterThan",
                        Json.number(against.chances().getOrDefault(entrant.bike(), Double.NaN))));
        object.put("percentile", row.percentile().mean());
        var groups = Json.array();
        row.groups().forEach(groups::add);
        object.set("group", groups);
        object.put("toldApartFromNext", row.toldApartFromNext());
        object.put("date", entrant.date().toString());
        object.put("day", entrant.origin().day());
        object.put("configuration", entrant.origin().configuration());
        object.put("ledger", entrant.isFromLedger());
        if (wish.full()) {
            object.set("rankProbabilities", ranks(row));
        }
        return object;
    }

    private static JsonNode ranks(StandingRow row) {
        var ranks = Json.object();
        IntStream.range(0, row.rankProbabilities().size())
                .filter(rank -> row.rankProbabilities().get(rank) > 0)
                .forEach(rank -> ranks.put(
                        Integer.toString(rank + 1), row.rankProbabilities().get(rank)));
        return ranks;
    }
}
