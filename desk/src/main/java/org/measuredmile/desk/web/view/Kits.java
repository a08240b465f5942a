package org.measuredmile.desk.web.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.Instrument;

/// The instruments that other days were measured with, to be taken over as they are known there.
public final class Kits {
    private static final int MOST = 8;

    private Kits() {}

    /// The instruments of one day.
    public record Kit(String day, LocalDate date, List<Instrument> instruments) {
        public Kit {
            instruments = List.copyOf(instruments);
        }

        RunView.Choice choice() {
            return new RunView.Choice(
                    day,
                    Printing.shortDay(date) + ": "
                            + instruments.stream().map(Instrument::id).collect(Collectors.joining(", ")));
        }
    }

    /// The latest first, each list of instruments once.
    public static List<Kit> of(Archive archive) {
        var days = archive.days().stream()
                .sorted(Comparator.comparing(DayEntry::date).reversed())
                .toList();
        var kits = new ArrayList<Kit>();
        for (DayEntry entry : days) {
            if (kits.size() < MOST) {
                kit(archive, entry.id())
                        .filter(kit ->
                                kits.stream().noneMatch(one -> one.instruments().equals(kit.instruments())))
                        .ifPresent(kits::add);
            }
        }
        return List.copyOf(kits);
    }

    private static Optional<Kit> kit(Archive archive, String id) {
        return archive.day(id)
                .map(StoredDay::folder)
                .map(DayReader::read)
                .flatMap(read -> read instanceof DayRead.Read usable ? Optional.of(usable.day()) : Optional.empty())
                .filter(day -> !day.instruments().isEmpty())
                .map(day -> new Kit(id, day.date(), day.instruments()));
    }
}
