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
import org.measuredmile.recording.day.FrameRate;
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

    /// One reading's value by itself, as it would be used; nothing when it cannot be.
    public static Optional<Value> value(Declaration declaration, TestDay day, Reading reading) {
        var resolver = new ReadingResolver(day);
        declaration.reading(reading.name()).ifPresent(spec -> resolver.add(spec, reading));
        return resolver.byRun.values().stream()
                .flatMap(values -> values.values().stream())
                .findFirst();
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
        if (spec.kind() == QuantityKind.TIME && FrameReading.isMeant(reading.written())) {
            addFrames(spec, reading);
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

    /// A time by the frames of a camera: the one named, else the usual instrument where that is a camera, else the
    /// day's only camera; or at the rate that is written behind the frames.
    private void addFrames(ReadingSpec spec, Reading reading) {
        var frames = FrameReading.parse(reading.written());
        if (frames.isEmpty()) {
            fault(
                    reading,
                    "reading-not-understood",
                    spec.title() + ": \"" + reading.written() + "\" names no frames in their order",
                    "write frames 1203 to 1266, or 63 frames, and the rate as in 63 frames at 30000/1001");
            return;
        }
        var camera = reading.instrument().isEmpty() ? usualCamera(spec) : day.instrument(reading.instrument());
        var known = camera.flatMap(Instrument::frameRate);
        var stated = frames.get().rate();
        if (stated.isPresent() && known.isPresent() && !stated.equals(known)) {
            fault(
                    reading,
                    "frame-rates-differ",
                    spec.title() + ": " + stated.get().text() + " frames a second stand with the reading, "
                            + known.get().text() + " with the camera "
                            + camera.get().id(),
                    "leave the one that is wrong out");
            return;
        }
        addFrames(spec, reading, frames.get(), stated.or(() -> known));
    }

    private void addFrames(ReadingSpec spec, Reading reading, FrameReading frames, Optional<FrameRate> known) {
        switch (known.orElse(null)) {
            case null ->
                fault(
                        reading,
                        "frames-without-rate",
                        spec.title() + ": frames tell a time only by a camera whose frame rate is known",
                        "write the rate behind them, as in 63 frames at 30000/1001, or the camera's frameRate in"
                                + " day.yaml");
            case FrameRate.Variable _ ->
                fault(
                        reading,
                        "frame-rate-variable",
                        spec.title() + ": the camera's frame rate is variable, so its frames tell no time",
                        "write the time in seconds, by another instrument");
            case FrameRate.Steady rate ->
                addNumber(spec, reading, new Parsed.Value(frames.seconds(rate), Unit.SECOND, frames.stepS(rate)));
        }
    }

    private Optional<Instrument> usualCamera(ReadingSpec spec) {
        var cameras = day.instruments().stream()
                .filter(one -> one.kind() == Instrument.Kind.CAMERA)
                .toList();
        boolean isUsual =
                spec.instrument().filter(Instrument.Kind.CAMERA::equals).isPresent();
        return cameras.size() == 1 || isUsual ? cameras.stream().findFirst() : Optional.empty();
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
        boolean byFrames = spec.kind() == QuantityKind.TIME && FrameReading.isMeant(reading.written());
        var usual = byFrames ? usualCamera(spec) : spec.instrument().flatMap(day::instrument);
        // A blank instrument column may mean any of several alike; then the first listed speaks for it.
        var instrument = reading.instrument().isEmpty() ? usual : day.instrument(reading.instrument());
        double step = byFrames ? 0 : stepOf(spec, instrument);
        double factor = instrument.map(Instrument::factor).orElse(1.0);
        keep(
                reading.run(),
                spec,
                new Value(read.si() * factor, Math.max(step, read.resolutionSi()), "", instrument, reading));
    }

    /// The step of the instrument itself: as written in day.yaml; of a camera, what its frames leave of a
    /// difference; else as the trial declares it.
    private static double stepOf(ReadingSpec spec, Optional<Instrument> instrument) {
        return instrument
                .filter(one -> one.kind().quantity().si().dimension()
                        == spec.kind().si().dimension())
                .flatMap(one -> one.resolution().isPresent()
                        ? Optional.of(one.resolution().getAsDouble())
                        : one.frameRate().flatMap(ReadingResolver::stepOf))
                .orElse(spec.resolution());
    }

    private static Optional<Double> stepOf(FrameRate rate) {
        return switch (rate) {
            case FrameRate.Steady steady -> Optional.of(new FrameReading(0, 0, 2).stepS(steady));
            case FrameRate.Variable _ -> Optional.empty();
        };
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
