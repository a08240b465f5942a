package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.distribution.continuous.TDistribution;
import org.measuredmile.comparison.control.MixedModel.Factor;
import org.measuredmile.quantity.Interval;

/// Another bike's difference from the control bike, with what the days did to both taken out.
///
/// Shape: `value` is the other less the control; `weightAtNoDayEffect` is how much speaks for days that
/// differ by nothing.
/// Unit: that of the observations.
/// Valid: the other bike shares a day with the control, or the control has been ridden on three days and
/// more.
/// Source: bikes fixed, days random; the ratio of day to run variance integrated over a grid with a
/// half-Cauchy prior on its root, so that neither zero nor one estimate of it is taken for the truth
/// (docs/decisions/0077).
public record AgainstControl(String bike, double value, Interval interval95, double weightAtNoDayEffect) {
    private static final int GRID = 41;
    private static final double LEAST = 0.01;
    private static final double MOST = 30;
    private static final double AT_ZERO = 0.1;
    private static final int LEAST_DEGREES = 4;
    private static final int LEAST_CONTROL_DAYS = 3;

    /// Every bike that can be compared, in the order in which they occur.
    public static List<AgainstControl> all(String control, List<Observation> observations) {
        var linked = linked(control, observations);
        var bikes = linked.stream().map(Observation::bike).distinct().toList();
        if (bikes.size() < 2 || linked.size() - bikes.size() < LEAST_DEGREES) {
            return List.of();
        }
        var fits = Grid.of(linked);
        return bikes.stream()
                .filter(bike -> !bike.equals(control))
                .map(bike -> fits.contrast(bike, bikes.indexOf(bike), bikes.indexOf(control)))
                .toList();
    }

    /// The difference of one bike; empty where no day links it with the control.
    public static Optional<AgainstControl> of(String bike, String control, List<Observation> observations) {
        return all(control, observations).stream()
                .filter(one -> one.bike().equals(bike))
                .findFirst();
    }

    /// The control bike's observations first, and those of every bike that it says something about.
    private static List<Observation> linked(String control, List<Observation> observations) {
        Set<Object> days = new HashSet<>();
        observations.stream().filter(one -> one.bike().equals(control)).forEach(one -> days.add(one.date()));
        boolean oftenEnough = days.size() >= LEAST_CONTROL_DAYS;
        Set<String> sharing = new HashSet<>();
        observations.stream()
                .filter(one -> oftenEnough || days.contains(one.date()))
                .forEach(one -> sharing.add(one.bike()));
        return observations.stream()
                .filter(one -> sharing.contains(one.bike()))
                .sorted(Comparator.comparing((Observation one) -> !one.bike().equals(control)))
                .toList();
    }

    /// The model at each ratio of the grid, with the weight of each.
    private record Grid(List<Reml.Fit> fits, double[] weights, int degreesOfFreedom) {
        static Grid of(List<Observation> observations) {
            var model = MixedModel.of(
                    observations.stream().mapToDouble(Observation::value).toArray(),
                    Factor.of(
                            "bike", observations.stream().map(Observation::bike).toList()),
                    Factor.of(
                            "day", observations.stream().map(Observation::date).toList()));
            var reml = new Reml(model);
            var fits = new ArrayList<Reml.Fit>();
            double[] prior = prior();
            double best = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= GRID; i++) {
                fits.add(reml.fit(Math.sqrt(ratio(i))));
                best = Math.min(best, fits.getLast().criterion());
            }
            double[] weights = new double[GRID + 1];
            double sum = 0;
            for (int i = 0; i <= GRID; i++) {
                weights[i] = prior[i] * StrictMath.exp(-(fits.get(i).criterion() - best) / 2);
                sum += weights[i];
            }
            for (int i = 0; i <= GRID; i++) {
                weights[i] /= sum;
            }
            return new Grid(fits, weights, reml.degreesOfFreedom());
        }

        /// Day variance over run variance: none, then evenly spaced in its logarithm.
        private static double ratio(int i) {
            return i == 0 ? 0 : LEAST * StrictMath.pow(MOST / LEAST, (i - 1.0) / (GRID - 1));
        }

        /// A tenth for no day effect against one for all others together.
        private static double[] prior() {
            double[] prior = new double[GRID + 1];
            double sum = 0;
            for (int i = 1; i <= GRID; i++) {
                prior[i] = Math.sqrt(ratio(i)) / (1 + ratio(i));
                sum += prior[i];
            }
            for (int i = 1; i <= GRID; i++) {
                prior[i] /= sum;
            }
            prior[0] = AT_ZERO;
            return prior;
        }

        AgainstControl contrast(String name, int bike, int control) {
            double[] centres = new double[fits.size()];
            double[] standards = new double[fits.size()];
            double value = 0;
            for (int i = 0; i < centres.length; i++) {
                var fit = fits.get(i);
                centres[i] = fit.effects()[bike] - fit.effects()[control];
                double[][] c = fit.covariance();
                double unscaled = c[bike][bike] + c[control][control] - 2 * c[bike][control];
                standards[i] = Math.sqrt(unscaled * fit.runVariance());
                value += weights[i] * centres[i];
            }
            double half = halfWidth(value, centres, standards);
            return new AgainstControl(name, value, Interval.around(value, half), weights[0]);
        }

        /// The half-width about a value that holds 95 % of the mixture.
        private double halfWidth(double value, double[] centres, double[] standards) {
            var student = new TDistribution(degreesOfFreedom);
            double low = 0;
            double high = 0;
            for (int i = 0; i < centres.length; i++) {
                high = Math.max(high, Math.abs(centres[i] - value) + 100 * standards[i]);
            }
            for (int step = 0; step < 60; step++) {
                double half = (low + high) / 2;
                double held = 0;
                for (int i = 0; i < centres.length; i++) {
                    held += weights[i]
                            * (student.cumulativeProbability((value + half - centres[i]) / standards[i])
                                    - student.cumulativeProbability((value - half - centres[i]) / standards[i]));
                }
                if (held < 0.95) {
                    low = half;
                } else {
                    high = half;
                }
            }
            return (low + high) / 2;
        }
    }
}
