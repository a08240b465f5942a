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
    /// A value, its own uncertainty, and whether a person's reading gave it.
    record Part(double value, double sd, Optional<ResolvedReadings.Value> read) {}

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
                .map(one -> new Part(one.value(), one.sd(), Optional.empty()));
    }

    private Optional<Part> read(FigureSpec figure) {
        var read = input.readings().of(run.id(), figure.name());
        if (read.isPresent()) {
            boolean isTimed = figure.name().equals("delay") || figure.name().equals("overrun-time");
            double handSd = isTimed && !read.get().isByCamera() ? EngagementRules.HAND_S : 0;
            return Optional.of(new Part(
                    read.get().si(), StrictMath.hypot(handSd, read.get().stepSd()), read));
        }
        return figure.name().equals("overrun-distance") ? rolled() : Optional.empty();
    }

    /// The overrun's time at the speed that the bike rolled with.
    private Optional<Part> rolled() {
        var time = part(Engagement.OVERRUN_TIME);
        var speed = input.readings().of(run.id(), "rolling-speed");
        return time.isEmpty() || speed.isEmpty()
                ? Optional.empty()
                : Optional.of(new Part(
                        time.get().value() * speed.get().si(),
                        StrictMath.hypot(
                                time.get().sd() * speed.get().si(),
                                speed.get().stepSd() * time.get().value()),
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
