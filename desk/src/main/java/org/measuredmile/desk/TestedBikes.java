package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.Markings;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;

/// The bikes of an archive with their specifications and the figures that stand.
public final class TestedBikes {
    private TestedBikes() {}

    /// One bike, its own marks beside its claims; empty when the archive has no test day of it.
    public static Optional<TestedBike> of(Archive archive, String id) {
        return archive.describe(id)
                .map(bike -> new TestedBike(
                        markings(archive, id).map(marks -> marks.onto(bike)).orElse(bike),
                        archive.figures(FigureQuery.ofBike(id)).stream()
                                .map(TestedBikes::result)
                                .toList()));
    }

    /// Several bikes in the order of their ids; one that the archive does not know is left out.
    public static List<TestedBike> of(Archive archive, List<String> ids) {
        var described = archive.described();
        return ids.stream()
                .flatMap(id -> Optional.ofNullable(described.get(id)).stream())
                .map(bike -> new TestedBike(
                        bike,
                        archive.figures(FigureQuery.ofBike(bike.id())).stream()
                                .map(TestedBikes::result)
                                .toList()))
                .toList();
    }

    /// What the bike itself says, as it was read on the latest day on which anything was.
    private static Optional<Markings> markings(Archive archive, String id) {
        return archive.days().stream()
                .filter(day -> day.bike().equals(id))
                .flatMap(day -> archive.day(day.id()).stream())
                .map(stored -> DayReader.read(
                        new DayFolder(stored.id(), stored.folder().texts(), new TreeMap<>())))
                .flatMap(read -> read instanceof DayRead.Read usable ? Stream.of(usable.day()) : Stream.empty())
                .map(Markings::of)
                .filter(marks -> !marks.isEmpty())
                .findFirst();
    }

    /// Every bike, by id, without their marks.
    public static List<TestedBike> all(Archive archive) {
        var results = new TreeMap<String, List<TestedBike.Result>>();
        archive.figures(FigureQuery.LATEST)
                .forEach(stored -> results.computeIfAbsent(stored.bike(), id -> new ArrayList<>())
                        .add(result(stored)));
        return archive.described().values().stream()
                .map(bike -> new TestedBike(bike, results.getOrDefault(bike.id(), List.of())))
                .toList();
    }

    /// Every bike, by id, with its results in some figures alone.
    public static List<TestedBike> all(Archive archive, Collection<String> figures) {
        var results = new TreeMap<String, List<TestedBike.Result>>();
        figures.forEach(figure -> archive.figures(FigureQuery.standing(figure))
                .forEach(stored -> results.computeIfAbsent(stored.bike(), id -> new ArrayList<>())
                        .add(result(stored))));
        return archive.described().values().stream()
                .map(bike -> new TestedBike(bike, results.getOrDefault(bike.id(), List.of())))
                .toList();
    }

    private static TestedBike.Result result(StoredFigure stored) {
        return new TestedBike.Result(
                stored.figure(),
                stored.date(),
                stored.day(),
                stored.configuration(),
                stored.accepted(),
                stored.correlations());
    }
}
