package org.measuredmile.comparison.spec;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;

/// What a line of a specification claims, once it has been read.
///
/// Shape: `27.5`, `20-25`, `20 to 25`, `up to 65`, `at least 40`, `40+`, `at most 25`, `max. 25`; the unit in the cell
/// or in the unit column; the same in two units, `20 mph / 32 km/h` or `61 lb (27.7 kg)`, when both say the same.
public sealed interface ClaimText {
    /// A claim that can be compared.
    ///
    /// Shape: `conditions` in the order written; `words` as printed, with the unit; `unit` and `stepSi` are the
    /// unit and the coarsest step that its numbers were written with; `notes` tell what was taken for what.
    /// Unit: `stepSi` in the SI unit of the kind, a difference.
    record Claimed(
            String item,
            QuantityKind kind,
            Wanted wanted,
            Map<String, String> conditions,
            String words,
            Unit unit,
            double stepSi,
            List<Finding> notes)
            implements ClaimText {
        public Claimed {
            conditions = Collections.unmodifiableMap(new LinkedHashMap<>(conditions));
            notes = List.copyOf(notes);
        }
    }

    /// A claim that cannot be compared: why, where, and what to write.
    record Unreadable(String item, Finding finding) implements ClaimText {}

    /// Nothing is claimed on this line.
    record Unsaid(String item) implements ClaimText {}

    /// What the line claims of a quantity.
    ///
    /// Error: IllegalArgumentException for the kind WORD: words are compared as they stand.
    static ClaimText read(SpecLine line, QuantityKind kind) {
        if (kind == QuantityKind.WORD) {
            throw new IllegalArgumentException("words are not read as a quantity: " + line.item());
        }
        if (line.claimed().isBlank()) {
            return new Unsaid(line.item());
        }
        var reader = new ClaimReader(line, kind);
        return switch (reader.read()) {
            case ClaimReader.Outcome.Refused(var finding) -> new Unreadable(line.item(), finding);
            case ClaimReader.Outcome.Read(var wanted, var unit, double stepSi) -> {
                var notes = new ArrayList<>(reader.notes());
                var conditions = ClaimConditions.read(line.conditions(), at(line, "conditions"));
                notes.addAll(conditions.findings());
                yield new Claimed(line.item(), kind, wanted, conditions.values(), words(line), unit, stepSi, notes);
            }
        };
    }

    /// The claim as printed: the cell, and the unit of its column.
    static String words(SpecLine line) {
        return (line.claimed().strip() + " " + line.unit().strip()).strip();
    }

    /// A field of the line.
    static Place at(SpecLine line, String field) {
        String where = line.place().where();
        return new Place(line.place().source(), where.isEmpty() ? field : where + ", " + field);
    }
}
