package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.measuredmile.archive.Archive;
import org.measuredmile.desk.web.edit.Typed;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;

/// The tables that an instrument wrote on a test day, and what their columns are read as and set to.
public final class ColumnTables {
    private final Archive archive;
    private final String dayId;
    private final DayReduction.Result.Reduced reduced;

    public ColumnTables(Archive archive, String dayId, DayReduction.Result.Reduced reduced) {
        this.archive = archive;
        this.dayId = dayId;
        this.reduced = reduced;
    }

    /// The tables of an instrument: those that recordings.csv gives it, else those that it gives to none.
    private Map<String, Decoding> tables(String instrument) {
        var own = new LinkedHashMap<String, Decoding>();
        var free = new LinkedHashMap<String, Decoding>();
        reduced.recordings().forEach((name, decoding) -> {
            String by = reduced.day()
                    .recording(name)
                    .map(RecordingEntry::instrument)
                    .orElse("");
            if (!decoding.columns().isEmpty() && (by.equals(instrument) || by.isEmpty())) {
                (by.isEmpty() ? free : own).put(name, decoding);
            }
        });
        return own.isEmpty() ? free : own;
    }

    /// What each column of the instrument's tables is read as, by its name.
    public Map<String, ColumnMeaning> meanings(String instrument) {
        var meanings = new LinkedHashMap<String, ColumnMeaning>();
        tables(instrument).values().stream()
                .flatMap(decoding -> decoding.columns().stream())
                .forEach(column -> meanings.putIfAbsent(column.name(), column));
        return meanings;
    }

    /// The page of an instrument, known or new, with what was typed into it.
    public ColumnsView view(String instrument, Typed typed) {
        Optional<Instrument> known = reduced.day().instrument(instrument);
        List<ColumnSetting> set = known.map(Instrument::columns).orElse(List.of());
        Optional<RememberedColumns> remembered = set.isEmpty() ? remembered(instrument) : Optional.empty();
        List<ColumnSetting> shown = remembered.map(RememberedColumns::columns).orElse(set);
        String kind = known.map(Instrument::kind)
                .or(() -> remembered.map(RememberedColumns::kind))
                .map(Instrument.Kind::id)
                .orElse("");
        var tables = tables(instrument);
        return new ColumnsView(
                Printing.weekday(reduced.day().date()) + ", " + reduced.bike().title(),
                Paths.day(dayId),
                Paths.columns(dayId, instrument),
                instrument,
                known.isPresent(),
                typed.getOr("kind", kind),
                kinds(),
                told(instrument, set, remembered),
                List.copyOf(tables.keySet()),
                rows(meanings(instrument), shown, typed),
                meaningChoices(),
                units(),
                findings(tables.values()));
    }

    private Optional<RememberedColumns> remembered(String instrument) {
        return RememberedColumns.of(archive, reduced.day(), instrument);
    }

    private static String told(String instrument, List<ColumnSetting> set, Optional<RememberedColumns> remembered) {
        if (remembered.isPresent()) {
            return "Shown as set for " + instrument + " on "
                    + Printing.weekday(remembered.get().date()) + ", "
                    + Printing.count(remembered.get().columns().size(), "column", "columns")
                    + ". It holds for this day once you set it.";
        }
        return set.isEmpty()
                ? "Nothing is set: each column is read as its name, unit and values suggest."
                : Printing.count(set.size(), "column is", "columns are") + " set on this day.";
    }

    private static List<ColumnsView.Row> rows(
            Map<String, ColumnMeaning> meanings, List<ColumnSetting> shown, Typed typed) {
        var names = new LinkedHashSet<>(meanings.keySet());
        shown.forEach(one -> names.add(one.name()));
        var rows = new ArrayList<ColumnsView.Row>();
        for (String name : names) {
            int number = rows.size() + 1;
            var setting = shown.stream().filter(one -> one.name().equals(name)).findFirst();
            var meaning = Optional.ofNullable(meanings.get(name));
            rows.add(new ColumnsView.Row(
                    number,
                    name,
                    typedOr(
                            typed,
                            "meaning." + number,
                            setting.map(ColumnSetting::meaning).orElse("")),
                    typedOr(
                            typed,
                            "unit." + number,
                            setting.map(ColumnSetting::unit).orElse("")),
                    meaning.map(ColumnTables::readAs).orElse("not in this day's files"),
                    meaning.map(one -> String.join(" · ", one.first())).orElse("")));
        }
        return rows;
    }

    private static String typedOr(Typed typed, String field, String set) {
        return typed.values().getOrDefault(field, set);
    }

    private static String readAs(ColumnMeaning column) {
        String unit = column.unitText().isEmpty() ? "" : " in " + column.unitText();
        String why = column.because().isEmpty() ? "" : "; " + column.because();
        return column.meaning().replace('-', ' ') + unit + why;
    }

    private static List<RunView.Choice> meaningChoices() {
        return ColumnSetting.meanings().stream()
                .map(word -> new RunView.Choice(word, word.replace('-', ' ')))
                .toList();
    }

    private static List<RunView.Choice> kinds() {
        return Arrays.stream(Instrument.Kind.values())
                .map(kind -> new RunView.Choice(kind.id(), kind.id().replace('-', ' ')))
                .toList();
    }

    private static List<String> units() {
        return ColumnSetting.meanings().stream()
                .flatMap(meaning -> ColumnSetting.units(meaning).stream())
                .distinct()
                .toList();
    }

    private static List<FindingView> findings(Iterable<Decoding> tables) {
        var findings = new LinkedHashSet<Finding>();
        tables.forEach(table -> table.findings().stream()
                .filter(one -> one.code().startsWith("column")
                        || one.code().startsWith("unit-")
                        || one.code().equals("no-head")
                        || one.code().equals("no-times"))
                .filter(one -> one.level() != Finding.Level.NOTE)
                .forEach(findings::add));
        return FindingView.of(List.copyOf(findings));
    }

    /// What the test day's page shows of its instruments.
    public ColumnsView.Panel panel() {
        boolean hasTable = reduced.recordings().values().stream()
                .anyMatch(decoding -> !decoding.columns().isEmpty());
        var links = reduced.day().instruments().stream()
                .filter(one -> !one.columns().isEmpty() || !tables(one.id()).isEmpty())
                .map(this::link)
                .toList();
        return new ColumnsView.Panel(hasTable || !links.isEmpty(), Paths.day(dayId) + "/columns", links, kinds());
    }

    private ColumnsView.Link link(Instrument one) {
        String told = one.columns().isEmpty()
                ? remembered(one.id())
                        .map(before -> "set on " + Printing.weekday(before.date()) + ", to be taken over")
                        .orElse("read as the files say")
                : Printing.count(one.columns().size(), "column", "columns") + " set";
        return new ColumnsView.Link(
                one.id(), Paths.columns(dayId, one.id()), one.kind().id().replace('-', ' '), told);
    }
}
