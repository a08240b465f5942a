package org.measuredmile.desk.cli;

import java.util.ArrayList;
import java.util.concurrent.Callable;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.spec.SpecEntry;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.desk.ChosenBikes;
import org.measuredmile.desk.TestedBikes;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile spec BIKE`: the spec sheet, front to back, each line with its status.
@Command(
        name = "spec",
        description = "The spec sheet of a bike, front to back: claimed, seen, measured, contradicted, not checked.",
        mixinStandardHelpOptions = true)
final class SpecCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(index = "0", paramLabel = "BIKE", description = "the bike's id, or its maker and model")
    private String name = "";

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            var named = ChosenBikes.one(archive, name);
            if (!named.faults().isEmpty()) {
                throw new Trouble(String.join("\n", named.faults()));
            }
            var bike = named.ids().stream()
                    .flatMap(id -> TestedBikes.of(archive, id).stream())
                    .findFirst()
                    .orElseThrow(() -> new Trouble("no bike \"" + name + "\" in this archive"));
            var sheet = SpecSheet.of(bike);
            if (shown.asJson()) {
                var object = Json.object().put("bike", bike.bike().id());
                object.set("spec", SpecJson.write(sheet));
                object.set("sums", Json.texts(sheet.sums()));
                object.set("findings", SpecJson.findings(sheet));
                shown.json(Json.array().add(object));
            } else {
                print(sheet);
            }
            return sheet.count(SpecEntry.Status.CONTRADICTED) > 0 ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    private void print(SpecSheet sheet) {
        shown.line(sheet.bike().bike().title());
        for (var part : SpecItem.Part.values()) {
            var lines = sheet.entries().stream()
                    .filter(entry -> entry.item().part() == part)
                    .toList();
            if (!lines.isEmpty()) {
                shown.line("");
                shown.line(part.title());
                lines.forEach(this::print);
            }
        }
        if (!sheet.sums().isEmpty()) {
            shown.line("");
            shown.line("Worked out");
            sheet.sums().forEach(sum -> shown.line("  " + sum));
        }
        if (!sheet.findings().isEmpty()) {
            shown.line("");
            shown.line("Findings");
            shown.findings("  ", sheet.findings());
        }
    }

    private void print(SpecEntry entry) {
        var said = new ArrayList<String>();
        said.add(entry.isClaimed() ? entry.claimed() : "nothing claimed");
        if (!entry.line().conditions().isBlank()) {
            said.add(entry.line().conditions());
        }
        if (entry.isSeen()) {
            said.add("on the bike " + entry.line().seen());
        }
        entry.measured().ifPresent(result -> said.add("measured " + measured(result.figure())));
        shown.line("  " + entry.item().words() + ": " + entry.status().words() + "; " + String.join("; ", said));
    }

    private String measured(org.measuredmile.trial.Figure figure) {
        double half = figure.anyDay().interval95().halfWidth();
        return shown.printer().figure(figure.value(), half, figure.kind()).text();
    }
}
