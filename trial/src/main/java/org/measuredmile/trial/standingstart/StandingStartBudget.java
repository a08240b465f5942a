package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
            if (speeds.size() == 1) {
                speeds.add(target.speedMps());
                slopes.add(target.slopeShare() * meanMps2);
            }
            return new SpeedCurve(
                    speeds.stream().mapToDouble(Double::doubleValue).toArray(),
                    slopes.stream().mapToDouble(Double::doubleValue).toArray());
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
        double squares = 0;
        for (var one : group.counted()) {
            squares += one.part().ownSd() * one.part().ownSd();
        }
        all.add(Contribution.typeB(
                "timing of single runs", Math.sqrt(squares) / group.counted().size()));
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

    private static Contribution scale(Optional<Instrument> instrument, SpeedSource.Kind kind, double sensitivity) {
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

    /// Slope and wind change the acceleration. Both ways their first-order effect cancels; the second stays,
    /// in which the two stand together, and the wind's own square: that of a normal error scatters by √3 of its
    /// variance.
    private List<Contribution> road(Group group, double perSecond) {
        double slope = StandingStartRules.GRAVITY_MPS2 * StandingStartRules.LEVEL_SLOPE;
        var wind = input.readings().ofDay("wind-speed");
        double alongMps =
                wind.map(one -> one.si() * StandingStartRules.ALONG_SHARE).orElse(StandingStartRules.UNKNOWN_WIND_MPS);
        double windPerM = StandingStartRules.DRAG_PER_M * alongMps;
        String windWords = wind.isPresent() ? "wind along the road" : "wind (not written down)";
        double toMps = group.target().speedMps();
        var all = new ArrayList<Contribution>();
        if (group.bothWays()) {
            double leftS = group.curve().secondOrderS(toMps, v -> StrictMath.hypot(slope, windPerM * v));
            leftS += group.curve().firstOrderS(toMps, _ -> windPerM * alongMps / 2);
            all.add(Contribution.typeB(
                    "slope of the road (taken for level) and " + windWords + ", as far as both ways leave them",
                    perSecond * Math.sqrt(3) * leftS));
        } else {
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
