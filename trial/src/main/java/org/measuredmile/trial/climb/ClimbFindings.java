package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.CompassBearing;
import org.measuredmile.trial.TrialInput;

/// What is worth saying of a day of climbs beside its figures. Nothing here changes a figure or drops a run.
final class ClimbFindings {
    private final TrialInput input;
    private final List<ClimbRun> runs;

    ClimbFindings(TrialInput input, List<ClimbRun> runs) {
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
            findings.add(missing("wind-speed", "windSpeed", "wind speed"));
        } else if (wind.get().si() > ClimbRules.MOST_WIND_MPS) {
            findings.add(Finding.warning(
                    "windy",
                    Place.NOWHERE,
                    "wind " + ClimbWords.mps(wind.get().si()) + ", at most " + ClimbWords.mps(ClimbRules.MOST_WIND_MPS)
                            + " wanted; the interval is wider",
                    "ride on a calmer day"));
        }
        String from = input.readings().word("", "wind-from");
        if (!from.isEmpty() && CompassBearing.degrees(from).isEmpty()) {
            findings.add(Finding.warning(
                    "wind-from-not-understood",
                    new Place("day.yaml", "conditions.windFrom"),
                    "\"" + from + "\" is no bearing; the wind along the hill is taken as unknown",
                    "write north-east, NE or 45°"));
        }
        if (input.readings().ofDay("state-of-charge").isEmpty()) {
            findings.add(missing("state-of-charge", "stateOfCharge", "state of charge"));
        }
        return findings;
    }

    private static Finding missing(String name, String key, String words) {
        return Finding.warning(
                "condition-missing",
                new Place("day.yaml", "conditions." + key),
                words + " is not written down" + (name.equals("wind-speed") ? "; the interval is wider for it" : ""),
                "write it in day.yaml or as a reading of the day");
    }

    /// Hand against recording, and what the gates and the speed do not agree about.
    List<Finding> ofRuns() {
        var findings = new ArrayList<Finding>();
        for (var run : runs) {
            handAndTrace(run).ifPresent(findings::add);
            run.traced().flatMap(TracedClimb::pass).ifPresent(pass -> findings.addAll(pass.findings()));
            boolean isHeld = run.screened().isEmpty() && run.byHand().isPresent();
            run.traced()
                    .filter(climb -> isHeld && !climb.qualifies())
                    .ifPresent(climb -> findings.add(Finding.warning(
                            "trace-not-used",
                            Place.atTime(climb.recording().name(), climb.beginS()),
                            "run " + run.run().id() + " counts by its written time; its trace does not: "
                                    + climb.reason(),
                            "")));
        }
        return findings;
    }

    private static Optional<Finding> handAndTrace(ClimbRun run) {
        var hand = run.byHand();
        var trace = run.byTrace();
        if (!run.screened().isEmpty() || hand.isEmpty() || trace.isEmpty()) {
            return Optional.empty();
        }
        double gap = hand.get().seconds() - trace.get().seconds();
        double scaleS = trace.get().perScale() * run.scaleSd();
        double own = StrictMath.hypot(hand.get().ownSdS(), trace.get().ownSdS());
        double u = StrictMath.hypot(StrictMath.hypot(own, scaleS), ClimbRules.HAND_COMMON_S);
        double most = ClimbRules.DISAGREE_BEYOND * u;
        return Math.abs(gap) <= most
                ? Optional.empty()
                : Optional.of(Finding.warning(
                        "hand-and-trace-differ",
                        run.run().place(),
                        "run " + run.run().id() + ": the written time less that of the recording is "
                                + ClimbWords.seconds(gap) + ", at most " + ClimbWords.seconds(most) + " expected",
                        "find out which of the two is of another run, or was started late"));
    }
}
