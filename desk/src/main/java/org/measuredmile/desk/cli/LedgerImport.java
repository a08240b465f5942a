package org.measuredmile.desk.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.LedgerReport;
import org.measuredmile.archive.json.FindingJson;
import org.measuredmile.archive.json.Json;
import org.measuredmile.archive.ledger.Ledger;
import org.measuredmile.archive.ledger.LedgerEntry;

/// Results of earlier years from a file: the columns are shown first, and taken in once somebody says yes.
final class LedgerImport {
    private static final int SHOWN = 5;

    private final Shown shown;
    private final Chosen chosen;
    private final boolean yes;

    LedgerImport(Shown shown, Chosen chosen, boolean yes) {
        this.shown = shown;
        this.chosen = chosen;
        this.yes = yes;
    }

    int take(Path file, Act act) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new Trouble(file + ": there is no such file; check the path");
        }
        byte[] bytes = Files.readAllBytes(file);
        String name = file.getFileName().toString();
        var ledger = Ledger.read(name, bytes);
        if (!shown.asJson()) {
            show(ledger);
        }
        if (ledger.entries().isEmpty()) {
            ledger.findings().forEach(finding -> shown.err().println(finding.line()));
            shown.err().println(name + ": no result can be taken in");
            return Mile.BAD_INPUT;
        }
        if (!yes && !isConfirmed()) {
            shown.err().println("Nothing was taken in. Take it in with --yes, or give a column another name first.");
            return Mile.BAD_INPUT;
        }
        try (var archive = chosen.openOrMake()) {
            var report = archive.importLedger(name, bytes, act);
            if (shown.asJson()) {
                json(report);
            } else {
                shown.line(name + ": "
                        + (report.isNew() ? "revision " : "nothing new, still revision ") + report.revision() + ", "
                        + ledger.entries().size() + " results");
            }
        }
        return Mile.DONE;
    }

    private static boolean isConfirmed() {
        @Nullable Console console = System.console();
        if (console == null || !console.isTerminal()) {
            return false;
        }
        String answer = console.readLine("Take these results in? yes or no: ");
        return answer != null && answer.strip().equalsIgnoreCase("yes");
    }

    private void show(Ledger ledger) {
        shown.line("columns of " + ledger.name());
        ledger.mapping().lines().forEach(line -> shown.line("  " + line));
        shown.line("");
        List<LedgerEntry> first = ledger.entries().stream().limit(SHOWN).toList();
        var table = new Table("bike", "figure", "variant", "written", "read as", "± any day", "date", "runs");
        for (var entry : first) {
            var printed = shown.printer()
                    .figure(
                            entry.value(),
                            entry.anyDay().interval95().halfWidth(),
                            entry.figure().kind());
            table.row(
                    entry.result().bike(),
                    entry.figure().id(),
                    entry.variant().text(),
                    entry.result().written(),
                    (printed.value() + " " + printed.unit()).strip(),
                    printed.plusMinus(),
                    entry.date().toString(),
                    "" + entry.runs());
        }
        table.lines().forEach(shown::line);
        int more = ledger.entries().size() - first.size();
        shown.line((more > 0 ? "and " + more + " more; " : "") + "lines without a value: " + ledger.blanks());
        shown.findings("", ledger.findings());
        shown.line("");
    }

    private void json(LedgerReport report) {
        var ledger = report.ledger();
        var object = Json.object()
                .put("ledger", ledger.name())
                .put("revision", report.revision())
                .put("new", report.isNew());
        object.set(
                "columns",
                Json.array(
                        ledger.mapping().columns(),
                        column -> Json.object()
                                .put("written", column.written())
                                .put(
                                        "field",
                                        column.field().map(field -> field.id()).orElse(""))));
        object.put("results", ledger.entries().size()).put("blanks", ledger.blanks());
        object.set("findings", FindingJson.write(ledger.findings()));
        shown.json(Json.array().add(object));
    }
}
