package org.measuredmile.archive.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.LedgerMapping;
import org.measuredmile.recording.day.LedgerReader;
import org.measuredmile.recording.day.LedgerResult;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;

/// A ledger's file, read: how its columns were taken, its results, and what was noticed on the way.
///
/// Shape: `blanks` counts lines without a value; lines that cannot be used stand in the findings.
public record Ledger(
        String name, LedgerMapping mapping, List<LedgerEntry> entries, int blanks, List<Finding> findings) {
    public Ledger {
        entries = List.copyOf(entries);
        findings = List.copyOf(findings);
    }

    /// Reads a ledger and resolves its results by the figures' declarations.
    public static Ledger read(String name, byte[] bytes) {
        var read = LedgerReader.read(name, bytes, id -> Trials.figure(id).map(FigureSpec::kind));
        var findings = new ArrayList<>(read.findings());
        var entries = new ArrayList<LedgerEntry>();
        read.results()
                .forEach(result -> Trials.delivering(result.figureId())
                        .flatMap(trial -> entry(name, trial, result, findings))
                        .ifPresent(entries::add));
        return new Ledger(name, read.mapping(), entries, read.blanks(), findings);
    }

    private static Optional<LedgerEntry> entry(String name, Trial trial, LedgerResult result, List<Finding> findings) {
        var figure = trial.declaration().requireFigure(result.figureId());
        if (result.date().isEmpty()) {
            findings.add(Finding.warning(
                    "ledger-without-date",
                    result.place(),
                    "no date is written, so it stands in no population",
                    "write the day, or the year alone"));
            return Optional.empty();
        }
        if (!EarlierYears.isDeclared(figure)) {
            findings.add(Finding.warning(
                    "ledger-without-scatter",
                    result.place(),
                    figure.id() + " has no declared scatter, so an older result would have no interval",
                    ""));
            return Optional.empty();
        }
        int runs = result.runs().orElse(1);
        return Optional.of(new LedgerEntry(
                name,
                result,
                figure,
                completed(trial, figure, result.variant()),
                result.date().get(),
                runs,
                EarlierYears.budget(figure, result.si(), step(figure, result), runs)));
    }

    /// The step of the last digit written; 0 where the text alone does not say.
    private static double step(FigureSpec figure, LedgerResult result) {
        return switch (QuantityText.parse(result.written(), figure.kind())) {
            case Parsed.Value value -> value.resolutionSi();
            case Parsed.Fault _ -> 0;
        };
    }

    private static Variant completed(Trial trial, FigureSpec figure, Variant written) {
        var values = new TreeMap<>(written.values());
        for (String key : figure.variantKeys()) {
            trial.declaration()
                    .variant(key)
                    .map(known -> known.usual())
                    .filter(usual -> !usual.isEmpty())
                    .ifPresent(usual -> values.putIfAbsent(key, usual));
        }
        return new Variant(values);
    }
}
