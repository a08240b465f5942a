package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// Where a figure comes from: five steps, then all that stands behind them.
///
/// Shape: charts are finished `svg` elements, each for a wide page and for a phone.
public record OriginView(
        String summary,
        List<Step> steps,
        List<RunRow> runs,
        Optional<TraceView> trace,
        List<FindingView> findings,
        String budgetWide,
        String budgetNarrow,
        String covers,
        List<String> narrows,
        List<String> assumed,
        List<String> used,
        List<Input> inputs) {
    /// One of the five steps, with its lines.
    public record Step(String title, List<String> lines) {}

    /// A run's line: where it leads, its word, what it gave, and why it does not count.
    public record RunRow(String id, String href, String state, boolean counted, String value, String reason) {}

    /// A run's plot.
    public record TraceView(String title, String href, String wide, String narrow, String caption) {}

    /// A file or a record the figure was computed from; `href` is empty where it has no bytes of its own.
    public record Input(String kind, String name, String sha256, String shortHash, String href) {}

    public OriginView {
        steps = List.copyOf(steps);
        runs = List.copyOf(runs);
        findings = List.copyOf(findings);
        narrows = List.copyOf(narrows);
        assumed = List.copyOf(assumed);
        used = List.copyOf(used);
        inputs = List.copyOf(inputs);
    }
}
