package org.measuredmile.desk.cli;

import java.util.stream.IntStream;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.standing.Standing;
import org.measuredmile.comparison.standing.StandingRow;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/// A standing, as `mile standings --json` gives it.
///
/// Unit: values and intervals in the SI unit named by `unit`; intervals are any-day ones.
final class StandingsJson {
    private StandingsJson() {}

    static JsonNode write(Standing standing, boolean full) {
        var object = Json.object().put("figure", standing.figure().id());
        object.set("variant", FigureJson.variant(standing.variant()));
        object.put("unit", standing.figure().kind().si().symbol());
        var population = Json.object()
                .put("expression", standing.population().expression())
                .put("count", standing.count());
        population.set(
                "date",
                standing.date()
                        .<JsonNode>map(date -> JsonNodeFactory.instance.stringNode(date.toString()))
                        .orElseGet(JsonNodeFactory.instance::nullNode));
        population.put("ledger", standing.population().ledger());
        object.set("population", population);
        object.set("rows", Json.array(standing.rows(), row -> row(row, full)));
        return object;
    }

    private static JsonNode row(StandingRow row, boolean full) {
        var entrant = row.entrant();
        var object = Json.object().put("bike", entrant.bike());
        object.set("value", Json.number(entrant.value()));
        object.set("interval95", FigureJson.interval(entrant.anyDay().interval95()));
        object.put("rank", row.rank()).put("joint", row.joint());
        object.set("rankInterval95", Json.array().add(row.rankLow()).add(row.rankHigh()));
        object.put("probabilityBest", row.probabilityBest());
        object.put("probabilityTopThree", row.probabilityTopThree());
        var groups = Json.array();
        row.groups().forEach(groups::add);
        object.set("group", groups);
        object.put("toldApartFromNext", row.toldApartFromNext());
        object.put("date", entrant.date().toString());
        object.put("ledger", entrant.isFromLedger());
        if (full) {
            var ranks = Json.object();
            IntStream.range(0, row.rankProbabilities().size())
                    .filter(rank -> row.rankProbabilities().get(rank) > 0)
                    .forEach(rank -> ranks.put(
                            Integer.toString(rank + 1), row.rankProbabilities().get(rank)));
            object.set("rankProbabilities", ranks);
        }
        return object;
    }
}
