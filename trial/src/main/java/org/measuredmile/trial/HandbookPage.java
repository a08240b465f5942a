package org.measuredmile.trial;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;

/// A trial's page of the method handbook, written from its declaration, so that it cannot say anything else than what
/// the tool does.
///
/// Shape: Markdown (CommonMark 0.31 with tables), lines ended by a line feed.
public final class HandbookPage {
    private final Declaration trial;
    private final StringBuilder page = new StringBuilder();

    private HandbookPage(Declaration trial) {
        this.trial = trial;
    }

    public static String of(Declaration trial) {
        return new HandbookPage(trial).write();
    }

    private String write() {
        var handbook = trial.handbook();
        heading(1, trial.title());
        paragraph(trial.purpose());
        paragraph("Trial `" + trial.id() + "`, version " + trial.version() + ". Follows: " + trial.follows() + ".");
        list("Take care", trial.cautions());
        heading(2, "What is measured");
        paragraph(handbook.measurand());
        heading(2, "Formula");
        paragraph(handbook.formula());
        steps(handbook.steps());
        runs();
        readings();
        list("Recordings", trial.recordings().stream().map(this::recording).toList());
        list("Limits", trial.limits().stream().map(this::limit).toList());
        list(
                "A run is void when",
                trial.causes().stream()
                        .map(cause -> cause.words() + " (`" + cause.code() + "`)")
                        .toList());
        figures();
        list(
                "Figures of other trials",
                trial.uses().stream()
                        .map(use -> "`" + use.figure() + "`; without it: " + use.standIn())
                        .toList());
        heading(2, "Worked example");
        paragraph(handbook.example());
        if (!handbook.limits().isBlank()) {
            heading(2, "Where it stops being valid");
            paragraph(handbook.limits());
        }
        list("Sources", handbook.sources());
        return page.toString();
    }

    private void heading(int level, String text) {
        page.append(page.isEmpty() ? "" : "\n")
                .append("#".repeat(level))
                .append(' ')
                .append(text)
                .append('\n');
    }

    private void paragraph(String text) {
        page.append('\n').append(text).append('\n');
    }

    private void list(String title, List<String> items) {
        if (items.isEmpty()) {
            return;
        }
        heading(2, title);
        page.append('\n');
        items.forEach(item -> page.append("- ").append(item).append('\n'));
    }

    private void steps(List<String> steps) {
        if (!steps.isEmpty()) {
            page.append('\n');
        }
        for (int i = 0; i < steps.size(); i++) {
            page.append(i + 1).append(". ").append(steps.get(i)).append('\n');
        }
    }

    private <T> void table(String head, List<T> rows, Function<T, List<String>> cells) {
        page.append('\n').append(head).append('\n');
        page.append(head.chars()
                        .filter(c -> c == '|')
                        .skip(1)
                        .mapToObj(_ -> "| --- ")
                        .collect(Collectors.joining()))
                .append("|\n");
        rows.forEach(row ->
                page.append("| ").append(String.join(" | ", cells.apply(row))).append(" |\n"));
    }

    private void runs() {
        var plan = trial.runs();
        heading(2, "Runs");
        if (trial.isReadOnce()) {
            paragraph("None: what is read is written down once a day.");
            return;
        }
        paragraph(plan.usual() + (plan.usual() == 1 ? " run" : " runs") + " a variant"
                + (plan.bothDirections() ? ", half of them each way" : "") + "; no figure from fewer than "
                + plan.least()
                + "."
                + (trial.needsPreRideCheck()
                        ? " None counts before the pre-ride check is ticked by a second person."
                        : ""));
        if (!trial.variants().isEmpty()) {
            table(
                    "| variant | values | usual |",
                    trial.variants(),
                    key -> List.of(
                            "`" + key.name() + "` " + key.title() + (key.asked() ? "" : ", found by the trial"),
                            key.values().isEmpty()
                                    ? "any"
                                    : key.values().stream()
                                            .map(choice -> ("`" + choice.value() + "` " + choice.words()).strip())
                                            .collect(Collectors.joining(", ")),
                            key.usual().isEmpty() ? "–" : "`" + key.usual() + "`"));
        }
    }

    private void readings() {
        if (trial.readings().isEmpty()) {
            return;
        }
        heading(2, "Readings");
        table(
                "| reading | of | needed | plausible | taken by |",
                trial.readings(),
                spec -> List.of(
                        "`" + spec.name() + "` " + spec.title(),
                        spec.scope() == ReadingSpec.Scope.RUN ? "each run" : "the day",
                        spec.required()
                                ? spec.when().text().isEmpty()
                                        ? "yes"
                                        : "with `" + spec.when().text() + "`"
                                : "no",
                        plausible(spec),
                        spec.takenBy()
                                + spec.instrument()
                                        .map(kind -> ", " + kind.id())
                                        .orElse("")));
    }

    private static String plausible(ReadingSpec spec) {
        if (spec.kind() == QuantityKind.WORD) {
            return spec.choices().isEmpty() ? "words" : String.join(", ", spec.choices());
        }
        if (Double.isInfinite(spec.plausible().low())
                || Double.isInfinite(spec.plausible().high())) {
            return "any";
        }
        return range(spec.kind(), spec.plausible().low(), spec.plausible().high());
    }

    private static String range(QuantityKind kind, double low, double high) {
        var unit = kind.shown(UnitSystem.METRIC);
        String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        return ReadingResolver.plain(unit.fromSi(low)) + " to " + ReadingResolver.plain(unit.fromSi(high)) + symbol;
    }

    private String recording(RecordingSpec spec) {
        return spec.title() + ": at least " + ReadingResolver.plain(spec.leastRateHz())
                + " samples a second. Otherwise: " + spec.remedy();
    }

    private String limit(Limit limit) {
        var kind = trial.reading(limit.reading()).orElseThrow().kind();
        String when =
                limit.when().text().isEmpty() ? "" : " with `" + limit.when().text() + "`";
        String follows = switch (limit.broken()) {
            case RUN_DOES_NOT_COUNT -> "the run is shown and does not count";
            case NO_FIGURE -> "there is no figure";
            case WIDER -> "the interval is wider";
        };
        return limit.title() + when + " from "
                + range(kind, limit.allowed().low(), limit.allowed().high()) + "; outside, " + follows + " ("
                + limit.source() + ")";
    }

    private void figures() {
        heading(2, "Figures");
        if (trial.figures().isEmpty()) {
            paragraph("None: readings only.");
            return;
        }
        table(
                "| figure | unit | better | differs by | between runs | between days |",
                trial.figures(),
                spec -> List.of(
                        "`" + spec.id() + "` " + spec.title() + (spec.meaning().isEmpty() ? "" : ": " + spec.meaning()),
                        spec.kind().si().symbol().isEmpty()
                                ? "1"
                                : spec.kind().si().symbol(),
                        switch (spec.better()) {
                            case LESS -> "less";
                            case MORE -> "more";
                            case NEITHER -> "–";
                        },
                        spec.variantKeys().isEmpty() ? "–" : String.join(", ", spec.variantKeys()),
                        scatter(spec, spec.prior().betweenRuns(), spec.prior().runDegreesOfFreedom()),
                        scatter(spec, spec.prior().betweenDays(), spec.prior().dayDegreesOfFreedom())));
    }

    private static String scatter(FigureSpec spec, double deviation, double degrees) {
        if (deviation == 0) {
            return "–";
        }
        String size = spec.prior().relative()
                ? ReadingResolver.plain(100 * deviation) + " %"
                : ReadingResolver.plain(deviation) + " " + spec.kind().si().symbol();
        return size.strip() + (Double.isInfinite(degrees) ? "" : " (ν " + ReadingResolver.plain(degrees) + ")");
    }
}
