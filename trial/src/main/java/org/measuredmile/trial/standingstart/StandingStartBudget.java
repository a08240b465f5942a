package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// What the runs of a day share and what therefore does not average out, and what timing each of them adds.
///
/// Shape: a group is the counted runs of one drive to one speed. Sensitivities follow from its [SpeedCurve].
/// Unit: contributions in the SI unit of the figure.
final class StandingStartBudget {
    private final TrialInput input;

    StandingStartBudget(TrialInput input) {
        this.input = input;
    }

    /// A counted run and its part in a figure.
    record Counted(StartRun run, StartRun.Part part) {}

    /// The counted runs to one speed.
    record Group(Target target, List<Counted> counted, boolean bothWays) {
        Group {
            counted = List.copyOf(counted);
        }

        private List<Counted> traced() {
            return counted.stream()
                    .filter(one -> one.part().trace().isPresent())
                    .toList();
        }

        /// Standard deviation of one run's own timing.
        double ownSd() {
            double squares = 0;
            for (var one : counted) {
                squares += one.part().ownSd() * one.part().ownSd();
            }
            return Math.sqrt(squares / counted.size());
        }

        private double tracedShare() {
            return (double) traced().size() / counted.size();
        }

        /// The share of runs that a watch timed, by hand.
        private double reactedShare() {
            long reacted = counted.stream().filter(one -> one.part().reacted()).count();
            return (double) reacted / counted.size();
        }

        double mean() {
            return counted.stream()
                    .mapToDouble(one -> one.part().value())
                    .average()
                    .orElse(0);
        }

        /// Acceleration against speed, as the traces have it; as starts usually have it where a watch was used.
        SpeedCurve curve() {
            var traced = traced();
            var speeds = new ArrayList<Double>();
            var slopes = new ArrayList<Double>();
            double meanMps2 = target.speedMps() / Math.max(0.5, mean());
            speeds.add(0.0);
            slopes.add(traced.stream()
                    .mapToDouble(one -> fit(one).curve().accelerationMps2())
                    .average()
                    .orElse(StandingStartRules.AT_REST_SHARE * meanMps2));
            for (var on : Target.values()) {
                var slope = traced.stream()
                        .flatMap(one -> one.run().traced().orElseThrow().reached(on).stream())
                        .mapToDouble(yes -> yes.crossing().slopeMps2())
                        .average();
                if (on.compareTo(target) <= 0 && slope.isPresent()) {
                    speeds.add(on.speedMps());
                    slopes.add(slope.getAsDouble());
                }
            }
            if (traced.isEmpty()) {
                byWatch(speeds, slopes);
            }
            if (speeds.size() == 1) {
                speeds.add(target.speedMps());
                slopes.add(target.slopeShare() * meanMps2);
            }
            return new SpeedCurve(
                    speeds.stream().mapToDouble(Double::doubleValue).toArray(),
                    slopes.stream().mapToDouble(Double::doubleValue).toArray());
        }

        /// From mark to mark the watch tells the power that was left for speeding up; with what a road
        /// usually takes, the acceleration halfway and at the last mark follows.
        private void byWatch(List<Double> speeds, List<Double> slopes) {
            for (int i = 0; i < target.ordinal(); i++) {
                var from = Target.values()[i];
                var to = Target.values()[i + 1];
                var seconds = counted.stream()
                        .filter(one -> one.run().handTime(from).isPresent()
                                && one.run().handTime(to).isPresent())
                        .mapToDouble(one -> one.run().handTime(to).get().value()
                                - one.run().handTime(from).get().value())
                        .average();
                if (seconds.isPresent() && seconds.getAsDouble() > 0) {
                    double middle = (from.speedMps() + to.speedMps()) / 2;
                    double mps2 = (to.speedMps() - from.speedMps()) / seconds.getAsDouble();
                    double wattsPerKg = middle * (mps2 + SpeedCurve.resistance(middle));
                    speeds.add(middle);
                    slopes.add(mps2);
                    if (to == target) {
                        speeds.add(to.speedMps());
                        slopes.add(wattsPerKg / to.speedMps() - SpeedCurve.resistance(to.speedMps()));
                    }
                }
            }
        }

        /// The first way's mean less the other's.
        private double difference() {
            var byWay = new TreeMap<String, List<Double>>();
            counted.forEach(one -> byWay.computeIfAbsent(one.run().run().direction(), _ -> new ArrayList<>())
                    .add(one.part().value()));
            return mean(byWay.firstEntry().getValue()) - mean(byWay.lastEntry().getValue());
        }

        private static double mean(List<Double> values) {
            return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
        }

        /// The variance of that difference for a variance of 1 of a run.
        private double differenceShare() {
            var byWay = counted.stream()
                    .collect(Collectors.groupingBy(one -> one.run().run().direction(), Collectors.counting()));
            return byWay.values().stream().mapToDouble(many -> 1.0 / many).sum();
        }

        /// The share of the time to the speed that is left when half the build-up is taken off.
        double underFullThrust() {
            return traced().stream()
                    .map(one -> one.part().trace().orElseThrow())
                    .mapToDouble(yes -> yes.rampTimeS() / yes.timeS())
                    .average()
                    .orElse(1);
        }

        private double slopeAtTarget() {
            double[] all = curve().accelerationsMps2();
            return Math.max(StandingStartRules.LEAST_SLOPE_MPS2, all[all.length - 1]);
        }
    }

    private static StartFit.Fitted fit(Counted one) {
        return one.run().traced().orElseThrow().fitted().orElseThrow();
    }

    /// For a time from the first movement.
    List<Contribution> ofTime(Group group) {
        var all = common(group, 1, StandingStartRules.FILTER_S);
        addPriors(all, group, StartFit.Fitted::motion);
        all.addAll(scale(group, group.target().speedMps() / group.slopeAtTarget()));
        return all;
    }

    /// For a time from the ramp.
    List<Contribution> ofRampTime(Group group) {
        var all = common(group, 1, StandingStartRules.FILTER_S);
        addPriors(all, group, StartFit.Fitted::ramp);
        all.addAll(scale(group, group.target().speedMps() / group.slopeAtTarget()));
        return all;
    }

    /// For a distance: what moves the time of the crossing moves it at the speed itself.
    List<Contribution> ofDistance(Group group) {
        double v = group.target().speedMps();
        var all = common(group, v, StandingStartRules.DISTANCE_FILTER_S);
        all.addAll(scale(group, group.mean() - v * v / group.slopeAtTarget()));
        return all;
    }

    /// `perSecond` is how much the figure changes for a second more at the crossing.
    private List<Contribution> common(Group group, double perSecond, double filterS) {
        var all = new ArrayList<Contribution>();
        double byTrace = group.tracedShare();
        // A delay moves both ends of a time alike and leaves a distance as it is.
        all.add(Contribution.typeB("receiver's filter (assumed)", byTrace * perSecond * filterS));
        all.add(Contribution.typeB(
                "reaction to start and speed, alike in all runs",
                group.reactedShare() * perSecond * StandingStartRules.HAND_COMMON_S));
        all.add(Contribution.typeB(
                "display shows the speed late (assumed)",
                (1 - byTrace) * perSecond * StandingStartRules.DISPLAY_LATE_S));
        all.addAll(road(group, perSecond));
        return all;
    }

    private interface Begin {
        StartFit.Beginning of(StartFit.Fitted fit);
    }

    /// All runs of a day share bike and receiver, so that what a prior leaves open has one sign in all of them.
    private static void addPriors(List<Contribution> all, Group group, Begin begin) {
        double buildUp = 0;
        double fade = 0;
        for (var one : group.traced()) {
            var beginning = begin.of(fit(one));
            buildUp += beginning.fromBuildUp() / group.counted().size();
            fade += beginning.fromFade() / group.counted().size();
        }
        all.add(Contribution.typeB("build-up of thrust (assumed)", buildUp));
        all.add(Contribution.typeB("fading of acceleration (assumed)", fade));
    }

    private List<Contribution> scale(Group group, double sensitivity) {
        var traced = group.traced();
        if (traced.isEmpty()) {
            return List.of(Contribution.typeB(
                    "scale of the display (not calibrated)", Math.abs(sensitivity) * StandingStartRules.WHEEL_SCALE));
        }
        var start = traced.getFirst().run().traced().orElseThrow();
        var instrument = input.instrumentOf(start.recording());
        return List.of(scale(instrument, start.source().kind(), Math.abs(sensitivity) * group.tracedShare()));
    }

    /// What the scale of a speed adds, by its calibration where it has one.
    static Contribution scale(Optional<Instrument> instrument, SpeedSource.Kind kind, double sensitivity) {
        var calibration = instrument.flatMap(Instrument::calibration);
        if (calibration.isPresent()) {
            String id = "calibration of " + instrument.orElseThrow().id();
            return Contribution.typeB(id, sensitivity * calibration.get().standardUncertainty())
                    .sharedAs(id);
        }
        double relative =
                kind == SpeedSource.Kind.WHEEL ? StandingStartRules.WHEEL_SCALE : StandingStartRules.RECEIVER_SCALE;
        return Contribution.typeB("scale of the " + kind.title() + " (not calibrated)", sensitivity * relative);
    }

    /// By how much slope and wind make the mean of both ways late; nothing where all runs went one way.
    ///
    /// Unit: `runSd` the standard deviation of one run, in the figure's own unit.
    Optional<BothWays> late(Group group, boolean ofDistance, double runSd) {
        if (!group.bothWays()) {
            return Optional.empty();
        }
        var road = new BothWays.Road(
                StandingStartRules.GRAVITY_MPS2 * StandingStartRules.LEVEL_SLOPE,
                alongMps(),
                StandingStartRules.DRAG_PER_M);
        var difference = new BothWays.Difference(group.difference(), runSd * Math.sqrt(group.differenceShare()));
        return Optional.of(BothWays.of(group.curve(), group.target().speedMps(), ofDistance, road, difference));
    }

    /// Standard uncertainty of the wind along the road.
    private double alongMps() {
        return input.readings()
                .ofDay("wind-speed")
                .map(one -> one.si() * StandingStartRules.ALONG_SHARE)
                .orElse(StandingStartRules.UNKNOWN_WIND_MPS);
    }

    /// Slope and wind change the acceleration. Both ways their first-order effect cancels, see [#late].
    private List<Contribution> road(Group group, double perSecond) {
        double slope = StandingStartRules.GRAVITY_MPS2 * StandingStartRules.LEVEL_SLOPE;
        var wind = input.readings().ofDay("wind-speed");
        double windPerM = StandingStartRules.DRAG_PER_M * alongMps();
        String windWords = wind.isPresent() ? "wind along the road" : "wind (not written down)";
        double toMps = group.target().speedMps();
        var all = new ArrayList<Contribution>();
        if (!group.bothWays()) {
            all.add(Contribution.typeB(
                    "slope of the road (taken for level)",
                    perSecond * group.curve().firstOrderS(toMps, _ -> slope)));
            all.add(Contribution.typeB(windWords, perSecond * group.curve().firstOrderS(toMps, v -> windPerM * v)));
        }
        if (input.readings().ofDay("state-of-charge").isEmpty()) {
            all.add(Contribution.typeB(
                    "state of charge (not written down)", group.mean() * StandingStartRules.UNKNOWN_CHARGE));
        }
        return all;
    }
}
