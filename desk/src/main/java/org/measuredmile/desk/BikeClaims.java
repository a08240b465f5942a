package org.measuredmile.desk;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.Claims;
import org.measuredmile.comparison.verdict.ReplySheet;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;
import org.measuredmile.recording.day.TestDay;

/// A bike's claims with what its figures say of them, and the days that the figures are of.
public record BikeClaims(TestedBike bike, Map<String, TestDay> days, List<ClaimVerdict> verdicts) {
    public BikeClaims {
        days = Map.copyOf(days);
        verdicts = List.copyOf(verdicts);
    }

    /// The claims of a bike; empty when the archive has no test day of it.
    public static Optional<BikeClaims> of(Archive archive, String id) {
        return TestedBikes.of(archive, id).map(bike -> of(archive, bike));
    }

    private static BikeClaims of(Archive archive, TestedBike bike) {
        var days = new TreeMap<String, TestDay>();
        bike.results().stream()
                .map(TestedBike.Result::day)
                .distinct()
                .forEach(day -> written(archive, day).ifPresent(read -> days.put(day, read)));
        return new BikeClaims(bike, days, Claims.of(bike, days));
    }

    /// A day as its own files tell it; its recordings stay closed.
    private static Optional<TestDay> written(Archive archive, String id) {
        return archive.day(id)
                .map(stored -> DayReader.read(stored.folder()))
                .flatMap(read -> read instanceof DayRead.Read usable ? Optional.of(usable.day()) : Optional.empty());
    }

    /// The id of a bike that somebody named by its id or by maker and model, in any case of letters.
    public static Optional<String> named(Archive archive, String name) {
        String wanted = name.strip();
        return archive.described().values().stream()
                .filter(bike ->
                        bike.id().equalsIgnoreCase(wanted) || bike.title().equalsIgnoreCase(wanted))
                .map(bike -> bike.id())
                .findFirst();
    }

    /// The sheet for the bike's maker.
    public ReplySheet reply(ReplySheet.Dates dates, UnitSystem system) {
        return ReplySheet.of(bike, verdicts, days, dates, system);
    }
}
