package org.measuredmile.archive.json;

import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;

/// Findings as `{code, level, place, message, remedy}`; the place is its text.
public final class FindingJson {
    private FindingJson() {}

    public static JsonNode write(Finding finding) {
        return Json.object()
                .put("code", finding.code())
                .put("level", finding.level().name().toLowerCase(Locale.ROOT))
                .put("place", finding.place().text())
                .put("message", finding.message())
                .put("remedy", finding.remedy());
    }

    public static ArrayNode write(List<Finding> findings) {
        return Json.array(findings, FindingJson::write);
    }

    /// The finding that was written; its place's text stands as the place's own words.
    public static Finding read(JsonNode node) {
        return new Finding(
                node.path("code").asString(),
                Finding.Level.valueOf(node.path("level").asString().toUpperCase(Locale.ROOT)),
                new Place("", node.path("place").asString()),
                node.path("message").asString(),
                node.path("remedy").asString());
    }

    public static List<Finding> readAll(JsonNode nodes) {
        return nodes.valueStream().map(FindingJson::read).toList();
    }
}
