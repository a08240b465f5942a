package org.measuredmile.desk.cli;

import java.io.PrintWriter;
import java.util.List;
import org.measuredmile.archive.json.Json;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Finding;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tools.jackson.databind.JsonNode;

/// How a command shows its answer: as text for people in one unit system, or as JSON.
final class Shown {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec command = CommandSpec.create();

    @Option(names = "--json", description = "print JSON, in SI units with every digit")
    private boolean json;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            description = "the system that stands first: metric or imperial (default: metric)")
    private UnitSystem units = UnitSystem.METRIC;

    boolean asJson() {
        return json;
    }

    UnitSystem units() {
        return units;
    }

    QuantityPrinter printer() {
        return QuantityPrinter.desk(units);
    }

    PrintWriter out() {
        return command.commandLine().getOut();
    }

    PrintWriter err() {
        return command.commandLine().getErr();
    }

    void json(JsonNode answer) {
        out().print(Json.pretty(answer));
    }

    /// A line for people; no-break spaces, which terminals and searches trip over, become plain ones.
    void line(String text) {
        out().println(text.replace('\u00a0', ' ').stripTrailing());
    }

    /// A standard deviation, which is a difference, in the unit of the system that stands first.
    String deviation(double si, QuantityKind kind) {
        var unit = kind.shown(units);
        return QuantityPrinter.digits(Rounding.toSignificant(unit.differenceFromSi(si), 4)) + " " + unit.symbol();
    }

    String time(double seconds) {
        return ReadingPrinter.byTheClock(seconds, 0);
    }

    void findings(String indent, List<Finding> findings) {
        findings.forEach(finding -> line(indent + word(finding.level()) + ": " + finding.line()));
    }

    private static String word(Finding.Level level) {
        return switch (level) {
            case NOTE -> "noted";
            case WARNING -> "warning";
            case REFUSED -> "refused";
        };
    }
}
