package org.measuredmile.desk.cli;

import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.legal.LegalClasses;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.DecisionRule;
import org.measuredmile.comparison.verdict.Verdict;
import org.measuredmile.comparison.verdict.Wording;
import org.measuredmile.desk.BikeClaims;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile verdict BIKE`: what the data say of each claim of a bike.
///
/// Shape: ends with 1 when the data say no to a claim.
@Command(
        name = "verdict",
        description = "Say for each claim of a bike whether it is met, and which legal classes it fits.",
        mixinStandardHelpOptions = true)
final class VerdictCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(index = "0", paramLabel = "BIKE", description = "a bike's id, or its maker and model")
    private String name = "";

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            var claims = claims(archive, name);
            if (shown.asJson()) {
                var object = Json.object().put("bike", claims.bike().bike().id());
                object.set("claims", ClaimsJson.write(claims, shown.units()));
                var classes = LegalClasses.of(claims.bike());
                object.set("classes", ClassesJson.write(classes));
                object.set("findings", ClassesJson.findings(classes));
                object.set("spec", SpecJson.write(SpecSheet.of(claims.bike())));
                shown.json(Json.array().add(object));
            } else {
                print(claims);
            }
            boolean isAnyShort = claims.verdicts().stream().anyMatch(one -> one.verdict() == Verdict.FALLS_SHORT);
            return isAnyShort ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    /// The claims of a bike that somebody named.
    static BikeClaims claims(Archive archive, String name) {
        return BikeClaims.named(archive, name)
                .flatMap(id -> BikeClaims.of(archive, id))
                .orElseThrow(() -> new Trouble("\"" + name + "\" is no bike of this archive; give one of "
                        + archive.described().keySet().stream().collect(Collectors.joining(", "))));
    }

    private void print(BikeClaims claims) {
        var bike = claims.bike().bike();
        var wording = new Wording(shown.units());
        shown.line(bike.title());
        if (claims.verdicts().isEmpty()) {
            shown.line("  no claim of it can be held against a figure; its claims stand in bike/spec.csv of its days");
        }
        for (ClaimVerdict one : claims.verdicts()) {
            shown.line("");
            shown.line(one.verdict().words() + ": " + one.item().words() + ", “"
                    + one.claim().words() + "”");
            shown.line("  " + wording.of(bike.title(), one));
        }
        shown.line("");
        shown.line(DecisionRule.WORDS);
        classes(LegalClasses.of(claims.bike()));
    }

    private void classes(LegalClasses classes) {
        shown.line("");
        shown.line("legal classes");
        var table = new Table("", "", "", "decided by");
        for (var one : classes.outcomes()) {
            table.row(
                    one.outcome().id().replace('-', ' '),
                    one.legalClass().jurisdiction(),
                    one.legalClass().title(),
                    one.decidedBy().sentence());
        }
        table.lines().forEach(shown::line);
        shown.findings("  ", classes.findings());
        shown.line(LegalClasses.CAUTION);
    }
}
