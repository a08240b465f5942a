package org.measuredmile.desk.cli;

import java.util.Locale;
import java.util.OptionalDouble;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.comparison.sentence.SentenceChange;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// A sentence, as `mile sentences --json` gives it.
///
/// Unit: value and interval in the SI unit named by `unit`.
final class SentencesJson {
    private SentencesJson() {}

    static ObjectNode write(Sentence sentence) {
        var object = Json.object()
                .put("id", sentence.id())
                .put("hash", sentence.hash())
                .put("bike", sentence.bike())
                .put("kind", sentence.kind().id())
                .put("about", sentence.about());
        object.set(
                "written", both(sentence.metric().written(), sentence.imperial().written()));
        object.set(
                "spoken", both(sentence.metric().spoken(), sentence.imperial().spoken()));
        object.set("behind", behind(sentence.behind()));
        return object;
    }

    static JsonNode both(String metric, String imperial) {
        return Json.object().put("metric", metric).put("imperial", imperial);
    }

    private static JsonNode behind(Sentence.Behind behind) {
        var object = Json.object();
        behind.figure()
                .ifPresentOrElse(
                        key -> {
                            object.put("figure", key.figure());
                            object.set("variant", FigureJson.variant(key.variant()));
                        },
                        () -> object.putNull("figure").putNull("variant"));
        object.set("value", number(behind.value()));
        object.put("unit", behind.quantity().si().symbol());
        object.set(
                "interval95",
                behind.interval95().<JsonNode>map(FigureJson::interval).orElseGet(JsonNodeFactory.instance::nullNode));
        object.put("runs", behind.runs());
        object.set("population", population(behind));
        object.put("date", behind.date().map(Object::toString).orElse(""));
        object.put("day", behind.day());
        object.set("remarks", Json.texts(behind.remarks()));
        return object;
    }

    private static JsonNode population(Sentence.Behind behind) {
        return behind.population()
                .<JsonNode>map(expression ->
                        Json.object().put("expression", expression).put("count", behind.bikes()))
                .orElseGet(JsonNodeFactory.instance::nullNode);
    }

    private static JsonNode number(OptionalDouble value) {
        return Json.number(value.orElse(Double.NaN));
    }

    /// What became of a sentence since it was last seen.
    static JsonNode change(SentenceChange change) {
        var object =
                Json.object().put("id", change.id()).put("change", change.kind().word());
        object.set(
                "causes",
                Json.texts(change.causes().stream()
                        .map(cause -> cause.name().toLowerCase(Locale.ROOT))
                        .toList()));
        object.set(
                "before",
                change.before()
                        .<JsonNode>map(seen -> said(seen.hash(), seen.metric(), seen.imperial()))
                        .orElseGet(JsonNodeFactory.instance::nullNode));
        object.set(
                "now",
                change.now()
                        .<JsonNode>map(one -> said(one.hash(), one.metric(), one.imperial()))
                        .orElseGet(JsonNodeFactory.instance::nullNode));
        return object;
    }

    private static JsonNode said(String hash, Sentence.Wording metric, Sentence.Wording imperial) {
        var object = Json.object().put("hash", hash);
        object.set("written", both(metric.written(), imperial.written()));
        object.set("spoken", both(metric.spoken(), imperial.spoken()));
        return object;
    }
}
