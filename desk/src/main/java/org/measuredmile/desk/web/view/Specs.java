package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.Markings;
import org.measuredmile.comparison.spec.SpecEntry;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.comparison.spec.SpecItems;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.trial.Trials;

/// Makes the page of a bike's spec sheet.
public final class Specs {
    private final Printing printing;
    private final SpecSheet sheet;
    private final Source source;
    private final Optional<SpecLine> chosen;

    /// The test day whose folder describes the bike, and how many lines its spec.csv holds: what is written
    /// here becomes a revision of it.
    public record Source(String day, String date, int lines) {}

    /// @param chosen the line that the form changes; empty for a new one
    public Specs(Printing printing, SpecSheet sheet, Source source, Optional<SpecLine> chosen) {
        this.printing = printing;
        this.sheet = sheet;
        this.source = source;
        this.chosen = chosen;
    }

    public SpecView view() {
        String id = sheet.bike().bike().id();
        return new SpecView(
                sheet.bike().bike().title(),
                Paths.spec(id),
                BikeTab.SPEC.of(id),
                Arrays.stream(SpecEntry.Status.values())
                        .map(status -> new SpecView.Count(mark(status), status.words(), sheet.count(status)))
                        .filter(count -> count.lines() > 0)
                        .toList(),
                parts(),
                sheet.sums().stream().map(Specs::unbroken).toList(),
                FindingView.of(sheet.findings()),
                sheet.missing().stream().map(SpecItem::words).toList(),
                Paths.trial(source.day(), Markings.TRIAL),
                Printing.shortDay(LocalDate.parse(source.date())),
                new SpecView.Form(
                        chosen.map(line ->
                                        "Change " + SpecItems.named(line.item()).words())
                                .orElse("Add a line"),
                        items(),
                        chosen.isPresent()));
    }

    private List<RunView.Choice> items() {
        var known = SpecItems.ALL.stream()
                .map(item -> new RunView.Choice(item.id(), Printing.capital(item.words()) + example(item)));
        var others = chosen
                .map(SpecLine::item)
                .filter(item -> SpecItems.find(item).isEmpty())
                .stream()
                .map(item -> new RunView.Choice(item, item));
        return Stream.concat(known, others).toList();
    }

    private static String example(SpecItem item) {
        return item.example().isEmpty() ? "" : " (" + item.example() + ")";
    }

    private List<SpecView.Part> parts() {
        var parts = new ArrayList<SpecView.Part>();
        for (var part : SpecItem.Part.values()) {
            var lines = sheet.entries().stream()
                    .filter(entry -> entry.item().part() == part)
                    .map(this::line)
                    .toList();
            if (!lines.isEmpty()) {
                parts.add(new SpecView.Part(part.title(), part.name().toLowerCase(Locale.ROOT), lines));
            }
        }
        return parts;
    }

    private SpecView.Line line(SpecEntry entry) {
        SpecLine line = entry.line();
        return new SpecView.Line(
                Printing.capital(entry.item().words()),
                mark(entry.status()),
                entry.status().words(),
                entry.status() == SpecEntry.Status.CONTRADICTED ? "heavy" : "",
                entry.why(),
                entry.claimed(),
                under(line),
                line.seen(),
                line.photo(),
                entry.measured().map(result -> printing.anyDay(result.figure())),
                entry.measured().map(this::how).orElse(""),
                entry.measured().map(result -> Paths.day(result.day())).orElse(""),
                entry.derived(),
                line.note(),
                href(line));
    }

    /// The form with a line of spec.csv in it, or with the item of one that stands only on the bike or in a figure.
    private String href(SpecLine line) {
        int number = sheet.bike().bike().spec().indexOf(line);
        boolean isWritten = number >= 0 && number < source.lines();
        return Paths.spec(sheet.bike().bike().id())
                + (isWritten ? "?line=" + number : "?item=" + Paths.query(line.item()))
                + "#write";
    }

    private String how(TestedBike.Result result) {
        var key = result.figure().key();
        String words = Trials.delivering(key.figure())
                .map(trial -> trial.declaration().words(key.variant()))
                .orElse("");
        return Stream.of(words, Printing.shortDay(result.date()))
                .filter(one -> !one.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static String under(SpecLine line) {
        return Stream.of(line.conditions(), line.source(), line.date())
                .filter(one -> !one.isBlank())
                .collect(Collectors.joining(" · "));
    }

    private static String mark(SpecEntry.Status status) {
        return switch (status) {
            case CONTRADICTED -> "void";
            case MEASURED -> "valid";
            case SEEN -> "noted";
            case CLAIMED -> "claimed";
            case NOT_CHECKED -> "refused";
        };
    }

    /// A number and its unit stay on one line.
    private static String unbroken(String words) {
        return words.replaceAll("(\\d) (?=(?:kg|lb|Wh|V|Ah|mm)\\b)", "$1\u00a0");
    }
}
