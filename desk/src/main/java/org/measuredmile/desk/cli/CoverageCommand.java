package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.measuredmile.archive.json.FigureJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.demo.ride.SimulatedTrials;
import org.measuredmile.desk.coverage.Coverage;
import org.measuredmile.desk.coverage.CoverageStudy;
import org.measuredmile.desk.coverage.CoverageTable;
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
    /// The band that a share of held intervals must lie in to be called 95 %.
    private static final double LEAST = 0.93;

    private static final double MOST = 0.97;

    @Mixin
    private Shown shown = new Shown();

    @Option(names = "--days", paramLabel = "NUMBER", description = "simulated days a seed (default: 1000)")
    private int days = 1000;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "seeds, once each (default: 1, 2, 3)")
    private List<Long> seeds = List.of(1L, 2L, 3L);

    @Override
    public Integer call() {
        if (days < 1) {
            throw new Trouble("--days " + days + ": at least one day is needed");
        }
        var rows = new ArrayList<Coverage>();
        long all = (long) SimulatedTrials.ALL.size() * seeds.size() * days;
        long done = 0;
        try (var progress = new TerminalProgress("coverage")) {
            for (var simulated : SimulatedTrials.ALL) {
                for (long seed : seeds) {
                    long before = done;
                    rows.addAll(CoverageStudy.run(
                            simulated, seed, days, day -> progress.step(simulated.title(), before + day, all)));
                    done += days;
                }
            }
        }
        if (shown.asJson()) {
            shown.json(Json.array(rows, CoverageCommand::json));
        } else {
            shown.line(CoverageTable.markdown(rows));
        }
        boolean allHold = rows.stream().allMatch(row -> holds(row.shareThisDay()) && holds(row.shareAnyDay()));
        return allHold ? Mile.DONE : Mile.DATA_SAY_NO;
    }

    private static boolean holds(double share) {
        return share >= LEAST && share <= MOST;
    }

    private static JsonNode json(Coverage row) {
        var object = Json.object().put("study", row.study()).put("figure", row.figure());
        object.set("variant", FigureJson.variant(row.variant()));
        object.put("unit", row.kind().si().symbol())
                .put("seed", row.seed())
                .put("days", row.days())
                .put("figures", row.figures());
        object.set("heldThisDay", Json.number(row.shareThisDay()));
        object.set("heldAnyDay", Json.number(row.shareAnyDay()));
        object.set("bias", Json.number(row.bias()));
        object.set("halfWidthThisDay", widths(row.thisDay()));
        object.set("halfWidthAnyDay", widths(row.anyDay()));
        return object;
    }

    private static JsonNode widths(Coverage.HalfWidths widths) {
        var object = Json.object();
        object.set("median", Json.number(widths.median()));
        object.set("best", Json.number(widths.best()));
        return object;
    }
}
