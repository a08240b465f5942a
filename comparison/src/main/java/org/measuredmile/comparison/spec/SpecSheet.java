package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;

/// A bike's spec sheet: front to back, one line an item, each with its status, and what the arithmetic found.
///
/// Shape: `entries` in the order of [SpecItems#ALL], items that are not known there last, several lines of one item
/// as written; a figure or a mark of an item that nothing is claimed of has a line too. `sums` are the derived values
/// that belong to no single line, in words. `missing` are the known items without a line.
public record SpecSheet(
        TestedBike bike, List<SpecEntry> entries, List<String> sums, List<Finding> findings, List<SpecItem> missing) {
    public SpecSheet {
        entries = List.copyOf(entries);
        sums = List.copyOf(sums);
        findings = List.copyOf(findings);
        missing = List.copyOf(missing);
    }

    /// The sheet of a bike whose specification already holds its marks ([Markings#onto]).
    public static SpecSheet of(TestedBike bike) {
        var lines = new ArrayList<>(bike.bike().spec());
        for (SpecItem item : SpecItems.ALL) {
            boolean isThere = lines.stream().anyMatch(line -> line.item().equals(item.id()));
            boolean isMeasured = item.measure()
                    .filter(measure -> measure.of(bike, java.util.Map.of()).isPresent())
                    .isPresent();
            if (!isThere && isMeasured) {
                lines.add(new SpecLine(item.id(), "", "", "", "", "", "", "", "", Place.NOWHERE));
            }
        }
        lines.sort(Comparator.comparingInt(line -> order(line.item())));
        var entries =
                lines.stream().map(line -> new SpecCheck(bike, line).entry()).toList();
        var arithmetic = new SpecArithmetic(bike, entries);
        var findings = new ArrayList<Finding>();
        entries.forEach(entry -> findings.addAll(entry.findings()));
        findings.addAll(arithmetic.findings());
        var missing = SpecItems.ALL.stream()
                .filter(item -> lines.stream().noneMatch(line -> line.item().equals(item.id())))
                .toList();
        return new SpecSheet(bike, arithmetic.entries(), arithmetic.sums(), findings, missing);
    }

    private static int order(String item) {
        return SpecItems.find(item).map(SpecItems.ALL::indexOf).orElse(SpecItems.ALL.size());
    }

    /// How many lines have a status.
    public long count(SpecEntry.Status status) {
        return entries.stream().filter(entry -> entry.status() == status).count();
    }
}
