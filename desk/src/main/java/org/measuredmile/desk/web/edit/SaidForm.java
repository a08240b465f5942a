package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.spoken.SpokenClip;
import org.measuredmile.recording.spoken.SpokenReading;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.Trials;
import org.measuredmile.trial.VariantKey;

/// A number said in a clip that a person makes a reading of; nothing becomes one without it.
///
/// Shape: fields are `reading` (`TRIAL/NAME`), `run` (an id, `new`, or empty for the day), `rider` and `variant` for a
/// new run, `value` as it is to be written, `who`, and `why` in free words.
public final class SaidForm {
    /// The choice of a run that is not written yet.
    public static final String NEW = "new";

    private final DayReduction.Result.Reduced reduced;
    private final UnitSystem system;
    private final Typed typed;
    private final Map<String, String> faults = new TreeMap<>();

    /// A number said, in which file, and when by the clock of the recording beside it, where that is known.
    public record Said(String file, SpokenReading reading, Optional<Instant> time) {
        /// Its time in the clip, which tells it from the others.
        public String at() {
            return String.format(Locale.ROOT, "%.3f", reading.timeS());
        }

        /// How the note of a reading begins that was made of it.
        private String origin() {
            return "said in " + file + " at " + at() + " s: “" + reading.text() + "”";
        }
    }

    /// What came of reading the form.
    public sealed interface Read {
        /// The day with one reading more, and that in words.
        record Kept(TestDay day, String what) implements Read {}

        record Refused(Typed typed) implements Read {}
    }

    public SaidForm(DayReduction.Result.Reduced reduced, UnitSystem system, Typed typed) {
        this.reduced = reduced;
        this.system = system;
        this.typed = typed;
    }

    /// A line of a clip as something that can be accepted.
    public static Said said(DayReduction.Result.Reduced reduced, String file, SpokenClip.Line line) {
        Optional<Instant> time = line.recording()
                .flatMap(beside ->
                        line.trace().flatMap(trace -> instant(reduced, beside.recording(), trace.traceTimeS())));
        return new Said(file, line.reading(), time);
    }

    private static Optional<Instant> instant(DayReduction.Result.Reduced reduced, String recording, double timeS) {
        double clockS = reduced.day()
                .recording(recording)
                .map(RecordingEntry::clockOffsetS)
                .orElse(0.0);
        return reduced.recordings().get(recording) instanceof Decoding.Decoded(Recording decoded)
                ? decoded.start().map(start -> start.plusMillis(Math.round(1000 * (timeS + clockS))))
                : Optional.empty();
    }

    /// The readings that were made of a number said.
    public static List<Reading> accepted(TestDay day, Said said) {
        return day.readings().stream()
                .filter(reading -> reading.note().startsWith(said.origin()))
                .toList();
    }

    /// Reads the form; all faults at once.
    public Read read(Said said) {
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who accepts it? A crew code such as T1.");
        }
        String[] chosen = typed.get("reading").split("/", 2);
        Optional<Declaration> trial = Trials.find(chosen[0]).map(one -> one.declaration());
        Optional<ReadingSpec> spec = trial.flatMap(one -> chosen.length < 2 ? Optional.empty() : one.reading(chosen[1]))
                .filter(one -> one.kind() != QuantityKind.WORD);
        if (trial.isEmpty() || spec.isEmpty()) {
            faults.put("reading", "Which reading is it?");
            return new Read.Refused(typed.wrong(faults));
        }
        return read(said, trial.get(), spec.get());
    }

    private Read read(Said said, Declaration trial, ReadingSpec spec) {
        Optional<Run> fresh = typed.get("run").equals(NEW) ? Optional.of(newRun(said, trial)) : Optional.empty();
        String run = fresh.map(Run::id).orElse(typed.get("run"));
        if (fresh.isEmpty()) {
            requireRun(run, trial, spec);
        }
        var written = new TypedReading(trial, reduced.day(), system);
        String value = typed.get("value");
        String fault = value.isEmpty() ? "What was said, with its unit." : written.fault(spec, value);
        if (!fault.isEmpty()) {
            faults.put("value", fault);
        }
        if (!faults.isEmpty()) {
            return new Read.Refused(typed.wrong(faults));
        }
        String why = typed.get("why");
        var author = new TypedReading.Author(
                run, typed.get("who"), said.time(), said.origin() + (why.isEmpty() ? "" : "; " + why));
        var runs = new ArrayList<>(reduced.day().runs());
        fresh.ifPresent(runs::add);
        var readings = new ArrayList<>(reduced.day().readings());
        readings.add(written.reading(spec, value, author));
        String what = "“" + said.reading().text() + "”, said in " + said.file() + " at " + said.at()
                + " s, accepted as " + spec.title() + (run.isEmpty() ? " of the day" : " of run " + run);
        return new Read.Kept(DayParts.with(reduced.day(), runs, readings), what + (why.isEmpty() ? "" : ": " + why));
    }

    private void requireRun(String id, Declaration trial, ReadingSpec spec) {
        if (id.isEmpty()) {
            if (spec.scope() == ReadingSpec.Scope.RUN) {
                faults.put("run", "Of which run? This reading is taken for each run.");
            }
        } else {
            Optional<Run> run = reduced.day().runs().stream()
                    .filter(one -> one.id().equals(id))
                    .findFirst();
            if (run.isEmpty()) {
                faults.put("run", "The day has no run “" + id + "”.");
            } else if (!run.get().trial().equals(trial.id())) {
                faults.put(
                        "run", "Run " + id + " is no run of this trial; the reading is one of " + trial.title() + ".");
            }
        }
        reduced.day().readings().stream()
                .filter(one -> one.run().equals(id) && one.name().equals(spec.name()))
                .findFirst()
                .ifPresent(there -> faults.putIfAbsent(
                        "run",
                        "It has this reading already: " + there.written()
                                + (there.by().isEmpty() ? "" : " by " + there.by()) + ". That one stays."));
    }

    /// A run that only the clip tells of: proposed, until a person looks at it.
    private Run newRun(Said said, Declaration trial) {
        String rider = typed.get("rider");
        if (!rider.isEmpty() && reduced.day().rider(rider).isEmpty()) {
            faults.put("rider", "The day has no rider “" + rider + "”.");
        }
        String usual =
                reduced.day().riders().stream().findFirst().map(Rider::code).orElse("");
        return new Run(
                Runs.nextId(reduced, trial.id()),
                trial.id(),
                variant(trial),
                rider.isEmpty() ? usual : rider,
                said.time(),
                "",
                "",
                Run.State.PROPOSED,
                "",
                "told by " + said.file(),
                Place.NOWHERE);
    }

    /// `drive=pedal level=3`; what is left out is as usual.
    private Variant variant(Declaration trial) {
        var said = new TreeMap<String, String>();
        for (String word : typed.get("variant").split("[\\s,;]+")) {
            String[] pair = word.split("=", 2);
            if (pair.length == 2) {
                said.put(pair[0], pair[1]);
            } else if (!word.isEmpty()) {
                faults.put("variant", "Write it as drive=pedal level=3; “" + word + "” has no equals sign.");
            }
        }
        var variant = Variant.NONE;
        for (VariantKey key : trial.variants()) {
            if (key.asked()) {
                String value = Optional.ofNullable(said.remove(key.name())).orElse(key.usual());
                boolean isOne = key.admits(value) && value.matches("[\\p{L}\\p{N}._-]+");
                if (value.isEmpty() || !isOne) {
                    faults.putIfAbsent(
                            "variant", "Say which " + key.title() + ", as in " + key.name() + "=" + example(key));
                } else {
                    variant = variant.with(key.name(), value);
                }
            }
        }
        if (!said.isEmpty()) {
            faults.putIfAbsent("variant", trial.title() + " does not ask for “" + said.firstKey() + "”.");
        }
        return variant;
    }

    private static String example(VariantKey key) {
        return key.values().stream().findFirst().map(VariantKey.Choice::value).orElse("3");
    }
}
