package org.measuredmile.desk.web.view;

import java.time.ZoneId;
import java.util.List;
import org.measuredmile.archive.HistoryEntry;

/// What was done to the archive, latest first.
public record HistoryView(List<Row> rows) {
    /// One thing done: when, by whom, to what, why, and which files it changed.
    public record Row(
            String when, String who, String act, String subject, String href, String why, List<String> changes) {}

    public static HistoryView of(List<HistoryEntry> entries, ZoneId zone) {
        return new HistoryView(
                entries.reversed().stream().map(entry -> row(entry, zone)).toList());
    }

    static Row row(HistoryEntry entry, ZoneId zone) {
        boolean isDay = entry.subject().equals("day");
        return new Row(
                Printing.moment(entry.at(), zone),
                entry.who(),
                entry.act() + ", revision " + entry.number(),
                entry.subject() + " " + entry.name(),
                isDay ? Paths.day(entry.name()) : "",
                entry.why(),
                entry.changes());
    }
}
