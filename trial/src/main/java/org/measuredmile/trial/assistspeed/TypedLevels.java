package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.ResolvedReadings;
import org.measuredmile.trial.RunResult;
import org.measuredmile.trial.TrialInput;

/// Passes whose speed a person read off a display or a receiver and wrote down.
final class TypedLevels {
    private final TrialInput input;

    TypedLevels(TrialInput input) {
        this.input = input;
    }

    Optional<ResolvedReadings.Value> speedOf(Run run) {
        return input.readings().of(run.id(), "speed");
    }

    /// The pass that a reading makes; its run scatter is the one stated for the figure.
    LevelPass pass(Run run, ResolvedReadings.Value read) {
        var scatter = input.scatter().of(AssistSpeed.DECLARATION.requireFigure(AssistSpeed.SPEED));
        return new LevelPass(
                run,
                LevelRole.levelOf(run.variant()),
                read.si(),
                scatter.betweenRunsAt(read.si()),
                scatter.runDegreesOfFreedom(),
                SpeedScale.of(read),
                LevelPass.Heading.UNKNOWN,
                Double.NaN);
    }

    RunResult result(Run run, String reason, ResolvedReadings.Value read) {
        var pass = pass(run, read);
        return RunResult.of(
                run, reason, List.of(RecordedLevels.value("speed", "speed", pass.speedMps(), pass.wanderMps())));
    }

    /// A reading beside a recording of the same run, where the two disagree.
    Optional<Finding> disagreement(LevelPass recorded) {
        return speedOf(recorded.run()).flatMap(read -> {
            var typed = pass(recorded.run(), read);
            double gap = typed.speedMps() - recorded.speedMps();
            double u = StrictMath.hypot(
                    StrictMath.hypot(typed.wanderMps(), typed.scale().relative() * typed.speedMps()),
                    StrictMath.hypot(recorded.wanderMps(), recorded.scale().relative() * recorded.speedMps()));
            return Math.abs(gap) <= 2 * u
                    ? Optional.empty()
                    : Optional.of(Finding.warning(
                            "reading-disagrees",
                            read.reading().place(),
                            "the speed written down, " + AssistSpeedWords.speed(typed.speedMps())
                                    + ", is not the recorded " + AssistSpeedWords.speed(recorded.speedMps())
                                    + "; the recording is used",
                            "look at the display's wheel size, or at the match of levels"));
        });
    }
}
