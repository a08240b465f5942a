package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.VariantKey;

/// One run as typed on a trial's form, read by the trial's declaration.
///
/// Shape: fields are `variant.KEY`, `reading.NAME`, `direction`, `state` (`good` or `void`), `cause`, `other`, `note`
/// and `who`.
public final class RunForm {
    private final Declaration trial;
    private final TestDay day;
    private final TypedReading written;
    private final Typed typed;
    private final Map<String, String> faults = new TreeMap<>();

    /// What came of reading the form.
    public sealed interface Read {
        /// A run that can be kept, with its readings.
        record Kept(Run run, List<Reading> readings) implements Read {
            public Kept {
                readings = List.copyOf(readings);
            }
        }

        /// The form with every fault beside its field; nothing typed is lost.
        record Refused(Typed typed) implements Read {}
    }

    public RunForm(Declaration trial, TestDay day, UnitSystem system, Typed typed) {
        this.trial = trial;
        this.day = day;
        this.written = new TypedReading(trial, day, system);
        this.typed = typed;
    }

    /// Reads the whole form; all faults at once.
    public Read read(String runId, Instant at) {
        String who = typed.get("who");
        if (!CrewCode.isOne(who)) {
            faults.put("who", "Who writes this? A crew code of letters and digits, such as T1.");
        }
        Variant variant = variant();
        Run.State state = typed.get("state").equals("void") ? Run.State.VOID : Run.State.CONFIRMED;
        String reason = state == Run.State.VOID ? reason() : "";
        var readings = readings(variant, new Author(runId, who, at), state);
        if (!faults.isEmpty()) {
            return new Read.Refused(typed.wrong(faults));
        }
        String rider = day.riders().stream().findFirst().map(Rider::code).orElse("");
        var run = new Run(
                runId,
                trial.id(),
                variant,
                rider,
                Optional.of(at),
                "",
                typed.get("direction"),
                state,
                reason,
                typed.get("note"),
                Place.NOWHERE);
        return new Read.Kept(run, readings);
    }

    /// What is wrong so far, by field.
    public Map<String, String> faults() {
        return java.util.Collections.unmodifiableMap(faults);
    }

    private record Author(String run, String who, Instant at) {}

    /// The variant as typed; what the form leaves open stays open.
    public Variant variant() {
        var variant = Variant.NONE;
        for (VariantKey key : trial.variants()) {
            if (!key.asked()) {
                continue;
            }
            String value = typed.getOr("variant." + key.name(), key.usual());
            if (value.isEmpty()) {
                faults.put("variant." + key.name(), "Say which " + key.title() + " it was.");
            } else if (!key.admits(value) || !value.matches("[\\p{L}\\p{N}._-]+")) {
                faults.put("variant." + key.name(), "“" + value + "” is no " + key.title() + " of this trial.");
            } else {
                variant = variant.with(key.name(), value);
            }
        }
        return variant;
    }

    private String reason() {
        String cause = typed.get("cause");
        if (cause.equals("other")) {
            if (typed.get("other").isEmpty()) {
                faults.put("other", "Write in a few words why the run does not count.");
            }
            return "other: " + typed.get("other");
        }
        if (trial.causes().stream().noneMatch(one -> one.code().equals(cause))) {
            faults.put("cause", "Choose why the run does not count.");
        }
        return cause;
    }

    private List<Reading> readings(Variant variant, Author author, Run.State state) {
        var readings = new ArrayList<Reading>();
        for (ReadingSpec spec : trial.readings()) {
            boolean asked = spec.scope() == ReadingSpec.Scope.RUN && variant.covers(spec.when());
            if (!asked) {
                continue;
            }
            String text = typed.get("reading." + spec.name());
            if (text.isEmpty()) {
                // A run that was given up has no readings to be missing.
                if (spec.required() && state != Run.State.VOID) {
                    faults.put("reading." + spec.name(), "This reading is needed for the run to count.");
                }
            } else {
                reading(spec, text, author).ifPresent(readings::add);
            }
        }
        return readings;
    }

    private Optional<Reading> reading(ReadingSpec spec, String text, Author author) {
        String fault = written.fault(spec, text);
        if (!fault.isEmpty()) {
            faults.put("reading." + spec.name(), fault);
            return Optional.empty();
        }
        return Optional.of(written.reading(
                spec, text, new TypedReading.Author(author.run(), author.who(), Optional.of(author.at()), "")));
    }
}
