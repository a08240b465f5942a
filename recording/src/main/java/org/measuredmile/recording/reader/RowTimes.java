package org.measuredmile.recording.reader;

/// The times of rows one after another, by a clock; a time of day runs over midnight.
final class RowTimes {
    private final Clock clock;
    private final char decimalMark;
    private String dateText = "";
    private long dateDay = Clock.NOT_READ;
    private long dayNs;
    private long beforeNs = Clock.NOT_READ;

    RowTimes(Clock clock, char decimalMark) {
        this.clock = clock;
        this.decimalMark = decimalMark;
    }

    /// The time of the next row, in nanoseconds; [Clock#NOT_READ] where its cells cannot be read.
    long ns(CellRow row) {
        long ns = switch (clock.form()) {
            case DATE_TIME ->
                clock.order() == TimeText.DateOrder.YEAR_FIRST ? row.isoNs(clock.timeColumn()) : Clock.NOT_READ;
            case DATE_AND_TIME -> dated(row, row.clockNs(clock.timeColumn()));
            case TIME_OF_DAY -> row.clockNs(clock.timeColumn());
            case EPOCH, ELAPSED -> row.unitsNs(clock.timeColumn(), Math.round(clock.nsPerUnit()), decimalMark);
        };
        if (ns == Clock.NOT_READ || Math.abs(ns) >= Clock.FARTHEST_NS) {
            ns = clock.read(row.cell(clock.dateColumn()), row.cell(clock.timeColumn()), decimalMark);
        }
        return clock.form() == Clock.Form.TIME_OF_DAY && ns != Clock.NOT_READ ? overMidnight(ns) : ns;
    }

    private long dated(CellRow row, long clockNs) {
        if (clockNs == Clock.NOT_READ) {
            return Clock.NOT_READ;
        }
        if (!row.is(clock.dateColumn(), dateText)) {
            dateText = row.cell(clock.dateColumn());
            dateDay = TimeText.date(dateText, clock.order()).orElse(Clock.NOT_READ);
        }
        return dateDay == Clock.NOT_READ ? Clock.NOT_READ : dateDay * TimeText.DAY_NS + clockNs;
    }

    private long overMidnight(long ns) {
        if (beforeNs != Clock.NOT_READ && ns < beforeNs - TimeText.DAY_NS / 2) {
            dayNs += TimeText.DAY_NS;
        }
        beforeNs = ns;
        return dayNs + ns;
    }
}
