package org.measuredmile.trial.engagement;

import java.util.Optional;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.CandidateMatching.Held;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.ResolvedReadings;
import org.measuredmile.trial.TrialInput;

/// One push as this trial sees it: what was written down, and the push in a recording. A recording stands before what a
/// person read.
record EngagementRun(Run run, String screened, Held<TracedPush> held, TrialInput input) {
    /// A value, its own uncertainty, the one that it shares with the day's other runs, and the reading of a
    /// person that gave it.
    record Part(double value, double sd, double sharedSd, Optional<ResolvedReadings.Value> read) {}

    Optional<Part> part(FigureSpec figure) {
        return traced(figure).or(() -> read(figure));
    }

    private Optional<Part> traced(FigureSpec figure) {
        return held.candidate()
                .flatMap(push -> switch (figure.name()) {
                    case "delay" -> push.delay();
                    case "crank-angle" -> push.crankAngle();
                    case "overrun-time" -> push.overrunTime();
                    default -> push.overrunDistance();
                })
                .map(one -> new Part(one.value(), one.sd(), speedScale(figure) * one.value(), Optional.empty()));
    }

    private Optional<Part> read(FigureSpec figure) {
        var read = input.readings().of(run.id(), figure.name());
        if (read.isPresent()) {
            boolean isTimed = figure.name().equals("delay") || figure.name().equals("overrun-time");
            double handSd = isTimed && !read.get().isByCamera() ? EngagementRules.HAND_S : 0;
            return Optional.of(new Part(
                    read.get().si(), StrictMath.hypot(handSd, read.get().stepSd()), 0, read));
        }
        return figure.name().equals("overrun-distance") ? rolled() : Optional.empty();
    }

    /// A way that is worked out from speed shares the speed's scale.
    private static double speedScale(FigureSpec figure) {
        return figure.name().equals("overrun-distance") ? EngagementRules.SPEED_SCALE : 0;
    }

    /// The overrun's time at the speed that the bike rolled with, and what the push adds to that meanwhile.
    private Optional<Part> rolled() {
        var time = part(Engagement.OVERRUN_TIME);
        var speed = input.readings().of(run.id(), "rolling-speed");
        if (time.isEmpty() || speed.isEmpty()) {
            return Optional.empty();
        }
        double seconds = time.get().value();
        double faster = seconds * seconds / 2;
        double value = seconds * speed.get().si() + EngagementRules.PUSHED_ON_MPS2 * faster;
        double rate = speed.get().si() + EngagementRules.PUSHED_ON_MPS2 * seconds;
        return Optional.of(new Part(
                value,
                StrictMath.hypot(time.get().sd() * rate, speed.get().stepSd() * seconds),
                StrictMath.hypot(EngagementRules.PUSHED_ON_SD_MPS2 * faster, EngagementRules.SPEED_SCALE * value),
                time.get().read()));
    }

    /// Why the run does not count; empty text when it does.
    String reason() {
        if (!screened.isEmpty()) {
            return screened;
        }
        boolean hasAny = Engagement.DECLARATION.figures().stream()
                .anyMatch(figure -> part(figure).isPresent());
        if (hasAny) {
            return "";
        }
        return held.candidate()
                .map(TracedPush::reason)
                .orElseGet(() -> held.whyNone().isEmpty()
                        ? "no recording holds this push, and neither a delay nor an overrun was written down"
                        : held.whyNone());
    }
}
