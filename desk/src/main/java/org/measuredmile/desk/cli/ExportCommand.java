package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile export DIR`: the whole archive as plain files, which `mile import DIR` takes in again.
@Command(
        name = "export",
        description = "Write the whole archive as plain files that import again without loss.",
        mixinStandardHelpOptions = true)
final class ExportCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(paramLabel = "DIR", description = "a folder that is empty or does not exist yet")
    private Path target = Path.of("");

    @Override
    public Integer call() throws IOException {
        try (var archive = chosen.open();
                var progress = new TerminalProgress("export")) {
            archive.export(target, progress);
            if (shown.asJson()) {
                shown.json(org.measuredmile.archive.json.Json.array()
                        .add(org.measuredmile.archive.json.Json.object()
                                .put("folder", target.toString())
                                .put("days", archive.days().size())));
            } else {
                shown.line(archive.days().size() + " test days written into " + target
                        + "; take them in again with: mile import " + target + " --archive PATH");
            }
        }
        return Mile.DONE;
    }
}
