package org.measuredmile.desk.coverage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.measuredmile.demo.ride.SimulatedDay;
import org.measuredmile.demo.ride.SimulatedHillDay;
import org.measuredmile.demo.ride.SimulatedRange;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.roadload.Air;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Trials;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.range.RangeElsewhere;

/// One ride foretold from everything but that ride: the climb from starts, coast-down and masses; the range at a lower
/// level from the ride at the highest.
///
/// Shape: the same seed and number of days give the same rows.
public final class LeaveOneOut {
    /// A lower level is ridden at this share of the speed.
    private static final double LOWER = 0.7;

    private LeaveOneOut() {}

    /// How well one kind of ride was foretold.
    ///
    /// Shape: errors relative to the truth of the ride that was left out; `held` the share of 95 %
    /// intervals that held it; `halfWidth` the middle one, relative.
    public record Row(
            String what,
            long seed,
            int days,
            int foretold,
            double meanError,
            double rmsError,
            double held,
            double halfWidth) {}

    private record Guess(double foretold, double happened, Interval interval) {}

    public static List<Row> run(long seed, int days, IntConsumer progress) {
        var climbs = new ArrayList<Guess>();
        var ranges = new ArrayList<Guess>();
        for (int i = 0; i < days; i++) {
            climb(new SimulatedHillDay().day(new Seed(seed), i)).ifPresent(climbs::add);
            range(seed, i).ifPresent(ranges::add);
            progress.accept(i + 1);
        }
        return List.of(
                row("the climb from everything but the climb", seed, days, climbs),
                row("a lower level's range from the ride at the highest", seed, days, ranges));
    }

    private static List<Figure> figures(String trial, SimulatedDay day) {
        return CoverageStudy.outcome(Trials.find(trial).orElseThrow(), day, CoverageStudy.decoded(day), new TreeMap<>())
                .figures();
    }

    private static Optional<Figure> figure(List<Figure> figures, String id, boolean atReference) {
        return figures.stream()
                .filter(figure -> figure.key().figure().equals(id))
                .filter(figure -> figure.key().variant().has("at", "reference") == atReference)
                .findFirst();
    }

    private static Optional<Guess> climb(SimulatedDay day) {
        var figures = figures("climb", day);
        var foretold = figure(figures, "climb.foretold-time", false);
        double truth = day.truths().stream()
                .filter(one -> one.figure().equals("climb.foretold-time"))
                .mapToDouble(SimulatedDay.Truth::thisDay)
                .findFirst()
                .orElse(Double.NaN);
        return foretold.map(one -> new Guess(one.value(), truth, one.thisDay().interval95()));
    }

    private static Optional<Guess> range(long seed, int index) {
        var simulated = new SimulatedRange(SimulatedRange.How.LOG);
        var day = simulated.day(new Seed(seed), index);
        var lower = simulated.lower(new Seed(seed), index, LOWER);
        return figure(figures("range", day), "range.distance", true).flatMap(ridden -> {
            double kg = RoadSetting.REFERENCE_RIDER_KG;
            double air = Air.REFERENCE.densityKgPerM3();
            var brought = RangeElsewhere.of(
                    ridden,
                    new RangeElsewhere.Ride(kg, air, lower.riddenMps(), 0, 0),
                    new RangeElsewhere.Ride(kg, air, lower.mps(), 0, 0),
                    new RangeElsewhere.Bike(RoadSetting.BIKE_KG, RoadSetting.BIKE_SD_KG, UsedLoad.usual(""), 0));
            return brought.against().isEmpty()
                    ? Optional.of(new Guess(
                            brought.value(), lower.distanceM(), brought.known().interval95()))
                    : Optional.empty();
        });
    }

    private static Row row(String what, long seed, int days, List<Guess> guesses) {
        double sum = 0;
        double squares = 0;
        int held = 0;
        double[] widths = new double[guesses.size()];
        for (int i = 0; i < widths.length; i++) {
            var guess = guesses.get(i);
            double error = guess.foretold() / guess.happened() - 1;
            sum += error;
            squares += error * error;
            held += guess.interval().contains(guess.happened()) ? 1 : 0;
            widths[i] = guess.interval().halfWidth() / guess.foretold();
        }
        Arrays.sort(widths);
        int n = Math.max(1, widths.length);
        return new Row(
                what,
                seed,
                days,
                widths.length,
                sum / n,
                Math.sqrt(squares / n),
                (double) held / n,
                widths.length == 0 ? Double.NaN : widths[widths.length / 2]);
    }
}
