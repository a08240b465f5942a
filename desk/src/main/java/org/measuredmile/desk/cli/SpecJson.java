package org.measuredmile.desk.cli;

import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimConditions;
import org.measuredmile.comparison.spec.SpecEntry;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.recording.Place;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/// A bike's spec sheet, as `mile verdict --json` and `mile spec --json` give it.
///
/// Shape: one object a line, front to back. Unit: a measured value in SI, the unit named beside it.
public final class SpecJson {
    private SpecJson() {}

    /// The lines.
    public static JsonNode write(SpecSheet sheet) {
        return Json.array(sheet.entries(), SpecJson::line);
    }

    /// What was noticed of the sheet.
    public static JsonNode findings(SpecSheet sheet) {
        return FindingJson.write(sheet.findings());
    }

    private static JsonNode line(SpecEntry entry) {
        var line = entry.line();
        var object = Json.object()
                .put("item", line.item())
                .put("title", entry.item().words())
                .put("part", entry.item().part().title())
                .put("status", entry.status().id())
                .put("why", entry.why())
                .put("claimed", entry.claimed());
        var conditions = Json.object();
        ClaimConditions.read(line.conditions(), Place.NOWHERE).values().forEach(conditions::put);
        object.set("conditions", conditions);
        object.put("source", line.source())
                .put("date", line.date())
                .put("seen", line.seen())
                .put("photo", line.photo())
                .put("note", line.note())
                .put("derived", entry.derived());
        object.set("measured", entry.measured().map(SpecJson::measured).orElseGet(JsonNodeFactory.instance::nullNode));
        object.set("findings", FindingJson.write(entry.findings()));
        return object;
    }

    private static JsonNode measured(TestedBike.Result result) {
        var figure = result.figure();
        var object = Json.object().put("figure", figure.key().figure());
        object.set("variant", FigureJson.variant(figure.key().variant()));
        object.set("value", Json.number(figure.value()));
        object.put("unit", figure.kind().si().symbol());
        object.set("interval95", FigureJson.interval(figure.anyDay().interval95()));
        return object.put("date", result.date().toString()).put("day", result.day());
    }
}
