package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.measuredmile.archive.DayFolders;
import org.measuredmile.archive.json.Json;
import org.measuredmile.archive.json.ReduceJson;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.ScatterRecord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile reduce DAY`: a test day's folder to figures, without an archive.
@Command(
        name = "reduce",
        description = "Reduce a test day's folder to figures, without an archive.",
        mixinStandardHelpOptions = true)
final class ReduceCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Parameters(paramLabel = "DAY", description = "a folder with day.yaml, runs.csv, readings.csv, recordings/")
    private Path folder = Path.of("");

    @Override
    public Integer call() throws IOException {
        requireDay(folder);
        return switch (DayReduction.reduce(DayFolders.read(folder), ScatterRecord.DECLARED_PRIORS)) {
            case DayReduction.Result.Reduced reduced -> show(reduced);
            case DayReduction.Result.Unusable unusable -> {
                if (shown.asJson()) {
                    shown.json(Json.array());
                }
                shown.err().println(folder + ": no test day can be made of this:");
                unusable.findings().forEach(finding -> shown.err().println("  " + finding.line()));
                yield Mile.BAD_INPUT;
            }
        };
    }

    private int show(DayReduction.Result.Reduced reduced) {
        if (shown.asJson()) {
            shown.json(ReduceJson.write(reduced));
        } else {
            new DayText(shown).print(reduced);
        }
        return reduced.figures().isEmpty() ? Mile.DATA_SAY_NO : Mile.DONE;
    }

    /// A folder that can be looked into for a test day.
    static void requireDay(Path folder) {
        if (Files.isRegularFile(folder)) {
            throw new Trouble(
                    folder + ": is a file, not a test day's folder; see what is in it with: mile inspect " + folder);
        }
        if (!Files.isDirectory(folder)) {
            throw new Trouble(folder + ": there is no such folder; check the path");
        }
        if (!Files.isRegularFile(folder.resolve("day.yaml"))) {
            throw new Trouble(folder + ": holds no day.yaml, so it is no test day; "
                    + "write one as docs/formats/test-day.md shows");
        }
    }
}
