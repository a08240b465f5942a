package org.measuredmile.comparison.control;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.measuredmile.comparison.control.MixedModel.Factor;
import org.measuredmile.quantity.Interval;

/// By how much testers and days differ on the same bike, as standard deviations; no tester's own effect is
/// told.
///
/// Unit: `run` and the components in the unit of the observations, or as shares of the value where
/// `relative`.
/// Shape: bikes are fixed, testers and days random. Tester and day stand apart where every tester has
/// ridden on three days and more and some bike was ridden by several; otherwise both are one component, and
/// `why` says so. Nothing at all where no bike was ridden on two days.
public record DayAndTester(
        boolean relative,
        int bikes,
        int days,
        int testers,
        int runs,
        List<Component> components,
        double run,
        String why) {
    private static final int LEAST_DAYS_OF_A_TESTER = 3;
    private static final String TESTER = "between testers";
    private static final String DAY = "between days";
    private static final String BOTH = "between days, testers among it";

    /// One component.
    ///
    /// Shape: `degreesOfFreedom` are those by which it can be told from the others; `bySquares` is the same
    /// by sums of squares, 0 where those give less than nothing.
    public record Component(
            String words, double standardDeviation, Interval interval95, double bySquares, int degreesOfFreedom) {}

    public DayAndTester {
        components = List.copyOf(components);
    }

    /// What the runs say; empty where no bike was ridden on two days, or nothing is left to tell runs
    /// apart.
    ///
    /// Shape: with `relative` the logarithms of the values, all above 0, are taken apart.
    public static Optional<DayAndTester> of(List<Observation> all, boolean relative) {
        var observations = onBikesOfSeveralDays(all);
        long bikes = observations.stream().map(Observation::bike).distinct().count();
        if (observations.isEmpty() || (relative && observations.stream().anyMatch(one -> !(one.value() > 0)))) {
            return Optional.empty();
        }
        double[] values = observations.stream()
                .mapToDouble(one -> relative ? StrictMath.log(one.value()) : one.value())
                .toArray();
        var split = split(values, observations);
        var squares = SequentialSquares.of(split.model());
        if (squares.line("run").degreesOfFreedom() < 1) {
            return Optional.empty();
        }
        var found = RemlEstimate.of(split.model());
        var components = new ArrayList<Component>();
        for (int k = 0; k < split.model().random().size(); k++) {
            var line = squares.lines().get(k);
            components.add(new Component(
                    line.name(),
                    found.spreads().get(k),
                    found.intervals95().get(k),
                    Math.sqrt(line.reported()),
                    line.degreesOfFreedom()));
        }
        return Optional.of(new DayAndTester(
                relative,
                (int) bikes,
                count(observations.stream().map(Observation::date).toList()),
                count(observations.stream().map(Observation::tester).toList()),
                observations.size(),
                components,
                found.runSpread(),
                split.why()));
    }

    private static int count(List<?> keys) {
        return new HashSet<Object>(keys).size();
    }

    /// A bike of one day says nothing about days, and nothing about testers.
    private static List<Observation> onBikesOfSeveralDays(List<Observation> all) {
        Map<String, LocalDate> first = new HashMap<>();
        Set<String> several = new HashSet<>();
        for (var one : all) {
            var known = first.putIfAbsent(one.bike(), one.date());
            if (known != null && !known.equals(one.date())) {
                several.add(one.bike());
            }
        }
        return all.stream().filter(one -> several.contains(one.bike())).toList();
    }

    private record Split(MixedModel model, String why) {}

    private static Split split(double[] values, List<Observation> observations) {
        var bike =
                Factor.of("bike", observations.stream().map(Observation::bike).toList());
        var tester =
                Factor.of(TESTER, observations.stream().map(Observation::tester).toList());
        var day = Factor.of(DAY, observations.stream().map(Observation::date).toList());
        var apart = MixedModel.of(values, bike, tester, day);
        String why = whyTogether(observations, apart);
        if (why.isEmpty()) {
            return new Split(apart, "");
        }
        var both = Factor.of(
                tester.count() > 1 ? BOTH : DAY,
                observations.stream()
                        .map(one -> one.date() + " " + one.tester())
                        .toList());
        return new Split(MixedModel.of(values, bike, both), why);
    }

    /// Why testers cannot be told from days; empty where they can.
    private static String whyTogether(List<Observation> observations, MixedModel apart) {
        Map<String, Set<Object>> days = new TreeMap<>();
        observations.forEach(one ->
                days.computeIfAbsent(one.tester(), tester -> new HashSet<>()).add(one.date()));
        if (days.size() < 2) {
            return "one tester rode all of it: nothing is said about testers";
        }
        var squares = SequentialSquares.of(apart);
        if (squares.line(TESTER).degreesOfFreedom() == 0) {
            return "no two testers rode the same bike: testers can't be told from bikes";
        }
        boolean tooFew = days.values().stream().anyMatch(one -> one.size() < LEAST_DAYS_OF_A_TESTER);
        if (tooFew) {
            return "a tester rode on fewer than " + LEAST_DAYS_OF_A_TESTER
                    + " of these days: testers can't be told from days";
        }
        return squares.line(DAY).degreesOfFreedom() == 0
                ? "each tester's days are the tester's alone: testers can't be told from days"
                : "";
    }
}
