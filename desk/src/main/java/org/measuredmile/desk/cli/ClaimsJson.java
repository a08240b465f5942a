package org.measuredmile.desk.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.verdict.Agreement;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.MoreRuns;
import org.measuredmile.comparison.verdict.Tried;
import org.measuredmile.comparison.verdict.Wording;
import org.measuredmile.desk.BikeClaims;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.quantity.budget.Uncertainty;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/// A bike's claims with their verdicts, as `mile verdict --json` gives them.
///
/// Unit: values and intervals in the SI unit named by `unit`; intervals are any-day ones.
/// Shape: one object a claim; `measured` and `atConditions` are null where there is none.
public final class ClaimsJson {
    private ClaimsJson() {}

    public static JsonNode write(BikeClaims claims, UnitSystem system) {
        var wording = new Wording(system);
        String title = claims.bike().bike().title();
        return Json.array(claims.verdicts(), one -> claim(one, wording.of(title, one), wording));
    }

    private static JsonNode claim(ClaimVerdict verdict, String sentence, Wording wording) {
        var object = Json.object()
                .put("item", verdict.item().id())
                .put("claimed", verdict.claim().words())
                .put("conditions", verdict.line().conditions())
                .put("source", verdict.line().source())
                .put("date", verdict.line().date());
        object.set("measured", orNull(verdict.measured().map(ClaimsJson::tried)));
        object.set("atConditions", orNull(verdict.atConditions().map(tried -> brought(tried, wording))));
        object.put("verdict", verdict.verdict().id());
        object.set("probability", number(verdict.probability()));
        object.set("agreesWith", Json.array(verdict.agreesWith(), ClaimsJson::agreement));
        object.set("wouldDecide", orNull(verdict.moreRuns().map(ClaimsJson::more)));
        return object.put("reason", verdict.reason())
                .put("remedy", verdict.remedy())
                .put("wording", sentence.replace('\u00a0', ' '));
    }

    private static JsonNode orNull(Optional<? extends JsonNode> node) {
        return node.isPresent() ? node.get() : JsonNodeFactory.instance.nullNode();
    }

    private static JsonNode number(OptionalDouble value) {
        return Json.number(value.orElse(Double.NaN));
    }

    private static ObjectNode tried(Tried tried) {
        var object = result(tried.result(), tried.value(), tried.known());
        return object.put("verdict", tried.judgement().verdict().id());
    }

    private static ObjectNode brought(Tried tried, Wording wording) {
        var object = tried(tried);
        object.set("probability", number(tried.judgement().probability()));
        tried.under().ifPresent(under -> {
            object.put("words", wording.under(under).replace('\u00a0', ' '));
            object.set("riderKg", Json.number(under.riderKg()));
            object.set("airTemperatureK", Json.number(under.airK()));
            object.set("windMps", Json.number(under.windMps()));
            object.set("meanSpeedMps", Json.number(under.meanMps()));
            object.set("riderPowerW", Json.number(under.riderW()));
            object.put("bestCase", under.isBest());
        });
        return object;
    }

    private static ObjectNode result(TestedBike.Result result, double value, Uncertainty known) {
        var figure = result.figure();
        var object = Json.object().put("figure", figure.key().figure());
        object.set("variant", FigureJson.variant(figure.key().variant()));
        object.put("date", result.date().toString()).put("configuration", result.configuration());
        object.set("value", Json.number(value));
        object.put("unit", figure.kind().si().symbol());
        object.set("interval95", FigureJson.interval(known.interval95()));
        return object;
    }

    private static JsonNode agreement(Agreement agreement) {
        var figure = agreement.result().figure();
        return result(agreement.result(), figure.value(), figure.anyDay());
    }

    private static ObjectNode more(MoreRuns more) {
        return Json.object().put("runs", more.runs()).put("days", more.days());
    }
}
