package org.measuredmile.desk.cli;

import java.util.stream.IntStream;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.sidebyside.Cell;
import org.measuredmile.comparison.sidebyside.Difference;
import org.measuredmile.comparison.sidebyside.FactRow;
import org.measuredmile.comparison.sidebyside.FigureRow;
import org.measuredmile.comparison.sidebyside.SideBySide;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// Bikes side by side, as `mile compare --json` gives them.
///
/// Unit: values, differences and intervals in the SI unit named by `unit`; intervals are any-day ones.
final class CompareJson {
    private CompareJson() {}

    static JsonNode write(SideBySide sides) {
        var object = Json.object();
        object.set(
                "bikes",
                Json.array(
                        sides.bikes(),
                        one -> Json.object()
                                .put("bike", one.bike().id())
                                .put("title", one.bike().title())));
        object.set("rows", Json.array(sides.rows(), row -> row(sides, row)));
        object.set("facts", Json.array(sides.facts(), fact -> fact(sides, fact)));
        return object;
    }

    private static String bike(SideBySide sides, int place) {
        return sides.bikes().get(place).bike().id();
    }

    private static JsonNode row(SideBySide sides, FigureRow row) {
        var object = Json.object().put("figure", row.figure().id());
        object.set("variant", FigureJson.variant(row.variant()));
        object.put("unit", row.figure().kind().si().symbol());
        object.put("foldable", row.foldable());
        var values = Json.array();
        IntStream.range(0, row.cells().size())
                .mapToObj(i -> value(bike(sides, i), row.cells().get(i)))
                .forEach(values::add);
        object.set("values", values);
        object.set("differences", Json.array(row.differences(), one -> difference(sides, one)));
        object.put("saying", row.saying());
        return object;
    }

    private static JsonNode value(String bike, Cell cell) {
        var object = Json.object().put("bike", bike);
        switch (cell) {
            case Cell.Measured(var result) -> {
                var figure = result.figure();
                object.set("value", Json.number(figure.value()));
                object.set("interval95", FigureJson.interval(figure.anyDay().interval95()));
                object.put("date", result.date().toString());
                object.set("missing", JsonNodeFactory.instance.nullNode());
            }
            case Cell.NotRidden(String reason) -> missing(object, "not ridden: " + reason);
            case Cell.NotMeasured() -> missing(object, "not measured");
        }
        return object;
    }

    private static void missing(ObjectNode object, String why) {
        object.set("value", JsonNodeFactory.instance.nullNode());
        object.set("interval95", JsonNodeFactory.instance.nullNode());
        object.set("date", JsonNodeFactory.instance.nullNode());
        object.put("missing", why);
    }

    private static JsonNode difference(SideBySide sides, Difference one) {
        var object = Json.object().put("one", bike(sides, one.one())).put("other", bike(sides, one.other()));
        object.set("difference", Json.number(one.value()));
        object.set("interval95", FigureJson.interval(one.interval95()));
        object.put("real", one.real());
        object.set("adjusted", Json.number(one.adjusted()));
        return object;
    }

    private static JsonNode fact(SideBySide sides, FactRow fact) {
        var object = Json.object().put("item", fact.item());
        var values = Json.array();
        IntStream.range(0, fact.words().size())
                .mapToObj(i -> Json.object()
                        .put("bike", bike(sides, i))
                        .put("words", fact.words().get(i)))
                .forEach(values::add);
        object.set("values", values);
        return object;
    }
}
