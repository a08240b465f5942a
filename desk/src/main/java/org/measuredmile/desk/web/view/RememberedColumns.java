package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.TestDay;

/// What the columns of an instrument were set to mean on another test day: the latest before a day,
/// else the earliest after it.
///
/// Shape: settings hold for the day that they stand in; for another they are shown as they would be
/// set, and a person takes them over.
public record RememberedColumns(String day, LocalDate date, Instrument.Kind kind, List<ColumnSetting> columns) {
    public RememberedColumns {
        columns = List.copyOf(columns);
    }

    /// What is remembered of an instrument for a day; nothing where it was never set.
    public static Optional<RememberedColumns> of(Archive archive, TestDay day, String instrument) {
        var others = archive.days().stream()
                .filter(entry -> !entry.id().equals(day.id()) && !entry.date().isEmpty())
                .toList();
        String today = day.date().toString();
        var before = others.stream()
                .filter(entry -> entry.date().compareTo(today) <= 0)
                .sorted(Comparator.comparing(DayEntry::date).reversed());
        var after = others.stream()
                .filter(entry -> entry.date().compareTo(today) > 0)
                .sorted(Comparator.comparing(DayEntry::date));
        return java.util.stream.Stream.concat(before, after)
                .flatMap(entry -> on(archive, entry.id(), instrument).stream())
                .findFirst();
    }

    private static Optional<RememberedColumns> on(Archive archive, String id, String instrument) {
        return archive.day(id)
                .map(StoredDay::folder)
                .map(DayReader::read)
                .flatMap(read -> read instanceof DayRead.Read usable ? Optional.of(usable.day()) : Optional.empty())
                .flatMap(day -> day.instrument(instrument)
                        .filter(one -> !one.columns().isEmpty())
                        .map(one -> new RememberedColumns(id, day.date(), one.kind(), one.columns())));
    }
}
