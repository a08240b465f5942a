package org.measuredmile.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/// Asks the times of a recording whether its clock ran evenly: steps that the way and the speed contradict, a clock
/// that was never set, and stretches without samples.
///
/// A clock that steps back is noticed where rows are put in order of time, for afterwards nothing is left to see.
final class ClockChecks {
    /// Receivers are no older; a clock before it started from its maker's zero.
    private static final Instant FIRST_CREDIBLE = Instant.parse("2000-01-02T00:00:00Z");

    private static final double EVEN = 0.25;
    private static final double SURELY_MOVING_MPS = 2;
    private static final double SHORTEST_STEP_S = 2;
    private static final int TIMES_LESS = 4;
    private static final double SHORTEST_GAP_S = 1;

    private final Recording recording;
    private final Fixes fixes;
    private final Travel travel;

    private ClockChecks(Recording recording, Fixes fixes, Travel travel) {
        this.recording = recording;
        this.fixes = fixes;
        this.travel = travel;
    }

    static List<Finding> of(Recording recording, Fixes fixes, Travel travel) {
        ClockChecks checks = new ClockChecks(recording, fixes, travel);
        List<Finding> findings = new ArrayList<>();
        checks.notSet().ifPresent(findings::add);
        checks.forward().ifPresent(findings::add);
        checks.gaps().ifPresent(findings::add);
        return findings;
    }

    private Optional<Finding> notSet() {
        return recording
                .start()
                .filter(start -> start.isBefore(FIRST_CREDIBLE))
                .map(start -> Finding.warning(
                        "clock-not-set",
                        Place.in(recording.name()),
                        "the recording begins " + start + ": the instrument's clock was never set",
                        "state the clock's offset in recordings.csv"));
    }

    /// A step in an even rhythm that nothing moved through: the way is that of one step, the speed on either
    /// side is not.
    private Optional<Finding> forward() {
        double rhythmS = rhythmS();
        if (Double.isNaN(rhythmS)) {
            return Optional.empty();
        }
        Travel.Steps steps = new Travel.Steps(recording.segments(), Double.POSITIVE_INFINITY);
        for (int i = 2; i < fixes.size() - 1; i++) {
            double fromS = fixes.timesS()[i - 1];
            double toS = fixes.timesS()[i];
            if (toS - fromS > SHORTEST_STEP_S + rhythmS && contradicted(i, rhythmS) && !stopped(steps, fromS, toS)) {
                return Optional.of(stepped(fromS, toS - fromS - rhythmS));
            }
        }
        return Optional.empty();
    }

    private boolean stopped(Travel.Steps steps, double fromS, double toS) {
        return steps.leave(fromS, toS)
                || recording.marks(Mark.Kind.PAUSE).stream()
                        .anyMatch(pause -> pause.fromS() < toS && pause.toS() > fromS);
    }

    private boolean contradicted(int i, double rhythmS) {
        double before = fixes.stepMps(i - 1);
        double after = fixes.stepMps(i + 1);
        double slower = Math.min(before, after);
        double stepS = fixes.timesS()[i] - fixes.timesS()[i - 1];
        double wayM = fixes.nearlyM(i - 1, i);
        boolean evenAround = fixes.timesS()[i - 1] - fixes.timesS()[i - 2] < 2 * rhythmS
                && fixes.timesS()[i + 1] - fixes.timesS()[i] < 2 * rhythmS;
        boolean oneStep = wayM > 0.5 * slower * rhythmS && wayM < 2 * Math.max(before, after) * rhythmS;
        return evenAround && slower > SURELY_MOVING_MPS && oneStep && TIMES_LESS * wayM < slower * stepS;
    }

    private Finding stepped(double fromS, double byS) {
        return Finding.warning(
                "clock-step",
                Place.atTime(recording.name(), fromS),
                String.format(
                        Locale.ROOT,
                        "the clock steps forward by %.1f s while the positions go on as in one step%s",
                        byS,
                        ClockCause.of(byS).map(cause -> ": " + cause).orElse("")),
                "cut the recording there, or state the offset of the later part in recordings.csv");
    }

    /// The middle step between fixes, in seconds; NaN where they do not come evenly.
    private double rhythmS() {
        if (fixes.size() < 10) {
            return Double.NaN;
        }
        double[] steps = new double[fixes.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = fixes.timesS()[i + 1] - fixes.timesS()[i];
        }
        Arrays.sort(steps);
        double middle = steps[steps.length / 2];
        double low = steps[steps.length / 10];
        double high = steps[(int) (steps.length * 0.9)];
        return high - low <= EVEN * middle ? middle : Double.NaN;
    }

    private Optional<Finding> gaps() {
        double[] timesS = recording.timesS();
        Travel.Steps steps = new Travel.Steps(recording.segments(), Double.POSITIVE_INFINITY);
        int gaps = 0;
        double longestS = 0;
        double longestFromS = 0;
        for (int i = 1; i < timesS.length; i++) {
            double stepS = timesS[i] - timesS[i - 1];
            if (stepS > Math.max(travel.gapLimitS(), SHORTEST_GAP_S) && !stopped(steps, timesS[i - 1], timesS[i])) {
                gaps++;
                longestFromS = stepS > longestS ? timesS[i - 1] : longestFromS;
                longestS = Math.max(longestS, stepS);
            }
        }
        return gaps == 0
                ? Optional.empty()
                : Optional.of(Finding.note(
                        "gaps",
                        Place.atTime(recording.name(), longestFromS),
                        String.format(
                                Locale.ROOT,
                                "%s without samples that no pause explains, the longest %.1f s",
                                gaps == 1 ? "one stretch" : gaps + " stretches",
                                longestS)));
    }
}
