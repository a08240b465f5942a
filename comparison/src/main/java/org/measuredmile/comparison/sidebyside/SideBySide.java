package org.measuredmile.comparison.sidebyside;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.standing.Contrast;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.quantity.statistics.StudentT;
import org.measuredmile.recording.day.NotRidden;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.Trials;

/// Two to six bikes beside each other: a row for each figure and variant that at least two of them have.
///
/// Shape: rows in the order in which a reader asks (going, stopping, climbing, how far, carrying, living with it).
/// Only equal variants stand in one row. A level whose place among its bike's levels is known counts by that place and
/// not by its number, so that the highest of one bike is compared with the highest of another.
public record SideBySide(List<TestedBike> bikes, List<FigureRow> rows, List<FactRow> facts) {
    public static final int FEWEST = 2;
    public static final int MOST = 6;

    public SideBySide {
        bikes = List.copyOf(bikes);
        rows = List.copyOf(rows);
        facts = List.copyOf(facts);
    }

    /// Puts bikes beside each other; `notRidden` holds by bike id what its crew left out and why.
    ///
    /// Error: IllegalArgumentException for fewer than two bikes, more than six, or one bike twice.
    public static SideBySide of(List<TestedBike> bikes, Map<String, List<NotRidden>> notRidden) {
        return of(bikes, notRidden, Trials.ALL.stream().map(Trial::declaration).toList());
    }

    /// The rows of these trials alone.
    static SideBySide of(List<TestedBike> bikes, Map<String, List<NotRidden>> notRidden, List<Declaration> trials) {
        long different = bikes.stream().map(one -> one.bike().id()).distinct().count();
        if (bikes.size() < FEWEST || bikes.size() > MOST || different < bikes.size()) {
            throw new IllegalArgumentException(bikes.size() + " bikes, " + different + " of them different");
        }
        var rows = new ArrayList<FigureRow>();
        for (Chapter chapter : Chapter.values()) {
            for (var trial : trials) {
                for (FigureSpec figure : trial.figures()) {
                    if (figure.chapter() == chapter) {
                        rows.addAll(new Rows(bikes, notRidden, trial, figure).all());
                    }
                }
            }
        }
        return new SideBySide(bikes, rows, FactRow.of(bikes));
    }

    /// The rows of one figure.
    private record Rows(
            List<TestedBike> bikes, Map<String, List<NotRidden>> notRidden, Declaration trial, FigureSpec figure) {
        List<FigureRow> all() {
            var byVariant = new TreeMap<Variant, TestedBike.Result[]>();
            for (int bike = 0; bike < bikes.size(); bike++) {
                for (var result : bikes.get(bike).of(figure.id())) {
                    var cells = byVariant.computeIfAbsent(
                            place(result.figure().key().variant()), _ -> new TestedBike.Result[bikes.size()]);
                    // The latest stands first.
                    cells[bike] = cells[bike] == null ? result : cells[bike];
                }
            }
            var rows = new ArrayList<FigureRow>();
            byVariant.forEach((variant, results) -> row(variant, results).ifPresent(rows::add));
            return rows;
        }

        private Optional<FigureRow> row(Variant variant, TestedBike.Result[] results) {
            var cells = new ArrayList<Cell>();
            for (int bike = 0; bike < results.length; bike++) {
                cells.add(results[bike] == null ? missing(bike, variant) : new Cell.Measured(results[bike]));
            }
            long measured =
                    cells.stream().filter(Cell.Measured.class::isInstance).count();
            if (measured < 2) {
                return Optional.empty();
            }
            boolean foldable = !figure.primary() || variant.get("at").isPresent() || isBetween(variant);
            String notCompared = notCompared(cells);
            var differences = notCompared.isEmpty() ? differences(cells) : List.<Difference>of();
            var row = new FigureRow(trial, figure, variant, foldable, cells, differences, notCompared, "");
            return Optional.of(new FigureRow(
                    trial,
                    figure,
                    variant,
                    foldable,
                    cells,
                    differences,
                    notCompared,
                    new Saying(names(bikes), row).text()));
        }

        /// Whether it is of a level that is neither the lowest nor the highest.
        private static boolean isBetween(Variant variant) {
            return variant.get("levelRole")
                    .filter(role -> List.of("middle", "unknown", "off").contains(role))
                    .isPresent();
        }

        private Cell missing(int bike, Variant variant) {
            return notRidden.getOrDefault(bikes.get(bike).bike().id(), List.of()).stream()
                    .filter(one -> one.trial().equals(trial.id()) && variant.covers(place(one.variant())))
                    .findFirst()
                    .<Cell>map(one -> new Cell.NotRidden(one.reason()))
                    .orElseGet(Cell.NotMeasured::new);
        }

        /// Versions of a trial whose results may not be set against each other.
        private String notCompared(List<Cell> cells) {
            var versions = new TreeMap<Integer, List<String>>();
            for (int bike = 0; bike < cells.size(); bike++) {
                if (cells.get(bike) instanceof Cell.Measured(var result)) {
                    versions.computeIfAbsent(result.figure().version(), _ -> new ArrayList<>())
                            .add(bikes.get(bike).bike().title());
                }
            }
            if (figure.comparable() || versions.size() < 2) {
                return "";
            }
            var words = new ArrayList<String>();
            versions.forEach((version, titles) -> words.add(Saying.list(titles) + " by version " + version));
            return "Not compared: measured by different versions of the trial, " + String.join("; ", words) + ".";
        }

        private List<Difference> differences(List<Cell> cells) {
            var pairs = new ArrayList<int[]>();
            var contrasts = new ArrayList<Contrast>();
            for (int one = 0; one < cells.size(); one++) {
                for (int other = one + 1; other < cells.size(); other++) {
                    if (cells.get(one) instanceof Cell.Measured(var first)
                            && cells.get(other) instanceof Cell.Measured(var second)) {
                        pairs.add(new int[] {one, other});
                        contrasts.add(Contrast.between(entrant(one, first), entrant(other, second)));
                    }
                }
            }
            double[] probabilities = contrasts.stream()
                    .mapToDouble(SideBySide::probabilityOfEquals)
                    .toArray();
            double[] adjusted = Holm.adjusted(probabilities);
            var differences = new ArrayList<Difference>();
            for (int i = 0; i < adjusted.length; i++) {
                var contrast = contrasts.get(i);
                differences.add(new Difference(
                        pairs.get(i)[0],
                        pairs.get(i)[1],
                        contrast.difference(),
                        contrast.interval95(),
                        probabilities[i],
                        adjusted[i],
                        adjusted[i] <= Holm.LEVEL));
            }
            return differences;
        }

        private Entrant entrant(int place, TestedBike.Result result) {
            var bike = bikes.get(place).bike();
            var measured = result.figure();
            return new Entrant(
                    bike.id(),
                    bike.title(),
                    bike.category(),
                    bike.maker(),
                    bike.drive(),
                    result.date(),
                    measured.key().variant(),
                    measured.version(),
                    measured.value(),
                    measured.anyDay(),
                    measured.budget());
        }
    }

    /// The probability of a difference at least as large between two bikes that are equal; two-sided.
    static double probabilityOfEquals(Contrast contrast) {
        if (contrast.difference() == 0) {
            return 1;
        }
        if (contrast.standardUncertainty() == 0) {
            return 0;
        }
        double t = Math.abs(contrast.difference()) / contrast.standardUncertainty();
        return Math.min(1, 2 * StudentT.below(-t, Math.max(1, contrast.degreesOfFreedom())));
    }

    /// What each bike is called where all are known: by its model, or by its title where two models are called
    /// alike.
    public static List<String> names(List<TestedBike> bikes) {
        var models = bikes.stream().map(one -> one.bike().model()).toList();
        boolean isEnough = models.stream().distinct().count() == models.size() && !models.contains("");
        return isEnough ? models : bikes.stream().map(one -> one.bike().title()).toList();
    }

    /// The variant that results are compared in: without the number of a level whose place is known.
    public static Variant place(Variant variant) {
        boolean isPlaced = variant.get("levelRole")
                .filter(role -> !role.equals("middle") && !role.equals("unknown"))
                .isPresent();
        return isPlaced ? variant.without("level") : variant;
    }
}
