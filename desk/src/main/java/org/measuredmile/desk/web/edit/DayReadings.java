package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.ReadingSpec;

/// The readings of a trial that are taken once a day, as typed: fields `day.NAME` and `who`.
public final class DayReadings {
    private final Declaration trial;
    private final TypedReading written;
    private final Typed typed;

    /// What came of reading the form.
    public sealed interface Read {
        record Kept(List<Reading> readings) implements Read {
            public Kept {
                readings = List.copyOf(readings);
            }
        }

        record Refused(Typed typed) implements Read {}
    }

    public DayReadings(Declaration trial, TestDay day, UnitSystem system, Typed typed) {
        this.trial = trial;
        this.written = new TypedReading(trial, day, system);
        this.typed = typed;
    }

    /// Reads the form; all faults at once.
    public Read read(Instant at) {
        Map<String, String> faults = new TreeMap<>();
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who.day", "Who writes this? A crew code such as T1.");
        }
        var readings = new ArrayList<Reading>();
        for (ReadingSpec spec : trial.readings()) {
            String text = typed.get("day." + spec.name());
            if (spec.scope() != ReadingSpec.Scope.DAY || text.isEmpty()) {
                continue;
            }
            String fault = written.fault(spec, text);
            if (fault.isEmpty()) {
                readings.add(written.reading(
                        spec, text, new TypedReading.Author("", typed.get("who"), Optional.of(at), "")));
            } else {
                faults.put("day." + spec.name(), fault);
            }
        }
        return faults.isEmpty() ? new Read.Kept(readings) : new Read.Refused(typed.wrong(faults));
    }
}
