package org.measuredmile.desk.cli;

import java.util.concurrent.Callable;
import org.measuredmile.archive.Recomputation;
import org.measuredmile.archive.json.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/// `mile recompute`: every kept file against its hash, every figure against its files.
@Command(
        name = "recompute",
        description = "Rebuild every figure from the kept files and show any difference.",
        mixinStandardHelpOptions = true)
final class RecomputeCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Option(
            names = "--renew",
            description = "first reduce again the days whose figures are missing or of another version of a trial")
    private boolean renew;

    @Override
    public Integer call() {
        try (var archive = chosen.open();
                var progress = new TerminalProgress("recompute")) {
            if (renew) {
                archive.renew(progress).forEach(day -> shown.err().println(day + ": reduced again"));
            }
            var found = archive.recompute(progress);
            show(found);
            return found.differences().isEmpty() ? Mile.DONE : Mile.DATA_SAY_NO;
        }
    }

    private void show(Recomputation found) {
        if (shown.asJson()) {
            shown.json(Json.array(
                    found.differences(),
                    one -> Json.object()
                            .put("day", one.day())
                            .put("subject", one.subject())
                            .put("what", one.what())
                            .put("stored", one.stored())
                            .put("recomputed", one.recomputed())));
            return;
        }
        found.differences().forEach(one -> shown.line(one.line()));
        shown.line(found.days() + " days, " + found.figures() + " figures, " + found.files() + " files: "
                + (found.differences().isEmpty()
                        ? "no difference"
                        : found.differences().size() + " differences"));
    }
}
