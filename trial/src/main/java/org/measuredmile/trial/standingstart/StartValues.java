package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.RunResult.RunValue;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// What one run gave by itself, for showing: times, distances, forces and powers, with the standard
/// uncertainty of each.
final class StartValues {
    private StartValues() {}

    static List<RunValue> of(StartRun run) {
        var values = new ArrayList<RunValue>();
        for (var target : Target.values()) {
            add(values, "time-to-" + target.id(), "time to " + target.words(), QuantityKind.TIME, run.time(target));
            add(
                    values,
                    "distance-to-" + target.id(),
                    "distance to " + target.words(),
                    QuantityKind.LENGTH,
                    run.distance(target));
            add(
                    values,
                    "ramp-time-to-" + target.id(),
                    "time from full thrust to " + target.words(),
                    QuantityKind.TIME,
                    run.rampTime(target));
            if (run.time(target).flatMap(StartRun.Part::trace).isPresent()) {
                run.handTime(target)
                        .ifPresent(hand -> add(
                                values,
                                "hand-time-to-" + target.id(),
                                "time to " + target.words() + " by hand",
                                QuantityKind.TIME,
                                Optional.of(hand)));
            }
            run.meanPower(target)
                    .ifPresent(power -> values.add(new RunValue(
                            "mean-power-to-" + target.id(),
                            "mean wheel power to " + target.words(),
                            QuantityKind.POWER,
                            power.watts(),
                            power.ownSd())));
        }
        run.traced().ifPresent(start -> start.passed().forEach((target, passed) -> addPassed(values, target, passed)));
        run.peakPower()
                .ifPresent(power -> values.add(new RunValue(
                        "peak-power", "peak wheel power", QuantityKind.POWER, power.watts(), power.ownSd())));
        run.traced().filter(TracedStart::qualifies).ifPresent(start -> {
            values.add(new RunValue(
                    "highest-speed",
                    "highest mean speed over 2 s",
                    QuantityKind.SPEED,
                    start.highestMps(),
                    StandingStartRules.SLOW_NOISE_MPS));
            addForces(values, run, start);
        });
        return values;
    }

    /// From half a metre a second on: also of a start that crept before it went.
    private static void addPassed(List<RunValue> values, Target target, FromNamedSpeed.Passed passed) {
        values.add(new RunValue(
                "time-from-half-mps-to-" + target.id(),
                "time from 0.5 m/s to " + target.words(),
                QuantityKind.TIME,
                passed.timeS(),
                passed.timeSd()));
        values.add(new RunValue(
                "distance-from-half-mps-to-" + target.id(),
                "distance from 0.5 m/s to " + target.words(),
                QuantityKind.LENGTH,
                passed.distanceM(),
                passed.distanceSd()));
    }

    /// The tractive force at each speed: the curve that the road-load model takes.
    private static void addForces(List<RunValue> values, StartRun run, TracedStart start) {
        for (var target : Target.values()) {
            start.reached(target)
                    .ifPresent(yes -> run.power().ifPresent(power -> {
                        var force = power.force(target, yes.crossing());
                        values.add(new RunValue(
                                "force-at-" + target.id(),
                                "tractive force at " + target.words(),
                                QuantityKind.FORCE,
                                force.newtons(),
                                force.standardUncertainty()));
                    }));
        }
    }

    private static void add(
            List<RunValue> values, String name, String title, QuantityKind kind, Optional<StartRun.Part> part) {
        part.ifPresent(one -> values.add(new RunValue(name, title, kind, one.value(), one.ownSd())));
    }
}
