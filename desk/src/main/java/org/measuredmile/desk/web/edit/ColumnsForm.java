package org.measuredmile.desk.web.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.TestDay;

/// What the columns of an instrument's tables mean, as a person sent it.
///
/// Shape: fields are `instrument`; `kind` where the day does not know it yet; `name.1`, `meaning.1`, `unit.1` and so on
/// for each column, an empty meaning leaving it to the file; `act` `all` sets the columns that were left
/// empty as they are read now; `who`; `why` in free words.
public final class ColumnsForm {
    private static final int MOST_COLUMNS = 1000;

    private final TestDay day;
    private final Map<String, ColumnMeaning> readAs;
    private final Typed typed;
    private final Map<String, String> faults = new TreeMap<>();

    /// `readAs` are the columns of the instrument's tables as they are read now, by name.
    public ColumnsForm(TestDay day, Map<String, ColumnMeaning> readAs, Typed typed) {
        this.day = day;
        this.readAs = readAs;
        this.typed = typed;
    }

    /// What is wrong, by field.
    public Map<String, String> faults() {
        return Collections.unmodifiableMap(faults);
    }

    /// The day with the columns set, and what changed in words; nothing where there is a fault in any
    /// field.
    public Optional<Changed> changed() {
        if (!CrewCode.isOne(typed.get("who"))) {
            faults.put("who", "Who says so? A crew code such as T1.");
        }
        Optional<Instrument> instrument = instrument();
        List<ColumnSetting> columns = columns();
        if (instrument.isEmpty() || !faults.isEmpty()) {
            return Optional.empty();
        }
        var set = instrument.get().withColumns(columns);
        var after = DayParts.withInstruments(
                day, DayParts.exchanged(day.instruments(), one -> one.id().equals(set.id()), one -> set, set));
        String words = columns.isEmpty()
                ? "left to the files"
                : String.join("; ", columns.stream().map(ColumnSetting::phrase).toList());
        return Optional.of(new Changed(after, "columns of " + set.id() + ": " + words));
    }

    /// The day after a change, and the change in words.
    public record Changed(TestDay day, String what) {}

    private Optional<Instrument> instrument() {
        String id = typed.get("instrument");
        Optional<Instrument> known = day.instrument(id);
        if (known.isPresent()) {
            return known;
        }
        if (!id.matches("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,39}")) {
            faults.put("instrument", "Name the instrument with a word such as wheel-1.");
            return Optional.empty();
        }
        Optional<Instrument.Kind> kind = Arrays.stream(Instrument.Kind.values())
                .filter(one -> one.id().equals(typed.get("kind")))
                .findFirst();
        if (kind.isEmpty()) {
            faults.put("kind", "What kind of instrument is it?");
        }
        return kind.map(one -> new Instrument(
                id, one, OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty()));
    }

    private List<ColumnSetting> columns() {
        var columns = new ArrayList<ColumnSetting>();
        boolean all = typed.get("act").equals("all");
        for (int i = 1; i <= MOST_COLUMNS && typed.values().containsKey("name." + i); i++) {
            String name = typed.get("name." + i);
            boolean isOpen = columns.stream().noneMatch(one -> one.name().equals(name));
            if (isOpen && !typed.get("meaning." + i).isEmpty()) {
                column(i, name).ifPresent(columns::add);
            } else if (isOpen && all) {
                Optional.ofNullable(readAs.get(name))
                        .flatMap(ColumnsForm::asRead)
                        .ifPresent(columns::add);
            }
        }
        return columns;
    }

    private Optional<ColumnSetting> column(int number, String name) {
        String meaning = typed.get("meaning." + number);
        String unit = typed.get("unit." + number);
        Optional<ColumnSetting> setting = ColumnSetting.of(name, meaning, unit);
        if (setting.isEmpty()) {
            List<String> units = ColumnSetting.units(meaning);
            String allowed = units.isEmpty() ? "; leave it empty." : "; one of " + String.join(", ", units) + ".";
            faults.put(
                    "unit." + number,
                    ColumnSetting.meanings().contains(meaning)
                            ? "“" + unit + "” is no unit of " + meaning + allowed
                            : "Choose what it means from the list.");
        }
        return setting;
    }

    /// What a column is read as, as a setting; nothing for words, letters and empty columns.
    private static Optional<ColumnSetting> asRead(ColumnMeaning column) {
        List<String> units = ColumnSetting.units(column.meaning());
        String unit = units.contains(column.unitText()) ? column.unitText() : "";
        return switch (column.role()) {
            case CLOCK, VALUE, LEFT_OUT -> ColumnSetting.of(column.name(), column.meaning(), unit);
            case HEMISPHERE, WORDS, EMPTY -> Optional.empty();
        };
    }
}
