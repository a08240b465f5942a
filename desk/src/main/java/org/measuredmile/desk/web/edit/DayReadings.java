package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.ReadingSpec;

/// The readings of a trial that are taken once a day, as typed: fields `day.NAME` and `who`.
public final class DayReadings {
    private final Declaration trial;
    private final TestDay day;
    private final UnitSystem system;
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
        this.day = day;
        this.system = system;
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
            String fault = RunForm.fault(spec, text, system);
            if (fault.isEmpty()) {
                readings.add(reading(spec, text, at));
            } else {
                faults.put("day." + spec.name(), fault);
            }
        }
        return faults.isEmpty() ? new Read.Kept(readings) : new Read.Refused(typed.wrong(faults));
    }

    private Reading reading(ReadingSpec spec, String text, Instant at) {
        boolean isBare = text.matches("[-+−]?[\\d.,]+") && spec.kind() != QuantityKind.WORD;
        String unit = isBare ? spec.kind().shown(system).symbol() : "";
        String instrument =
                spec.instrument().flatMap(day::instrument).map(Instrument::id).orElse("");
        return new Reading(
                "", spec.name(), text, unit, instrument, Optional.of(at), typed.get("who"), "", Place.NOWHERE);
    }
}
