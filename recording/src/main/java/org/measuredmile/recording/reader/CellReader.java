package org.measuredmile.recording.reader;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.ColumnSetting;

/// Turns the cells of a row into the numbers of a table's columns, in each column's own unit.
final class CellReader {
    private static final int NONE = -1;

    private final Target[] targets;
    private final char decimalMark;
    private final Remarks remarks;

    /// One column to fill: where its cells stand, where the letter of its hemisphere stands, and what is beyond it,
    /// and up to which size a number is taken as it is.
    private record Target(
            ColumnMeaning meaning,
            int cell,
            int hemisphere,
            NoDataMark.Marks marks,
            DoubleColumn values,
            double limit,
            boolean inMinutes,
            double asItIs) {
        ChannelKind kind() {
            return meaning.kind();
        }

        /// Whether a number needs nothing but to be kept; never NaN.
        boolean takesAsItIs(double number) {
            return Math.abs(number) <= asItIs && !marks.hold(number);
        }

        boolean isCoordinate() {
            return limit > 0;
        }
    }

    /// `table` has a column for each of the values, in their order.
    CellReader(TableColumns columns, SampleTable table, char decimalMark, Remarks remarks) {
        this.targets = new Target[columns.values().size()];
        for (int column = 0; column < targets.length; column++) {
            targets[column] = target(columns.values().get(column), columns.hemispheres(), table.values(column));
        }
        this.decimalMark = decimalMark;
        this.remarks = remarks;
    }

    private static Target target(ColumnMeaning value, List<ColumnMeaning> hemispheres, DoubleColumn values) {
        boolean inMinutes = value.writtenUnit().equals(ColumnSetting.DEGREES_MINUTES);
        boolean hasLetter = hemispheres.stream().anyMatch(letter -> letter.index() == value.index() + 1);
        double limit = switch (value.kind()) {
            case LATITUDE -> 90;
            case LONGITUDE -> 180;
            default -> 0;
        };
        return new Target(
                value,
                value.index(),
                hasLetter ? value.index() + 1 : NONE,
                NoDataMark.of(value.kind()),
                values,
                limit,
                inMinutes,
                limit == 0 ? Double.MAX_VALUE : hasLetter || inMinutes ? -1 : limit);
    }

    void read(CellRow cells, long line, int row) {
        for (Target target : targets) {
            double number = cells.expected(target.cell);
            if (target.takesAsItIs(number)) {
                target.values.put(row, number);
            } else if (!cells.isEmpty(target.cell)) {
                double written = Double.isNaN(number) ? cells.number(target.cell, decimalMark) : number;
                target.values.put(row, value(target, written, cells, line));
            }
        }
    }

    private double value(Target target, double number, CellRow cells, long line) {
        if (Double.isNaN(number)) {
            return inWords(target, cells, line);
        }
        if (target.marks.hold(number)) {
            remarks.count(Remark.NO_DATA_MARK, line, target.meaning.name() + " " + cells.cell(target.cell));
            return Double.NaN;
        }
        return target.isCoordinate() ? coordinate(target, number, cells, line) : number;
    }

    private double coordinate(Target target, double written, CellRow cells, long line) {
        double degrees = target.inMinutes ? CoordinateText.ofDegreesMinutes(written) : written;
        if (target.hemisphere != NONE && (cells.is(target.hemisphere, "S") || cells.is(target.hemisphere, "W"))) {
            degrees = -degrees;
        }
        if (!(Math.abs(degrees) <= target.limit)) {
            remarks.count(Remark.BAD_COORDINATES, line, target.meaning.name() + " " + written);
            return Double.NaN;
        }
        return degrees;
    }

    /// A cell that holds more than a number, or none.
    private double inWords(Target target, CellRow cells, long line) {
        String cell = cells.cell(target.cell);
        if (NoDataMark.isWord(cell)) {
            remarks.count(Remark.NO_DATA_MARK, line, target.meaning.name() + " " + cell);
            return Double.NaN;
        }
        double degrees = target.isCoordinate() ? CoordinateText.degrees(cell) : Double.NaN;
        if (!Double.isNaN(degrees)) {
            return coordinate(target, degrees, cells, line);
        }
        NumberText.Leading leading = NumberText.leading(cell, decimalMark);
        if (Double.isNaN(leading.value()) || !ColumnProposal.isAllowedAfter(leading.rest(), target.kind())) {
            remarks.count(Remark.NOT_A_NUMBER, line, target.meaning.name() + ": " + cell);
            return Double.NaN;
        }
        if (target.marks.hold(leading.value())) {
            remarks.count(Remark.NO_DATA_MARK, line, target.meaning.name() + " " + cell);
            return Double.NaN;
        }
        return target.isCoordinate()
                ? coordinate(target, leading.value(), cells, line)
                : inColumnUnit(target.meaning, leading);
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
