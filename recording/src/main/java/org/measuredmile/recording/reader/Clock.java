package org.measuredmile.recording.reader;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.measuredmile.quantity.Unit;
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
    static final long FARTHEST_NS = Long.MAX_VALUE / 2;

    /// No time.
    static final long NOT_READ = SampleTable.UNTIMED;

    private static final Unit[] TIME_UNITS = {
        Unit.SECOND, Unit.MILLISECOND, Unit.MICROSECOND, Unit.NANOSECOND, Unit.MINUTE, Unit.HOUR
    };

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
        long ns = read(cell(cells, dateColumn), cell(cells, timeColumn), decimalMark);
        return ns == NOT_READ ? OptionalLong.empty() : OptionalLong.of(ns);
    }

    /// The time that a cell of a date and one of a time make; [#NOT_READ] where they cannot be read.
    long read(String date, String time, char decimalMark) {
        OptionalLong ns = switch (form) {
            case DATE_TIME -> TimeText.dateTime(time, order);
            case DATE_AND_TIME -> joined(TimeText.date(date, order), TimeText.clock(time));
            case TIME_OF_DAY -> TimeText.clock(time);
            case EPOCH, ELAPSED -> number(time, decimalMark);
        };
        return ns.isPresent() && Math.abs(ns.getAsLong()) < FARTHEST_NS ? ns.getAsLong() : NOT_READ;
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
        return OptionalLong.of(exact ? UnitTime.ns(plain, nsPerUnit) : Math.round(value.getAsDouble() * nsPerUnit));
    }

    /// What it tells, in words for a list of columns.
    String words() {
        return switch (form) {
            case DATE_TIME -> "date and time";
            case DATE_AND_TIME -> "time of day, its date in another column";
            case TIME_OF_DAY -> "time of day";
            case EPOCH -> "since 1970";
            case ELAPSED -> "since the start";
        };
    }

    /// The unit of a time that is a number.
    Optional<Unit> unit() {
        boolean isNumber = form == Form.EPOCH || form == Form.ELAPSED;
        return Arrays.stream(TIME_UNITS)
                .filter(unit -> isNumber && unit.toSi(1e9) == nsPerUnit)
                .findFirst();
    }

    static String cell(String[] cells, int column) {
        return column >= 0 && column < cells.length ? cells[column].strip() : "";
    }
}
