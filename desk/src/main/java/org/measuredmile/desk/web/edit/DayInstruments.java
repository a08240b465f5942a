package org.measuredmile.desk.web.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.TestDay;

/// What a day was measured with: another instrument, or which one made which recording.
///
/// Shape: `instrument.1.…` as [TypedInstruments] has it; or `file.N` with the name of a recording and `made.N` with
/// the instrument's id, empty for none; `who` and `why`.
public final class DayInstruments {
    private final TestDay day;
    private final Typed typed;
    private final Map<String, String> faults = new TreeMap<>();

    /// The day after a change, and the change in words.
    public record Changed(TestDay day, String what) {}

    public DayInstruments(TestDay day, Typed typed) {
        this.day = day;
        this.typed = typed;
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who says so? A crew code such as T1.");
        }
    }

    /// The form with its faults; nothing typed is lost.
    public Typed faulty() {
        return typed.wrong(faults);
    }

    /// The day with one instrument more; nothing where there is a fault in any field.
    public Optional<Changed> added(UnitSystem system) {
        var all = new TypedInstruments(typed, system, faults).behind(day.instruments(), 1);
        if (all.size() == day.instruments().size() && faults.isEmpty()) {
            faults.put(TypedInstruments.field(1, "id"), "What is it called?");
        }
        return faults.isEmpty()
                ? Optional.of(new Changed(
                        DayParts.withInstruments(day, all),
                        "instrument " + all.getLast().id() + " added"))
                : Optional.empty();
    }

    /// The day with each recording given to the instrument that was chosen for it.
    public Optional<Changed> given(List<String> files) {
        List<RecordingEntry> entries = day.recordings();
        var told = new ArrayList<String>();
        for (int i = 1; i <= files.size(); i++) {
            String file = typed.get("file." + i);
            String made = typed.get("made." + i);
            String before = day.recording(file).map(RecordingEntry::instrument).orElse("");
            if (!files.contains(file) || made.equals(before)) {
                continue;
            }
            if (!made.isEmpty() && day.instrument(made).isEmpty()) {
                faults.put("made." + i, "The day has no instrument “" + made + "”.");
                continue;
            }
            told.add(file + (made.isEmpty() ? " to none" : " to " + made));
            entries = DayParts.exchanged(
                    entries,
                    entry -> entry.file().equals(file),
                    entry -> made(entry, made),
                    new RecordingEntry(file, made, List.of(), 0, ""));
        }
        if (told.isEmpty() && faults.isEmpty()) {
            faults.put("made", "Nothing is other than before.");
        }
        return faults.isEmpty()
                ? Optional.of(new Changed(DayParts.withRecordings(day, entries), "given: " + String.join(", ", told)))
                : Optional.empty();
    }

    private static RecordingEntry made(RecordingEntry entry, String instrument) {
        return new RecordingEntry(
                entry.file(), instrument, entry.runs(), entry.windows(), entry.clockOffsetS(), entry.note());
    }
}
