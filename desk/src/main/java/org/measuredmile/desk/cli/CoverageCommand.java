package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.demo.ride.SimulatedTrial;
import org.measuredmile.demo.ride.SimulatedTrials;
import org.measuredmile.desk.coverage.Coverage;
import org.measuredmile.desk.coverage.CoverageStudies;
import org.measuredmile.desk.coverage.CoverageTable;
import org.measuredmile.desk.coverage.LeaveOneOut;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tools.jackson.databind.JsonNode;

/// `mile coverage`: how often the intervals hold the truth, by simulation from known truth.
@Command(
        name = "coverage",
        description = "Simulate test days from known truth and count how often the 95 %% intervals hold it.",
        mixinStandardHelpOptions = true)
final class CoverageCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Option(names = "--days", paramLabel = "NUMBER", description = "simulated days a seed (default: 1000)")
    private int days = 1000;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "seeds, once each (default: 1, 2, 3)")
    private List<Long> seeds = List.of(1L, 2L, 3L);

    @Option(names = "--study", paramLabel = "TEXT", description = "only what is simulated under such a title")
    private String study = "";

    @Option(
            names = "--leave-one-out",
            description = "how well one ride is foretold from everything but that ride, instead")
    private boolean leaveOneOut;

    @Override
    public Integer call() {
        if (days < 1) {
            throw new Trouble("--days " + days + ": at least one day is needed");
        }
        return leaveOneOut ? foretell() : study();
    }

    private int foretell() {
        var rows = new ArrayList<LeaveOneOut.Row>();
        try (var progress = new TerminalProgress("coverage")) {
            for (long seed : seeds) {
                rows.addAll(LeaveOneOut.run(seed, days, day -> progress.step("leave one out", day, days)));
            }
        }
        if (shown.asJson()) {
            shown.json(Json.array(rows, CoverageCommand::json));
        } else {
            shown.line(CoverageTable.ofForetold(rows));
        }
        return Mile.DONE;
    }

    private static JsonNode json(LeaveOneOut.Row row) {
        var object = Json.object()
                .put("foretold", row.what())
                .put("days", row.days())
                .put("seed", row.seed())
                .put("rides", row.foretold());
        object.set("meanError", Json.number(row.meanError()));
        object.set("rmsError", Json.number(row.rmsError()));
        object.set("coverage", Json.number(row.held()));
        object.set("halfWidth", Json.number(row.halfWidth()));
        return object;
    }

    private int study() {
        var studies = SimulatedTrials.ALL.stream()
                .filter(simulated -> simulated.title().contains(study))
                .toList();
        if (studies.isEmpty()) {
            throw new Trouble("--study \"" + study + "\": no such study; there are "
                    + SimulatedTrials.ALL.stream().map(SimulatedTrial::title).collect(Collectors.joining(", ")));
        }
        List<Coverage> rows;
        try (var progress = new TerminalProgress("coverage")) {
            rows = CoverageStudies.run(studies, seeds, days, progress::step);
        }
        if (shown.asJson()) {
            shown.json(Json.array(rows, CoverageCommand::json));
        } else {
            shown.line(CoverageTable.markdown(rows));
        }
        return CoverageTable.meetsTheDemand(rows) ? Mile.DONE : Mile.DATA_SAY_NO;
    }

    private static JsonNode json(Coverage row) {
        var object = Json.object()
                .put("study", row.study())
                .put("trial", row.figure().substring(0, row.figure().indexOf('.')))
                .put("figure", row.figure());
        object.set("variant", FigureJson.variant(row.variant()));
        object.put("unit", row.kind().si().symbol())
                .put("days", row.days())
                .put("seed", row.seed())
                .put("figures", row.figures());
        object.set("coverageThisDay", Json.number(row.shareThisDay()));
        object.set("coverageAnyDay", Json.number(row.shareAnyDay()));
        object.set("bias", Json.number(row.bias()));
        object.set("biasInStandardUncertainties", Json.number(row.biasInUncertainties()));
        object.set("halfWidth", widths(row.thisDay().median(), row.anyDay().median()));
        object.set("bestHalfWidth", widths(row.thisDay().best(), row.anyDay().best()));
        object.set("coverageByScatterDecile", Json.array(row.byScatterDecile(), Json::number));
        return object;
    }

    private static JsonNode widths(double thisDay, double anyDay) {
        var object = Json.object();
        object.set("thisDay", Json.number(thisDay));
        object.set("anyDay", Json.number(anyDay));
        return object;
    }
}
