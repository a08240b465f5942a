package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.trial.RunResult.RunValue;

/// What one run gave by itself, for showing.
final class ClimbValues {
    private ClimbValues() {}

    static List<RunValue> of(ClimbRun run) {
        var values = new ArrayList<RunValue>();
        run.time().ifPresent(time -> {
            values.add(new RunValue("time", "climbing time", QuantityKind.TIME, time.seconds(), time.ownSdS()));
            run.meanMps()
                    .ifPresent(mean -> values.add(new RunValue(
                            "mean-speed",
                            "mean climbing speed",
                            QuantityKind.SPEED,
                            mean,
                            mean * time.ownSdS() / time.seconds())));
        });
        run.byHand()
                .filter(_ -> run.byTrace().isPresent())
                .ifPresent(hand -> values.add(new RunValue(
                        "hand-time", "climbing time by hand", QuantityKind.TIME, hand.seconds(), hand.ownSdS())));
        run.lowestMps()
                .ifPresent(lowest -> values.add(new RunValue(
                        "lowest-speed", "lowest climbing speed", QuantityKind.SPEED, lowest, run.lowestSdMps())));
        ends(run, values);
        return values;
    }

    private static void ends(ClimbRun run, List<RunValue> values) {
        if (run.time().isEmpty()) {
            return;
        }
        var entry = run.entry();
        var exit = run.exit();
        if (!entry.assumed()) {
            values.add(new RunValue(
                    "entry-speed",
                    "speed at the first gate",
                    QuantityKind.SPEED,
                    entry.mps(),
                    entry.standardUncertainty()));
        }
        if (!exit.assumed()) {
            values.add(new RunValue(
                    "exit-speed",
                    "speed at the last gate",
                    QuantityKind.SPEED,
                    exit.mps(),
                    exit.standardUncertainty()));
        }
    }
}
