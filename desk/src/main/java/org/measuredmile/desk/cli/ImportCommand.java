package org.measuredmile.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.ArchiveExport;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.archive.DayFolders;
import org.measuredmile.archive.ImportReport;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.databind.JsonNode;

/// `mile import DAY…`: test days, exports and ledgers into the archive.
@Command(
        name = "import",
        description = "Take test days, an export, or results of earlier years (--ledger) into the archive.",
        mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(
            arity = "0..*",
            paramLabel = "DAY",
            description = "test days' folders, or a folder that `mile export` wrote")
    private List<Path> folders = List.of();

    @Option(names = "--who", paramLabel = "CODE", description = "who takes it in, by crew code (default: crew)")
    private String who = "crew";

    @Option(names = "--why", paramLabel = "WORDS", description = "why, for the history")
    private @Nullable String why;

    @Option(names = "--ledger", paramLabel = "FILE", description = "results of earlier years, one a line")
    private @Nullable Path ledger;

    @Option(names = "--yes", description = "with --ledger: take it in without asking")
    private boolean yes;

    @Override
    public Integer call() throws IOException {
        if (ledger != null) {
            if (!folders.isEmpty()) {
                throw new Trouble("Take test days and a ledger in one after the other, not at once.");
            }
            var act = new Act(who, why == null ? "results of earlier years" : why);
            return new LedgerImport(shown, chosen, yes).take(ledger, act);
        }
        if (folders.isEmpty()) {
            throw new Trouble("Give a test day's folder (mile import DAY) or a ledger (mile import --ledger FILE).");
        }
        folders.stream().filter(folder -> !ArchiveExport.isExport(folder)).forEach(ReduceCommand::requireDay);
        var reports = new ArrayList<ImportReport>();
        try (var archive = chosen.openOrMake();
                var progress = new TerminalProgress("import")) {
            for (int i = 0; i < folders.size(); i++) {
                progress.step(folders.get(i).toString(), i, folders.size());
                reports.addAll(take(archive, folders.get(i), progress));
            }
        }
        if (shown.asJson()) {
            shown.json(Json.array(reports, ImportCommand::json));
        } else {
            reports.forEach(this::print);
        }
        boolean allReduced = reports.stream().allMatch(report -> report.entry().state() == DayEntry.State.REDUCED);
        return allReduced ? Mile.DONE : Mile.DATA_SAY_NO;
    }

    private List<ImportReport> take(Archive archive, Path folder, TerminalProgress progress) throws IOException {
        if (ArchiveExport.isExport(folder)) {
            return ArchiveExport.bringIn(archive, folder, progress);
        }
        var act = new Act(who, why == null ? "taken in from " + folder.getFileName() : why);
        return List.of(archive.importDay(DayFolders.read(folder), act));
    }

    private static JsonNode json(ImportReport report) {
        var object = Json.object()
                .put("day", report.day())
                .put("revision", report.revision())
                .put("state", report.entry().state().name().toLowerCase(java.util.Locale.ROOT));
        object.set(
                "changes",
                Json.array(
                        report.changes(),
                        change -> Json.object()
                                .put("kind", change.kind().name().toLowerCase(java.util.Locale.ROOT))
                                .put("path", change.path())));
        object.put("figures", report.entry().figures());
        object.put("message", report.entry().message());
        object.set("findings", FindingJson.write(report.entry().findings()));
        return object;
    }

    private void print(ImportReport report) {
        String what = report.isNew()
                ? "revision " + report.revision() + ", " + report.changes().size() + " files added or changed"
                : "nothing new, still revision " + report.revision();
        switch (report.entry().state()) {
            case REDUCED ->
                shown.line(report.day() + ": " + what + ", " + report.entry().figures() + " figures");
            case UNUSABLE ->
                shown.line(
                        report.day() + ": " + what + "; the files are kept, but no test day can be made of " + "them:");
            case FAILED ->
                shown.line(report.day() + ": " + what + "; the files are kept, but the reduction failed: "
                        + report.entry().message());
        }
        shown.findings("  ", report.entry().findings());
    }
}
