package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;

/// Turns the cells of a row into the numbers of a table's columns, in each column's own unit.
final class CellReader {
    private final List<ColumnMeaning> values;
    private final List<ColumnMeaning> hemispheres;
    private final char decimalMark;
    private final Remarks remarks;

    /// `values` in the order of the table's columns.
    CellReader(List<ColumnMeaning> values, List<ColumnMeaning> hemispheres, char decimalMark, Remarks remarks) {
        this.values = values;
        this.hemispheres = hemispheres;
        this.decimalMark = decimalMark;
        this.remarks = remarks;
    }

    void read(String[] cells, SampleTable table, int row) {
        for (int column = 0; column < values.size(); column++) {
            ColumnMeaning meaning = values.get(column);
            String cell = Clock.cell(cells, meaning.index());
            if (!cell.isEmpty()) {
                table.set(column, row, value(meaning, cell, cells, table.line(row)));
            }
        }
    }

    private double value(ColumnMeaning meaning, String cell, String[] cells, long line) {
        if (NoDataMark.isWord(cell)) {
            remarks.count(Remark.NO_DATA_MARK, line, meaning.name() + " " + cell);
            return Double.NaN;
        }
        NumberText.Leading leading = NumberText.leading(cell, decimalMark);
        if (Double.isNaN(leading.value()) || !ColumnProposal.isAllowedAfter(leading.rest(), meaning.kind())) {
            remarks.count(Remark.NOT_A_NUMBER, line, meaning.name() + ": " + cell);
            return Double.NaN;
        }
        if (NoDataMark.is(meaning.kind(), leading.value())) {
            remarks.count(Remark.NO_DATA_MARK, line, meaning.name() + " " + cell);
            return Double.NaN;
        }
        return switch (meaning.kind()) {
            case LATITUDE -> coordinate(meaning, leading, cells, 90, line);
            case LONGITUDE -> coordinate(meaning, leading, cells, 180, line);
            default -> inColumnUnit(meaning, leading);
        };
    }

    private double coordinate(
            ColumnMeaning meaning, NumberText.Leading leading, String[] cells, double limit, long line) {
        String hemisphere = leading.rest().isEmpty() ? separateHemisphere(meaning, cells) : leading.rest();
        double degrees = hemisphere.equals("S") || hemisphere.equals("W") ? -leading.value() : leading.value();
        if (!(Math.abs(degrees) <= limit)) {
            remarks.count(Remark.BAD_COORDINATES, line, meaning.name() + " " + leading.value());
            return Double.NaN;
        }
        return degrees;
    }

    private String separateHemisphere(ColumnMeaning meaning, String[] cells) {
        for (ColumnMeaning hemisphere : hemispheres) {
            if (hemisphere.index() == meaning.index() + 1) {
                return Clock.cell(cells, hemisphere.index());
            }
        }
        return "";
    }

    private static double inColumnUnit(ColumnMeaning meaning, NumberText.Leading leading) {
        if (leading.rest().isEmpty() || meaning.unit().isEmpty() || meaning.kind() == ChannelKind.SATELLITES) {
            return leading.value();
        }
        Unit unit = meaning.unit().get();
        Optional<Unit> said = HeadUnit.find(leading.rest(), unit);
        return said.isEmpty() || said.get() == unit
                ? leading.value()
                : unit.fromSi(said.get().toSi(leading.value()));
    }
}
