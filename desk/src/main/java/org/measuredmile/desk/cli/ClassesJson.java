package org.measuredmile.desk.cli;

import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.comparison.legal.Beside;
import org.measuredmile.comparison.legal.ClassOutcome;
import org.measuredmile.comparison.legal.ClassOutcome.RuleOutcome;
import org.measuredmile.comparison.legal.LegalClasses;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// A bike's legal classes, as `mile verdict --json` gives them.
///
/// Unit: values, intervals and limits are decimals in the unit of the text itself, named beside them.
/// Shape: one object a class in force; each carries its caution and the findings about labels.
public final class ClassesJson {
    private ClassesJson() {}

    public static JsonNode write(LegalClasses classes) {
        return Json.array(classes.outcomes(), ClassesJson::one);
    }

    /// What the bike's own labels get wrong.
    public static JsonNode findings(LegalClasses classes) {
        return FindingJson.write(classes.findings());
    }

    private static JsonNode one(ClassOutcome outcome) {
        var legal = outcome.legalClass();
        var object = Json.object()
                .put("jurisdiction", legal.jurisdiction())
                .put("rule", legal.title())
                .put("basis", legal.basis().words())
                .put("section", legal.section())
                .put("date", legal.date())
                .put("outcome", outcome.outcome().id())
                .put("decidedBy", outcome.decidedBy().rule().measured().id())
                .put("wording", outcome.decidedBy().sentence())
                .put("caution", LegalClasses.CAUTION)
                .put("known", legal.known().words())
                .put("source", legal.source())
                .put("note", legal.note());
        object.set("rules", Json.array(outcome.rules(), ClassesJson::rule));
        return object;
    }

    private static JsonNode rule(RuleOutcome outcome) {
        var rule = outcome.rule();
        var object = Json.object()
                .put("measured", rule.measured().id())
                .put("operator", rule.operator().id())
                .put("asks", rule.asks())
                .put("section", rule.section())
                .put("outcome", outcome.outcome().id())
                .put("basis", outcome.basis().words())
                .put("wording", outcome.said());
        outcome.limit()
                .ifPresent(limit -> object.put("limit", limit.value())
                        .put("unit", limit.unit().symbol()));
        outcome.beside().ifPresent(beside -> {
            beside(object, beside);
            outcome.limit().ifPresent(limit -> object.put("excess", limit.excess(beside)));
        });
        object.set(
                "also",
                Json.array(
                        outcome.also(), one -> beside(Json.object().put("conditions", one.conditions()), one.value())));
        object.set(
                "figure",
                outcome.result().map(ClassesJson::figure).orElseGet(() -> JsonNodeFactory.instance.nullNode()));
        object.set("wouldDecide", Json.texts(outcome.wouldDecide()));
        return object;
    }

    private static JsonNode beside(ObjectNode object, Beside beside) {
        object.put("value", beside.value()).put("unit", beside.unit().symbol());
        object.set("interval95", Json.array().add(beside.low()).add(beside.high()));
        return object;
    }

    private static JsonNode figure(Result result) {
        var key = result.figure().key();
        var object = Json.object().put("figure", key.figure());
        object.set("variant", FigureJson.variant(key.variant()));
        return object.put("date", result.date().toString())
                .put("day", result.day())
                .put("configuration", result.configuration());
    }
}
