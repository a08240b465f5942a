package org.measuredmile.archive.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.RunResult.Stretch;
import org.measuredmile.trial.Trials;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/// A reduced day, as `mile reduce --json` gives it: one object a figure; one without a figure for each trial that
/// gave
/// none, with its runs and the reasons; and one without a trial for what was noticed about the day's own files
/// and its recordings, where there was anything.
///
/// Shape: an object without a figure has null for `figure`, `value` and all that hangs on them.
public final class ReduceJson {
    private ReduceJson() {}

    public static ArrayNode write(DayReduction.Result.Reduced reduced) {
        var of = FigureJson.Of.day(reduced.day());
        var all = Json.array();
        for (var trial : Trials.ALL) {
            var declaration = trial.declaration();
            var outcome = reduced.outcomes().get(declaration.id());
            if (outcome == null) {
                continue;
            }
            for (var figure : outcome.figures()) {
                var object = FigureJson.write(of, withTrial(figure, outcome), outcome.correlations());
                placed(object.path("runs"), reduced.day(), outcome.runs());
                all.add(object);
            }
            if (outcome.figures().isEmpty()) {
                var object = empty(of, declaration.id(), declaration.version(), outcome, reduced.inputs());
                placed(object.path("runs"), reduced.day(), outcome.runs());
                all.add(object);
            }
        }
        var ofFiles = new ArrayList<>(reduced.findings());
        reduced.recordings().values().forEach(decoding -> ofFiles.addAll(DayReduction.findingsOf(decoding)));
        if (!ofFiles.isEmpty()) {
            all.add(empty(of, "", 0, new Outcome(List.of(), List.of(), ofFiles), reduced.inputs()));
        }
        return all;
    }

    /// What a trial noticed belongs to each of its figures.
    private static Figure withTrial(Figure figure, Outcome outcome) {
        var missing = outcome.findings().stream()
                .filter(finding -> !figure.findings().contains(finding))
                .toList();
        return figure.noting(missing);
    }

    /// Says of each run in which recording it lies, from when to when, and whether a person set its ends.
    private static void placed(JsonNode nodes, TestDay day, List<RunResult> runs) {
        for (JsonNode node : nodes) {
            if (node instanceof ObjectNode object) {
                String id = object.path("run").asString();
                var stretch = runs.stream()
                        .filter(run -> run.run().equals(id))
                        .findFirst()
                        .flatMap(RunResult::stretch);
                object.put("recording", stretch.map(Stretch::recording).orElse(null));
                object.set("from", Json.number(stretch.map(Stretch::fromS).orElse(Double.NaN)));
                object.set("to", Json.number(stretch.map(Stretch::toS).orElse(Double.NaN)));
                object.put(
                        "ends",
                        stretch.map(one -> day.recording(one.recording())
                                        .flatMap(entry -> entry.window(id))
                                        .isPresent())
                                .map(isSet -> isSet ? "set" : "found")
                                .orElse(null));
            }
        }
    }

    private static ObjectNode empty(
            FigureJson.Of of, String trial, int version, Outcome outcome, List<Figure.InputHash> inputs) {
        var object = FigureJson.head(of);
        if (trial.isEmpty()) {
            object.putNull("trial").putNull("version");
        } else {
            object.put("trial", trial).put("version", version);
        }
        object.putNull("figure");
        object.set("variant", Json.object());
        for (String key : List.of("value", "unit", "standardUncertainty", "degreesOfFreedom", "interval95")) {
            object.putNull(key);
        }
        object.set("runs", Json.array(outcome.runs(), ReduceJson::run));
        for (String key : List.of("budget", "narrows", "assumed", "used", "correlations")) {
            object.set(key, Json.array());
        }
        List<Finding> findings = outcome.findings();
        object.set("findings", FindingJson.write(findings));
        object.set("inputs", Json.array(inputs, FigureJson::input));
        return object;
    }

    private static JsonNode run(RunResult run) {
        return Json.object()
                .put("run", run.run())
                .put("state", run.state().name().toLowerCase(Locale.ROOT))
                .put("counted", run.counted())
                .put("reason", run.reason())
                .putNull("value");
    }
}
