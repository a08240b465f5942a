package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.List;
import org.measuredmile.archive.DayEntry;

/// The list of test days, latest first.
public record DaysView(List<Row> rows) {
    /// One day.
    ///
    /// Shape: `state` is empty when all is well, else the word to say first.
    public record Row(String href, String date, String bike, String place, String figures, String state, String why) {}

    public static DaysView of(List<DayEntry> entries) {
        return new DaysView(entries.stream().map(DaysView::row).toList());
    }

    private static Row row(DayEntry entry) {
        String bike = (entry.maker() + " " + entry.model()).strip();
        String date = entry.date().isEmpty() ? entry.id() : Printing.day(LocalDate.parse(entry.date()));
        return new Row(
                Paths.day(entry.id()),
                date,
                bike.isEmpty() ? entry.bike() : bike,
                entry.place(),
                Printing.count(entry.figures(), "figure", "figures"),
                switch (entry.state()) {
                    case REDUCED -> "";
                    case UNUSABLE -> "no figures yet";
                    case FAILED -> "not reduced";
                },
                switch (entry.state()) {
                    case REDUCED -> "";
                    case UNUSABLE -> "its own files need a correction; all files are kept";
                    case FAILED -> entry.message();
                });
    }
}
