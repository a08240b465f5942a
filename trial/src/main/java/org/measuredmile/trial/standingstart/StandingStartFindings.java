package org.measuredmile.trial.standingstart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// What is worth saying of a day of starts beside its figures. Nothing here changes a figure or drops a
/// run.
final class StandingStartFindings {
    private final TrialInput input;
    private final List<StartRun> runs;

    StandingStartFindings(TrialInput input, List<StartRun> runs) {
        this.input = input;
        this.runs = List.copyOf(runs);
    }

    /// Conditions that nobody wrote down or that were beyond their limit.
    List<Finding> ofDay() {
        var findings = new ArrayList<Finding>();
        if (runs.stream().noneMatch(run -> run.run().state() == Run.State.CONFIRMED)) {
            return findings;
        }
        var wind = input.readings().ofDay("wind-speed");
        if (wind.isEmpty()) {
            findings.add(missing("wind-speed", "wind speed"));
        } else if (wind.get().si() > StandingStartRules.MOST_WIND_MPS) {
            findings.add(Finding.warning(
                    "windy",
                    Place.NOWHERE,
                    "wind " + StandingStartWords.mps(wind.get().si()) + ", at most "
                            + StandingStartWords.mps(StandingStartRules.MOST_WIND_MPS)
                            + " wanted; the interval is wider",
                    "ride on a calmer day"));
        }
        if (input.readings().ofDay("state-of-charge").isEmpty()) {
            findings.add(missing("state-of-charge", "state of charge"));
        }
        boolean isTraced = runs.stream().anyMatch(run -> run.traced().isPresent());
        if (isTraced && runs.stream().allMatch(run -> run.power().isEmpty())) {
            findings.add(Finding.note(
                    "no-power",
                    new Place("day.yaml", "riders"),
                    "no power is computed: the rider's mass as ridden is not written down"));
        }
        return findings;
    }

    private static Finding missing(String name, String words) {
        return Finding.warning(
                "condition-missing",
                new Place("day.yaml", "conditions." + name),
                words + " is not written down; the interval is wider for it",
                "write it in day.yaml or as a reading of the day");
    }

    /// Speeds that were not reached, hand against recording, and recordings that gave nothing.
    List<Finding> ofRuns() {
        var findings = new ArrayList<Finding>();
        for (var run : runs) {
            for (var target : Target.values()) {
                notReached(run, target).ifPresent(findings::add);
                handAndTrace(run, target).ifPresent(findings::add);
            }
            boolean isHeld = run.screened().isEmpty() && !run.times().isEmpty();
            run.traced()
                    .filter(start -> isHeld && !start.qualifies())
                    .ifPresent(start -> findings.add(Finding.warning(
                            "trace-not-used",
                            Place.atTime(start.recording().name(), start.beginS()),
                            "run " + run.run().id() + " counts by its watch; its trace does not: " + start.reason(),
                            "")));
        }
        return findings;
    }

    private static Optional<Finding> notReached(StartRun run, Target target) {
        boolean isAsked = run.screened().isEmpty()
                && run.run().state() == Run.State.CONFIRMED
                && target.compareTo(run.aim()) <= 0
                && run.traced().filter(TracedStart::qualifies).isPresent();
        return isAsked && run.time(target).isEmpty()
                ? Optional.of(Finding.note(
                        "not-reached", run.run().place(), "run " + run.run().id() + ": " + run.reason(target)))
                : Optional.empty();
    }

    private static Optional<Finding> handAndTrace(StartRun run, Target target) {
        var hand = run.handTime(target);
        var time = run.time(target);
        if (!run.screened().isEmpty()
                || hand.isEmpty()
                || time.flatMap(StartRun.Part::trace).isEmpty()) {
            return Optional.empty();
        }
        double gap = hand.get().value() - time.get().value();
        double common = StrictMath.hypot(StandingStartRules.HAND_COMMON_S, StandingStartRules.DISPLAY_LATE_S);
        double own = StrictMath.hypot(hand.get().ownSd(), time.get().ownSd());
        double most = 2 * StrictMath.hypot(own, common);
        return Math.abs(gap) <= most
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "hand-and-trace-differ",
                        run.run().place(),
                        "run " + run.run().id() + ": time to " + target.words() + " by hand less by recording is "
                                + StandingStartWords.seconds(gap) + ", at most " + StandingStartWords.seconds(most)
                                + " expected",
                        "find out which of the two is of another start; the recording stands"));
    }
}
