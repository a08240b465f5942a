package org.measuredmile.recording.reader;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnMeaning.Role;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.reader.CellRow.Expected;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// What the columns of a table mean: what was set for the instrument, else what is proposed, and the telling of it.
final class TableColumns {
    private static final int MOST_COLUMNS = 1000;
    private static final int MOST_TOLD = 80;

    private final TableShape shape;
    private final ColumnSettings settings;
    private final Remarks remarks;
    private final List<ColumnMeaning> values = new ArrayList<>();
    private final List<ColumnMeaning> hemispheres = new ArrayList<>();
    private List<ColumnMeaning> meanings = List.of();
    private Optional<ColumnSettings.Chosen> chosen = Optional.empty();
    private Optional<ClockChoice> clocks = Optional.empty();
    private Optional<SettingChecks> checks = Optional.empty();

    TableColumns(TableShape shape, ColumnSettings settings, Remarks remarks) {
        this.shape = shape;
        this.settings = settings;
        this.remarks = remarks;
    }

    /// Looks at the first rows and decides.
    void settle(List<String[]> rows) {
        chosen = settings.forHead(shape.names());
        List<ColumnName> names =
                shape.names().stream().limit(MOST_COLUMNS).map(this::named).toList();
        String setBy =
                chosen.map(one -> "set for " + Remarks.quoted(one.instrument())).orElse("");
        var sample = new ClockChoice.Sample(remarks.source(), names, rows, shape.decimalMark(), setBy);
        clocks = ClockChoice.of(sample);
        meanings = ColumnProposal.of(sample).stream().map(this::withClock).toList();
        checks = chosen.map(any -> new SettingChecks(sample, remarks));
        checks.ifPresent(any -> any.check(meanings, clocks));
        for (ColumnMeaning meaning : meanings) {
            if (meaning.role() == Role.VALUE) {
                values.add(meaning);
            } else if (meaning.role() == Role.HEMISPHERE) {
                hemispheres.add(meaning);
            }
        }
    }

    private ColumnName named(String head) {
        ColumnName name = ColumnName.of(head);
        return chosen.flatMap(one -> one.of(head)).map(name::as).orElse(name);
    }

    private ColumnMeaning withClock(ColumnMeaning meaning) {
        if (meaning.role() != Role.CLOCK || clocks.isEmpty()) {
            return meaning;
        }
        Clock clock = clocks.get().clock();
        String set = chosen.flatMap(one -> one.of(meaning.name())).isPresent() ? "; " + meaning.because() : "";
        if (clock.dateColumn() == meaning.index()) {
            return meaning.in(Optional.empty(), "the date of the rows' times" + set);
        }
        if (clock.timeColumn() != meaning.index()) {
            return meaning;
        }
        return meaning.in(clock.unit(), clock.words() + "; rows are put in time by it" + set);
    }

    /// The columns that become channels, in their order.
    List<ColumnMeaning> values() {
        return values;
    }

    List<ColumnMeaning> hemispheres() {
        return hemispheres;
    }

    Optional<ClockChoice> clocks() {
        return clocks;
    }

    /// What the cells of a row hold where all goes well; `offset` cells stand before the first column.
    Expected[] expectedAt(int offset) {
        Expected[] expected = new Expected[offset + shape.names().size()];
        Arrays.fill(expected, Expected.TEXT);
        for (ColumnMeaning value : values) {
            if (clocks.stream().noneMatch(one -> one.reads(value.index()))) {
                expected[offset + value.index()] = Expected.NUMBER;
            }
        }
        clocks.map(ClockChoice::clock)
                .filter(clock -> clock.form() == Clock.Form.DATE_TIME && clock.order() == DateOrder.YEAR_FIRST)
                .ifPresent(clock -> expected[offset + clock.timeColumn()] = Expected.DATE_AND_TIME);
        return expected;
    }

    /// Why no recording can be made of it, where none can.
    Optional<Decoding> refusal(long samples, boolean anyTime) {
        if (samples == 0) {
            return refuse("no-rows", "there is a head but no row below it", "copy the file from the instrument again");
        }
        if (shape.isHeadless() && chosen.isEmpty()) {
            return refuse(
                    "no-head",
                    "the first row holds values, so that none of its "
                            + shape.names().size() + " columns has a name",
                    "set what \"column 1\", \"column 2\" and so on mean for the instrument, or write a head");
        }
        if (clocks.isEmpty()) {
            String names = shape.names().stream().limit(12).map(Remarks::quoted).collect(Collectors.joining(", "));
            return refuse(
                    "no-times",
                    "none of the columns (" + names + ") holds times: the table is no recording",
                    "export it with a column of times; results of earlier years go into the ledger");
        }
        if (!anyTime || values.isEmpty()) {
            return refuse(
                    "no-samples",
                    anyTime ? "no column holds numbers" : "none of " + samples + " rows has a time that can be read",
                    "look at the columns named below");
        }
        return Optional.empty();
    }

    private Optional<Decoding> refuse(String code, String message, String remedy) {
        return Optional.of(remarks.refuse(code, Place.in(remarks.source()), message, remedy, meanings));
    }

    /// Settles the units that only the whole table tells, brings its values to the SI, and tells what every
    /// column was taken for.
    List<ColumnMeaning> settleUnits(SampleTable table) {
        TableDistances distances = new TableDistances(table, values);
        ColumnUnits units = new ColumnUnits(distances, remarks);
        List<ColumnMeaning> decided = new ArrayList<>();
        for (int column = 0; column < values.size(); column++) {
            ColumnMeaning meaning = units.settle(values.get(column), column);
            decided.add(meaning);
            int at = column;
            checks.ifPresent(any -> any.checkWay(meaning, at, distances));
        }
        for (int column = 0; column < decided.size(); column++) {
            ColumnMeaning meaning = decided.get(column);
            DoubleColumn scaled = table.columns().get(column).values();
            if (meaning.unit().isPresent()) {
                Unit unit = meaning.unit().get();
                if (unit.toSi(1) != 1 || unit.toSi(0) != 0) {
                    scaled.replaceAll(unit::toSi);
                }
            }
            table.replace(column, new SampleTable.Column(meaning.kind(), meaning.name(), meaning.unitText(), scaled));
        }
        meanings.stream().filter(meaning -> meaning.role() != Role.VALUE).forEach(decided::add);
        decided.sort(Comparator.comparingInt(ColumnMeaning::index));
        tell(decided);
        return decided;
    }

    private void tell(List<ColumnMeaning> decided) {
        String told = decided.stream()
                .filter(meaning -> meaning.role() != Role.EMPTY)
                .limit(MOST_TOLD)
                .map(ColumnMeaning::phrase)
                .collect(Collectors.joining("; "));
        note("columns", "columns read as: " + told);
        tellSettings();
        String inMinutes = decided.stream()
                .filter(meaning -> meaning.writtenUnit().equals(ColumnSetting.DEGREES_MINUTES))
                .map(ColumnMeaning::name)
                .map(Remarks::quoted)
                .collect(Collectors.joining(", "));
        if (!inMinutes.isEmpty()) {
            note("degrees-minutes", inMinutes + ": read as degrees and minutes in one number, 4904.253 for 49° 4.253′");
        }
        if (shape.separator() != ',' || shape.decimalMark() != '.') {
            String separator = shape.separator() == '\t' ? "tab" : "\"" + shape.separator() + "\"";
            note("separator", "columns are parted by " + separator + ", decimals by \"" + shape.decimalMark() + "\"");
        }
        if (!shape.lineType().isEmpty()) {
            note(
                    "line-types",
                    "of several types of lines those beginning with \"" + Remarks.quoted(shape.lineType())
                            + "\" were read");
        }
    }

    private void tellSettings() {
        if (chosen.isEmpty()) {
            return;
        }
        String instrument = Remarks.quoted(chosen.get().instrument());
        String set = chosen.get().columns().stream()
                .filter(column -> shape.names().contains(column.name()))
                .limit(MOST_TOLD)
                .map(ColumnSetting::phrase)
                .collect(Collectors.joining("; "));
        if (!set.isEmpty()) {
            note("columns-set", "set for " + instrument + ": " + set);
        }
        String missing = chosen.get().columns().stream()
                .map(ColumnSetting::name)
                .filter(name -> !shape.names().contains(name))
                .limit(MOST_TOLD)
                .map(name -> "\"" + Remarks.quoted(name) + "\"")
                .collect(Collectors.joining(", "));
        if (!missing.isEmpty()) {
            remarks.add(Finding.warning(
                    "column-missing",
                    Place.in(remarks.source()),
                    "what was set for " + instrument + " names columns that this file does not have: " + missing,
                    "look whether another instrument wrote the file, or its export was changed"));
        }
    }

    private void note(String code, String message) {
        remarks.add(Finding.note(code, Place.in(remarks.source()), message));
    }
}
