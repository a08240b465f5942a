package org.measuredmile.recording.reader;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.measuredmile.recording.reader.TimeText.DateOrder;

/// One way of telling the time that a table offers: a column, or a column of dates with one of times.
///
/// Shape: `dateColumn` is −1 where there is none; `nsPerUnit` counts for numbers only.
record Clock(Form form, int dateColumn, int timeColumn, DateOrder order, double nsPerUnit) {
    /// How the time is written.
    enum Form {
        /// Date and time in one cell.
        DATE_TIME,
        /// Date and time in two cells.
        DATE_AND_TIME,
        /// A time of day without a date; it may run over midnight.
        TIME_OF_DAY,
        /// A number since 1970.
        EPOCH,
        /// A number since the instrument's own start.
        ELAPSED
    }

    /// Half of what nanoseconds can hold, so that differences hold as well; 2116.
    private static final long FARTHEST_NS = Long.MAX_VALUE / 2;

    private static final int LONGEST_NUMBER = 32;

    boolean isAbsolute() {
        return form != Form.TIME_OF_DAY && form != Form.ELAPSED;
    }

    /// Whether the times are known to be in UTC.
    boolean statesZone(List<String[]> rows) {
        return switch (form) {
            case EPOCH, ELAPSED -> true;
            case DATE_AND_TIME, TIME_OF_DAY -> false;
            case DATE_TIME ->
                rows.stream()
                        .map(cells -> cell(cells, timeColumn))
                        .filter(text -> !text.isEmpty())
                        .findFirst()
                        .map(TimeText::statesZone)
                        .orElse(false);
        };
    }

    /// The time of a row in nanoseconds; empty where its cells cannot be read.
    OptionalLong read(String[] cells, char decimalMark) {
        String time = cell(cells, timeColumn);
        OptionalLong ns = switch (form) {
            case DATE_TIME -> TimeText.dateTime(time, order);
            case DATE_AND_TIME -> joined(TimeText.date(cell(cells, dateColumn), order), TimeText.clock(time));
            case TIME_OF_DAY -> TimeText.clock(time);
            case EPOCH, ELAPSED -> number(time, decimalMark);
        };
        return ns.isPresent() && Math.abs(ns.getAsLong()) < FARTHEST_NS ? ns : OptionalLong.empty();
    }

    private static OptionalLong joined(OptionalLong day, OptionalLong clock) {
        return day.isPresent() && clock.isPresent()
                ? OptionalLong.of(day.getAsLong() * TimeText.DAY_NS + clock.getAsLong())
                : OptionalLong.empty();
    }

    private OptionalLong number(String text, char decimalMark) {
        String plain = decimalMark == '.' ? text : text.replace(decimalMark, '.');
        OptionalDouble value = NumberText.parse(plain);
        if (value.isEmpty() || !(Math.abs(value.getAsDouble() * nsPerUnit) < FARTHEST_NS)) {
            return OptionalLong.empty();
        }
        boolean exact = plain.length() <= LONGEST_NUMBER && plain.indexOf('e') < 0 && plain.indexOf('E') < 0;
        return OptionalLong.of(
                exact
                        ? new BigDecimal(plain)
                                .multiply(BigDecimal.valueOf(nsPerUnit))
                                .setScale(0, java.math.RoundingMode.HALF_EVEN)
                                .longValue()
                        : Math.round(value.getAsDouble() * nsPerUnit));
    }

    static String cell(String[] cells, int column) {
        return column >= 0 && column < cells.length ? cells[column].strip() : "";
    }
}
