package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.ReadingResolver;
import org.measuredmile.trial.ResolvedReadings;
import org.measuredmile.trial.Trials;

/// What a bike itself says, as the readings of the trial markings of one test day hold it.
///
/// Shape: by the item of the spec sheet, each as a line that claims nothing: `seen` as it stands on the bike, `photo`
/// the file names of its pictures, `date` the day it was read.
public record Markings(Map<String, SpecLine> lines) {
    /// The trial whose readings these are.
    public static final String TRIAL = "markings";

    private static final Pattern PICTURE = Pattern.compile("\\S+\\.(?i:jpe?g|png|webp|heic|gif)");

    public Markings {
        lines = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(lines));
    }

    /// What was read on a day; no line where nothing was.
    public static Markings of(TestDay day) {
        var lines = new LinkedHashMap<String, SpecLine>();
        Trials.find(TRIAL).ifPresent(trial -> {
            var read = ReadingResolver.resolve(trial.declaration(), day);
            String photos = read.word("", "photo");
            for (var item : SpecItems.ALL) {
                seen(item, read)
                        .ifPresent(mark -> lines.put(
                                item.id(),
                                new SpecLine(
                                        item.id(),
                                        "",
                                        "",
                                        "",
                                        "",
                                        day.date().toString(),
                                        mark.words(),
                                        mark.photo().orElse(photos),
                                        mark.note(),
                                        mark.first().reading().place())));
            }
        });
        return new Markings(lines);
    }

    /// What the bike says of an item.
    public Optional<SpecLine> line(String item) {
        return Optional.ofNullable(lines.get(item));
    }

    public boolean isEmpty() {
        return lines.isEmpty();
    }

    /// One mark or two that belong together.
    private record Mark(String words, ResolvedReadings.Value first) {
        Optional<String> photo() {
            return Optional.of(first.reading().note())
                    .filter(note -> PICTURE.matcher(note).matches());
        }

        String note() {
            return photo().isPresent() ? "" : first.reading().note();
        }
    }

    private static Optional<Mark> seen(SpecItem item, ResolvedReadings read) {
        return switch (item.id()) {
            case "tyre-pressure" -> both(read, "tyre-pressure-low", "tyre-pressure-high", " to ");
            case "certification-mark" -> both(read, "certification-mark", "certification-number", ", number ");
            default -> item.marking().isEmpty() ? Optional.empty() : one(read, item.marking());
        };
    }

    private static Optional<Mark> one(ResolvedReadings read, String name) {
        return read.ofDay(name).map(value -> new Mark(value.reading().written(), value));
    }

    private static Optional<Mark> both(ResolvedReadings read, String name, String other, String between) {
        var first = one(read, name);
        var second = one(read, other);
        if (first.isPresent() && second.isPresent()) {
            String words = first.get().words() + between + second.get().words();
            return Optional.of(new Mark(words, first.get().first()));
        }
        return first.or(() -> second);
    }

    /// The bike with its marks beside its claims: under a line of the same item that nothing was seen for, else
    /// as a line of its own.
    public Bike onto(Bike bike) {
        var waiting = new LinkedHashMap<>(lines);
        var spec = new ArrayList<SpecLine>();
        for (SpecLine line : bike.spec()) {
            SpecLine mark = line.seen().isBlank() ? waiting.remove(line.item()) : null;
            spec.add(mark == null ? line : with(line, mark));
        }
        spec.addAll(waiting.values());
        return new Bike(
                bike.id(),
                bike.maker(),
                bike.model(),
                bike.modelYear(),
                bike.category(),
                bike.drive(),
                bike.sensor(),
                bike.levels(),
                bike.wheelSize(),
                bike.price(),
                bike.loan(),
                List.copyOf(spec));
    }

    private static SpecLine with(SpecLine line, SpecLine mark) {
        return new SpecLine(
                line.item(),
                line.claimed(),
                line.unit(),
                line.conditions(),
                line.source(),
                line.date(),
                mark.seen(),
                line.photo().isBlank() ? mark.photo() : line.photo(),
                line.note().isBlank() ? mark.note() : line.note(),
                line.place());
    }
}
