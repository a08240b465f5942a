package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.comparison.TestedBike;

/// The bikes of an archive with their specifications and the figures that stand.
public final class TestedBikes {
    private TestedBikes() {}

    /// One bike; empty when the archive has no test day of it.
    public static Optional<TestedBike> of(Archive archive, String id) {
        return archive.describe(id)
                .map(bike -> new TestedBike(
                        bike,
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

    /// Every bike, by id.
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
                stored.figure(), stored.date(), stored.day(), stored.configuration(), stored.accepted());
    }
}
