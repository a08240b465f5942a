package org.measuredmile.archive.json;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/// A figure as `mile reduce --json` gives it and the archive stores it.
///
/// Unit: SI, the unit named beside the value. Infinite degrees of freedom are null.
public final class FigureJson {
    private FigureJson() {}

    /// What a figure of a day hangs on.
    public record Of(String bike, Configuration configuration, LocalDate date) {
        public static Of day(TestDay day) {
            return new Of(day.bike(), day.configuration(), day.date());
        }
    }

    /// @param correlations of the figure's trial; those of other figures are left out
    public static ObjectNode write(Of of, Figure figure, List<Correlation> correlations) {
        var object = head(of);
        object.put("trial", figure.trial());
        object.put("version", figure.version());
        object.put("figure", figure.key().figure());
        object.set("variant", variant(figure.key().variant()));
        object.set("value", Json.number(figure.value()));
        object.put("unit", figure.kind().si().symbol());
        object.set(
                "standardUncertainty",
                two(
                        Json.number(figure.thisDay().standard()),
                        Json.number(figure.anyDay().standard())));
        object.set(
                "degreesOfFreedom",
                two(
                        Json.number(figure.thisDay().degreesOfFreedom()),
                        Json.number(figure.anyDay().degreesOfFreedom())));
        object.set(
                "interval95",
                two(
                        interval(figure.thisDay().interval95()),
                        interval(figure.anyDay().interval95())));
        object.set("runs", Json.array(figure.runs(), FigureJson::run));
        object.set("runStandardDeviation", Json.number(figure.scatterOfRuns().orElse(Double.NaN)));
        var budget = new Budget(figure.budget());
        object.set("budget", Json.array(figure.budget(), one -> contribution(one, budget.share(one))));
        object.set("narrows", Json.array(figure.narrows(), FigureJson::narrowing));
        object.set("assumed", Json.texts(figure.assumed()));
        object.set("used", Json.array(figure.used(), FigureJson::used));
        var leaning =
                correlations.stream().filter(one -> one.isOf(figure.key())).toList();
        object.set("correlations", Json.array(leaning, one -> correlation(one, figure.key())));
        object.set("findings", FindingJson.write(figure.findings()));
        object.set("inputs", Json.array(figure.inputs(), FigureJson::input));
        return object;
    }

    /// The first keys: which bike, set up how, on which day.
    static ObjectNode head(Of of) {
        var object = Json.object();
        object.put("bike", of.bike());
        object.set("configuration", configuration(of.configuration()));
        object.put("date", of.date().toString());
        return object;
    }

    /// The figure that was written.
    public static Figure read(JsonNode node, QuantityKind kind) {
        return new Figure(
                new FigureKey(node.path("figure").asString(), variant(node.path("variant"))),
                kind,
                node.path("trial").asString(),
                node.path("version").asInt(),
                node.path("value").asDouble(),
                uncertainty(node, "thisDay"),
                uncertainty(node, "anyDay"),
                all(node.path("runs"), FigureJson::readRun),
                all(node.path("budget"), FigureJson::readContribution),
                all(node.path("narrows"), FigureJson::readNarrowing),
                all(node.path("assumed"), JsonNode::asString),
                all(node.path("used"), FigureJson::readUsed),
                FindingJson.readAll(node.path("findings")),
                all(node.path("inputs"), FigureJson::readInput));
    }

    /// How the figure that was written leans on others; nothing where that was not kept yet.
    public static List<Correlation> readCorrelations(JsonNode node) {
        var key = new FigureKey(node.path("figure").asString(), variant(node.path("variant")));
        return all(node.path("correlations"), one -> readCorrelation(one, key));
    }

    public static ObjectNode variant(Variant variant) {
        var object = Json.object();
        variant.values().forEach(object::put);
        return object;
    }

    public static JsonNode interval(Interval interval) {
        return Json.array().add(Json.number(interval.low())).add(Json.number(interval.high()));
    }

    private static JsonNode configuration(Configuration configuration) {
        var object = Json.object()
                .put("firmware", configuration.firmware())
                .put("battery", configuration.battery())
                .put("tyres", configuration.tyres());
        object.set("tyrePressureFront", number(configuration.tyrePressureFrontPa()));
        object.set("tyrePressureRear", number(configuration.tyrePressureRearPa()));
        object.set("accessories", Json.texts(configuration.accessories()));
        return object;
    }

    private static JsonNode number(OptionalDouble value) {
        return Json.number(value.orElse(Double.NaN));
    }

    private static JsonNode two(JsonNode thisDay, JsonNode anyDay) {
        var object = Json.object();
        object.set("thisDay", thisDay);
        object.set("anyDay", anyDay);
        return object;
    }

    private static JsonNode run(Figure.FigureRun run) {
        var object = Json.object()
                .put("run", run.run())
                .put("state", run.state().name().toLowerCase(Locale.ROOT))
                .put("counted", run.counted())
                .put("reason", run.reason());
        object.set("value", number(run.value()));
        return object;
    }

    private static JsonNode contribution(Contribution one, double share) {
        var object = Json.object()
                .put("input", one.input())
                .put("kind", one.evaluation().name());
        object.set("contribution", Json.number(one.standardUncertainty()));
        object.set("share", Json.number(share));
        object.set("degreesOfFreedom", Json.number(one.degreesOfFreedom()));
        object.put("shared", one.shared());
        return object;
    }

    private static JsonNode narrowing(Figure.Narrowing narrowing) {
        var object = Json.object().put("what", narrowing.what());
        object.set("intervalThen", interval(narrowing.intervalThen()));
        return object;
    }

    private static JsonNode used(Figure.Used used) {
        var object = Json.object().put("figure", used.key().figure());
        object.set("variant", variant(used.key().variant()));
        object.put("sha256", used.sha256());
        return object;
    }

    private static JsonNode correlation(Correlation correlation, FigureKey of) {
        var other = correlation.besides(of);
        var object = Json.object().put("figure", other.figure());
        object.set("variant", variant(other.variant()));
        object.set("coefficient", Json.number(correlation.coefficient()));
        return object;
    }

    static JsonNode input(Figure.InputHash input) {
        return Json.object().put("kind", input.kind()).put("name", input.name()).put("sha256", input.sha256());
    }

    private static <T> List<T> all(JsonNode nodes, java.util.function.Function<JsonNode, T> each) {
        return nodes.valueStream().map(each).toList();
    }

    private static Variant variant(JsonNode node) {
        var values = new TreeMap<String, String>();
        node.forEachEntry((key, value) -> values.put(key, value.asString()));
        return new Variant(values);
    }

    private static Uncertainty uncertainty(JsonNode node, String which) {
        return new Uncertainty(
                node.path("standardUncertainty").path(which).asDouble(),
                degrees(node.path("degreesOfFreedom").path(which)),
                readInterval(node.path("interval95").path(which)));
    }

    private static double degrees(JsonNode node) {
        return node.isNumber() ? node.asDouble() : Double.POSITIVE_INFINITY;
    }

    private static Interval readInterval(JsonNode node) {
        double low = node.path(0).isNumber() ? node.path(0).asDouble() : Double.NEGATIVE_INFINITY;
        double high = node.path(1).isNumber() ? node.path(1).asDouble() : Double.POSITIVE_INFINITY;
        return new Interval(low, high);
    }

    private static Figure.FigureRun readRun(JsonNode node) {
        var value = node.path("value");
        return new Figure.FigureRun(
                node.path("run").asString(),
                Run.State.valueOf(node.path("state").asString().toUpperCase(Locale.ROOT)),
                node.path("counted").asBoolean(),
                node.path("reason").asString(),
                value.isNumber() ? OptionalDouble.of(value.asDouble()) : OptionalDouble.empty());
    }

    private static Contribution readContribution(JsonNode node) {
        return new Contribution(
                node.path("input").asString(),
                Contribution.Evaluation.valueOf(node.path("kind").asString()),
                node.path("contribution").asDouble(),
                degrees(node.path("degreesOfFreedom")),
                node.path("shared").asString());
    }

    private static Figure.Narrowing readNarrowing(JsonNode node) {
        return new Figure.Narrowing(node.path("what").asString(), readInterval(node.path("intervalThen")));
    }

    private static Figure.Used readUsed(JsonNode node) {
        var key = new FigureKey(node.path("figure").asString(), variant(node.path("variant")));
        return new Figure.Used(key, node.path("sha256").asString());
    }

    private static Correlation readCorrelation(JsonNode node, FigureKey of) {
        var other = new FigureKey(node.path("figure").asString(), variant(node.path("variant")));
        return new Correlation(of, other, node.path("coefficient").asDouble());
    }

    private static Figure.InputHash readInput(JsonNode node) {
        return new Figure.InputHash(
                node.path("kind").asString(),
                node.path("name").asString(),
                node.path("sha256").asString());
    }
}
