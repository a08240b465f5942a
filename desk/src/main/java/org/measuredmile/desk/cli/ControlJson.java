package org.measuredmile.desk.cli;

import java.util.Locale;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.control.AgainstControl;
import org.measuredmile.comparison.control.ControlChart;
import org.measuredmile.comparison.control.DayAndTester;
import org.measuredmile.desk.ControlDays.Charted;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/// A control chart, as `mile control --json` gives it.
///
/// Unit: the SI unit named by `unit`; components of variance as shares where `relative`.
final class ControlJson {
    private ControlJson() {}

    static JsonNode write(Charted charted) {
        var chart = charted.chart();
        var object = Json.object()
                .put("bike", charted.bike())
                .put("figure", charted.key().figure());
        object.set("variant", FigureJson.variant(charted.key().variant()));
        object.put("unit", charted.spec().kind().si().symbol());
        object.set("mean", Json.number(chart.mean()));
        object.set("limits", chart.limits().<JsonNode>map(ControlJson::limits).orElseGet(ControlJson::none));
        object.set(
                "betweenDays",
                chart.betweenDays()
                        .<JsonNode>map(found -> Json.number(found.between()))
                        .orElseGet(ControlJson::none));
        object.set("declaredBetweenDays", Json.number(charted.spec().prior().betweenDaysAt(chart.mean())));
        object.set("days", Json.array(chart.points(), ControlJson::point));
        object.set("others", Json.array(charted.others(), ControlJson::other));
        object.set(
                "components",
                charted.components().<JsonNode>map(ControlJson::components).orElseGet(ControlJson::none));
        return object;
    }

    private static JsonNode none() {
        return JsonNodeFactory.instance.nullNode();
    }

    private static JsonNode limits(ControlChart.Limits limits) {
        var object = Json.object();
        object.set("meanMovingRange", Json.number(limits.meanMovingRange()));
        object.set("standardDeviation", Json.number(limits.standardDeviation()));
        object.set("interval", FigureJson.interval(limits.interval()));
        return object.put("provisional", limits.provisional());
    }

    private static JsonNode point(ControlChart.Point point) {
        var day = point.day();
        var object = Json.object()
                .put("day", day.day())
                .put("date", day.date().toString())
                .put("tester", day.tester());
        object.set("value", Json.number(day.value()));
        object.set("difference", Json.number(point.difference()));
        object.set("interval95ThisDay", FigureJson.interval(point.own95()));
        object.put("configurationChanged", point.reconfigured());
        var signals = Json.array();
        point.signals()
                .forEach(one -> signals.add(one.name().toLowerCase(Locale.ROOT).replace('_', '-')));
        object.set("signals", signals);
        return object;
    }

    private static JsonNode other(AgainstControl other) {
        var object = Json.object().put("bike", other.bike());
        object.set("difference", Json.number(other.value()));
        object.set("interval95", FigureJson.interval(other.interval95()));
        object.set("weightAtNoDayEffect", Json.number(other.weightAtNoDayEffect()));
        return object;
    }

    private static JsonNode components(DayAndTester found) {
        var object = Json.object()
                .put("relative", found.relative())
                .put("bikes", found.bikes())
                .put("days", found.days())
                .put("testers", found.testers())
                .put("runs", found.runs());
        object.set("betweenRuns", Json.number(found.run()));
        object.put("why", found.why());
        object.set("components", Json.array(found.components(), one -> {
            var component = Json.object().put("name", one.words());
            component.set("standardDeviation", Json.number(one.standardDeviation()));
            component.set("interval95", FigureJson.interval(one.interval95()));
            component.set("bySquares", Json.number(one.bySquares()));
            return component.put("degreesOfFreedom", one.degreesOfFreedom());
        }));
        return object;
    }
}
