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
/// Shape: a group is the counted runs of one drive to one speed. Sensitivities follow from an acceleration
/// that falls evenly with speed from a_0 after the build-up to a_θ at the speed θ.
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

        double mean() {
            return counted.stream()
                    .mapToDouble(one -> one.part().value())
                    .average()
                    .orElse(0);
        }

        private double slopeAtTarget() {
            return traced().stream()
                    .mapToDouble(
                            one -> one.part().trace().orElseThrow().crossing().slopeMps2())
                    .average()
                    .orElse(0);
        }

        private double slopeAtStart() {
            return traced().stream()
                    .mapToDouble(one -> fit(one).curve().accelerationMps2())
                    .average()
                    .orElse(0);
        }
    }

    private static StartFit.Fitted fit(Counted one) {
        return one.run().traced().orElseThrow().fitted().orElseThrow();
    }

    /// For a time from the first movement.
    List<Contribution> ofTime(Group group) {
        var all = common(group, 1);
        addPriors(all, group, StartFit.Fitted::motion);
        all.addAll(scale(group, group.target().speedMps() / Math.max(0.1, slope(group))));
        return all;
    }

    /// For a time from the ramp.
    List<Contribution> ofRampTime(Group group) {
        var all = common(group, 1);
        addPriors(all, group, StartFit.Fitted::ramp);
        all.addAll(scale(group, group.target().speedMps() / Math.max(0.1, slope(group))));
        return all;
    }

    /// For a distance: what moves the time of the crossing moves it at the speed itself.
    List<Contribution> ofDistance(Group group) {
        double v = group.target().speedMps();
        var all = common(group, v);
        all.addAll(scale(group, group.mean() - v * v / Math.max(0.1, slope(group))));
        return all;
    }

    /// Between the acceleration at the speed and the mean one where only a watch was used.
    private static double slope(Group group) {
        return group.traced().isEmpty()
                ? group.target().speedMps() / Math.max(0.5, group.mean()) / 2
                : group.slopeAtTarget();
    }

    /// `perSecond` is how much the figure changes for a second more at the crossing.
    private List<Contribution> common(Group group, double perSecond) {
        var all = new ArrayList<Contribution>();
        double squares = 0;
        for (var one : group.counted()) {
            squares += one.part().ownSd() * one.part().ownSd();
        }
        all.add(Contribution.typeB(
                "timing of single runs", Math.sqrt(squares) / group.counted().size()));
        double byTrace = group.tracedShare();
        // A delay moves both ends of a time alike and leaves a distance as it is.
        all.add(Contribution.typeB(
                "receiver's filter (assumed)",
                byTrace
                        * (perSecond == 1
                                ? StandingStartRules.FILTER_S
                                : perSecond * StandingStartRules.FILTER_S / 3)));
        all.add(Contribution.typeB(
                "reaction to start and speed, alike in all runs",
                (1 - byTrace) * perSecond * StandingStartRules.HAND_COMMON_S));
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

    /// Slope and wind change the acceleration. Both ways their first-order effect cancels and the second
    /// stays.
    private List<Contribution> road(Group group, double perSecond) {
        double v = group.target().speedMps();
        double atTarget = Math.max(StandingStartRules.LEAST_SLOPE_MPS2, slope(group));
        double atStart = Math.max(atTarget, group.traced().isEmpty() ? 2 * v / group.mean() : group.slopeAtStart());
        var all = new ArrayList<Contribution>();
        double slope = StandingStartRules.GRAVITY_MPS2 * StandingStartRules.LEVEL_SLOPE;
        all.add(Contribution.typeB(
                "slope of the road (taken for level)",
                perSecond * effect(group.bothWays(), slope, v, atStart, atTarget)));
        var wind = input.readings().ofDay("wind-speed");
        double alongMps =
                wind.map(one -> one.si() * StandingStartRules.ALONG_SHARE).orElse(StandingStartRules.UNKNOWN_WIND_MPS);
        double push = StandingStartRules.DRAG_PER_M * alongMps * v;
        all.add(Contribution.typeB(
                wind.isPresent() ? "wind along the road" : "wind (not written down)",
                perSecond * effect(group.bothWays(), push, v, atStart, atTarget) / 2));
        if (input.readings().ofDay("state-of-charge").isEmpty()) {
            all.add(Contribution.typeB(
                    "state of charge (not written down)", group.mean() * StandingStartRules.UNKNOWN_CHARGE));
        }
        return all;
    }

    /// The change of a time for a change of acceleration: ∫ dv/a² at first order, and half of what both ways
    /// leave at second.
    private static double effect(boolean bothWays, double change, double v, double atStart, double atTarget) {
        double first = change * v / (atStart * atTarget);
        return bothWays ? first * change * (1 / atTarget + 1 / atStart) / 2 : first;
    }
}
