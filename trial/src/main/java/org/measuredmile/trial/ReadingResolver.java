package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.ResolvedReadings.Value;

/// Reads a day's readings by a trial's declaration: text to SI, once, with everything that cannot be read or believed
/// named at its place.
public final class ReadingResolver {
    private final TestDay day;
    private final SortedMap<String, SortedMap<String, Value>> byRun = new TreeMap<>();
    private final SortedMap<String, List<Finding>> faults = new TreeMap<>();

    private ReadingResolver(TestDay day) {
        this.day = day;
    }

    /// The readings of a day as one trial understands them; those of other trials are passed over.
    public static ResolvedReadings resolve(Declaration declaration, TestDay day) {
        var resolver = new ReadingResolver(day);
        var runIds = day.runs().stream()
                .filter(run -> run.trial().equals(declaration.id()))
                .map(run -> run.id())
                .toList();
        for (var spec : declaration.readings()) {
            ConditionReadings.find(day.conditions(), spec.name()).ifPresent(value -> resolver.keep("", spec, value));
        }
        for (var reading : day.readings()) {
            var spec = declaration.reading(reading.name());
            if (spec.isPresent() && (reading.run().isEmpty() || runIds.contains(reading.run()))) {
                resolver.add(spec.get(), reading);
            }
        }
        return new ResolvedReadings(resolver.byRun, resolver.faults);
    }

    /// What is wrong with one reading by itself; empty when it can be used. For telling a person at once.
    public static Optional<Finding> check(Declaration declaration, TestDay day, Reading reading) {
        var resolver = new ReadingResolver(day);
        declaration.reading(reading.name()).ifPresent(spec -> resolver.add(spec, reading));
        return resolver.faults.values().stream().flatMap(List::stream).findFirst();
    }

    private void keep(String run, ReadingSpec spec, Value value) {
        byRun.computeIfAbsent(run, _ -> new TreeMap<>()).put(spec.name(), value);
    }

    private void fault(Reading reading, String code, String message, String remedy) {
        faults.computeIfAbsent(reading.run(), _ -> new ArrayList<>())
                .add(Finding.warning(code, reading.place(), message, remedy));
    }

    private void add(ReadingSpec spec, Reading reading) {
        if (reading.value().isBlank()) {
            return;
        }
        if (spec.kind() == QuantityKind.WORD) {
            addWord(spec, reading);
            return;
        }
        var bare = spec.kind() == QuantityKind.COUNT || spec.kind() == QuantityKind.RATIO
                ? Optional.of(Unit.ONE)
                : Optional.<Unit>empty();
        var parsed = bare.isPresent()
                ? QuantityText.parse(reading.written(), spec.kind(), bare.get())
                : QuantityText.parse(reading.written(), spec.kind());
        switch (parsed) {
            case Parsed.Fault(String message, String remedy) ->
                fault(reading, "reading-not-understood", spec.title() + ": " + message, remedy);
            case Parsed.Value read -> addNumber(spec, reading, read);
        }
    }

    private void addWord(ReadingSpec spec, Reading reading) {
        String word = reading.value().strip();
        if (!spec.choices().isEmpty() && !spec.choices().contains(word.toLowerCase(Locale.ROOT))) {
            fault(
                    reading,
                    "reading-not-understood",
                    spec.title() + ": \"" + word + "\" is none of " + String.join(", ", spec.choices()),
                    "write one of them");
            return;
        }
        keep(reading.run(), spec, new Value(0, 0, word, Optional.empty(), reading));
    }

    private void addNumber(ReadingSpec spec, Reading reading, Parsed.Value read) {
        if (!spec.plausible().contains(read.si())) {
            fault(
                    reading,
                    "reading-not-plausible",
                    spec.title() + " " + reading.written() + " " + range(spec, read),
                    "look at the slip or the display again and write what it says");
            return;
        }
        var instrument = reading.instrument().isEmpty()
                ? spec.instrument().flatMap(day::instrument)
                : day.instrument(reading.instrument());
        // A blank instrument column may mean any of several alike; then the first listed speaks for it.
        double resolution = instrument
                .filter(one -> one.resolution().isPresent()
                        && one.kind().quantity().si().dimension()
                                == spec.kind().si().dimension())
                .map(one -> one.resolution().getAsDouble())
                .orElse(spec.resolution());
        double factor = instrument.map(Instrument::factor).orElse(1.0);
        keep(
                reading.run(),
                spec,
                new Value(read.si() * factor, Math.max(resolution, read.resolutionSi()), "", instrument, reading));
    }

    private static String range(ReadingSpec spec, Parsed.Value read) {
        var unit = read.unit();
        String words = "cannot be: it lies between "
                + plain(unit.fromSi(spec.plausible().low())) + " and "
                + plain(unit.fromSi(spec.plausible().high())) + " " + unit.symbol();
        double written = unit.fromSi(read.si());
        for (double factor : new double[] {0.1, 10, 0.01, 100}) {
            if (spec.plausible().contains(unit.toSi(written * factor))) {
                return words + "; did you mean " + plain(written * factor) + "?";
            }
        }
        return words;
    }

    /// A number as people write it, to four digits.
    static String plain(double value) {
        return Rounding.toSignificant(value, 4).stripTrailingZeros().toPlainString();
    }
}
