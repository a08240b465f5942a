package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.archive.BikeEntry;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.trial.Chapter;

/// The page of what can be said of a bike, by the questions a reader asks.
public record SentencesView(
        String title, String bikeHref, String href, Wish wish, List<Choice> chapters, int all, List<Part> parts) {
    /// What the visitor looks for: a chapter's name, and words that a sentence holds; empty for any.
    public record Wish(String chapter, String words) {}

    /// A chapter to choose.
    public record Choice(String value, String words, boolean chosen) {}

    /// The sentences of one chapter.
    public record Part(String title, String anchor, List<Line> lines) {}

    /// One sentence in both forms.
    ///
    /// Shape: `key` is unlike that of any other on the page; `behind` are the numbers behind it, one a line.
    public record Line(
            String key,
            String about,
            String kind,
            String written,
            String spoken,
            String reference,
            List<String> behind) {}

    public static SentencesView of(BikeEntry bike, List<Sentence> sentences, Wish wish, UnitSystem system) {
        var parts = new ArrayList<Part>();
        int key = 0;
        for (Chapter chapter : Chapter.values()) {
            var lines = new ArrayList<Line>();
            for (var sentence : sentences) {
                if (sentence.chapter() == chapter && fits(sentence, wish, system)) {
                    lines.add(line("s-" + ++key, sentence, system));
                }
            }
            if (!lines.isEmpty()) {
                parts.add(new Part(chapter.title(), "chapter-" + chapter.ordinal(), lines));
            }
        }
        var chapters = Arrays.stream(Chapter.values())
                .filter(chapter -> sentences.stream().anyMatch(one -> one.chapter() == chapter))
                .map(chapter -> new Choice(
                        chapter.name(), chapter.title(), chapter.name().equals(wish.chapter())))
                .toList();
        return new SentencesView(
                bike.title(),
                Paths.bike(bike.id()),
                Paths.bike(bike.id()) + "/sentences",
                wish,
                chapters,
                sentences.size(),
                parts);
    }

    private static boolean fits(Sentence sentence, Wish wish, UnitSystem system) {
        var wording = sentence.in(system);
        String all = String.join(" ", sentence.id(), sentence.about(), wording.written(), wording.spoken());
        return (wish.chapter().isEmpty() || sentence.chapter().name().equals(wish.chapter()))
                && all.toLowerCase(Locale.ROOT)
                        .replace('\u00a0', ' ')
                        .contains(wish.words().strip().toLowerCase(Locale.ROOT));
    }

    private static Line line(String key, Sentence sentence, UnitSystem system) {
        var wording = sentence.in(system);
        return new Line(
                key,
                sentence.about(),
                sentence.kind().title(),
                wording.written(),
                wording.spoken(),
                sentence.reference(),
                behind(sentence, system));
    }

    private static List<String> behind(Sentence sentence, UnitSystem system) {
        var behind = sentence.behind();
        var lines = new ArrayList<String>();
        value(behind, system).ifPresent(lines::add);
        if (behind.runs() > 0) {
            lines.add(Printing.count(behind.runs(), "run counts", "runs count"));
        }
        behind.population()
                .ifPresent(expression -> lines.add(Printing.count(behind.bikes(), "bike", "bikes") + " among "
                        + (expression.isEmpty() ? "every bike" : expression)));
        behind.date().ifPresent(date -> lines.add((behind.day().isEmpty() ? "to " : "of ") + Printing.day(date)));
        lines.addAll(behind.remarks());
        return lines;
    }

    private static Optional<String> value(Sentence.Behind behind, UnitSystem system) {
        var halfWidth = behind.interval95().map(Interval::halfWidth);
        return behind.value().isEmpty() || halfWidth.isEmpty()
                ? Optional.empty()
                : Optional.of(QuantityPrinter.desk(system)
                                .figure(behind.value().getAsDouble(), halfWidth.get(), behind.quantity())
                                .text()
                        + " on any day");
    }
}
