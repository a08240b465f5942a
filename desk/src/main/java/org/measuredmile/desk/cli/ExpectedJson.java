package org.measuredmile.desk.cli;

import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.expected.Expectation;
import org.measuredmile.comparison.expected.ExpectedLine;
import org.measuredmile.comparison.expected.JudgedBike;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/// An expected-value line, as `mile expected --json` gives it.
///
/// Unit: SI; `slope` per SI unit of what the line is straight in.
final class ExpectedJson {
    private static final int STRETCHES = 20;

    private ExpectedJson() {}

    static ObjectNode declaration(ExpectedLine line) {
        var object =
                Json.object().put("line", line.id()).put("figure", line.figure().id());
        object.set("variant", FigureJson.variant(line.variant()));
        object.put("unit", line.figure().kind().si().symbol());
        object.put("across", line.across().words())
                .put("acrossUnit", line.across().kind().si().symbol());
        return object.put("straightIn", line.bend() == ExpectedLine.Bend.STRAIGHT ? "across" : "1/across");
    }

    static JsonNode write(Expectation expectation) {
        var object = declaration(expectation.line());
        object.set("variant", FigureJson.variant(expectation.variant()));
        switch (expectation) {
            case Expectation.Fitted fitted -> fitted(object, fitted);
            case Expectation.NoLine none ->
                object.putNull("slope").put("why", none.why()).put("bikesFound", none.found());
        }
        object.set(
                "leftOut",
                Json.array(
                        expectation.leftOut(),
                        one -> Json.object().put("bike", one.bike()).put("reason", one.reason())));
        return object;
    }

    private static void fitted(ObjectNode object, Expectation.Fitted fitted) {
        object.set("slope", Json.number(fitted.slope()));
        object.set("slopeInterval95", FigureJson.interval(fitted.slope95()));
        object.set("intercept", Json.number(fitted.intercept()));
        object.set("interceptOfMedians", Json.number(fitted.interceptOfMedians()));
        object.set("scale", Json.number(fitted.scale()));
        object.set("degreesOfFreedom", Json.number(fitted.degreesOfFreedom()));
        object.set("between", Json.array().add(fitted.low()).add(fitted.high()));
        var curve = Json.array();
        for (int i = 0; i <= STRETCHES; i++) {
            double across =
                    i == STRETCHES ? fitted.high() : fitted.low() + i * (fitted.high() - fitted.low()) / STRETCHES;
            fitted.at(across).ifPresent(one -> curve.add(expected(one)));
        }
        object.set("curve", curve);
        object.set("bikes", Json.array(fitted.bikes(), ExpectedJson::bike));
        object.set("findings", FindingJson.write(fitted.findings()));
    }

    private static JsonNode expected(Expectation.Expected one) {
        var object = Json.object();
        object.set("across", Json.number(one.across()));
        object.set("value", Json.number(one.value()));
        object.set("band", FigureJson.interval(one.band()));
        return object;
    }

    private static JsonNode bike(JudgedBike bike) {
        var object = Json.object().put("bike", bike.bike());
        object.set("across", Json.number(bike.across().value()));
        object.set("acrossStandardUncertainty", Json.number(bike.across().standard()));
        object.put("acrossFrom", bike.across().from());
        object.set("value", Json.number(bike.value()));
        object.set("interval95", FigureJson.interval(bike.interval95()));
        object.set("expected", Json.number(bike.expected()));
        object.set("band", FigureJson.interval(bike.band()));
        return object.put(
                        "place",
                        switch (bike.place()) {
                            case INSIDE -> "inside";
                            case OUTSIDE_BUT_REACHING -> "outside-but-reaching";
                            case OUTSIDE -> "outside";
                        })
                .put("side", bike.isAbove() ? "above" : "below");
    }
}
