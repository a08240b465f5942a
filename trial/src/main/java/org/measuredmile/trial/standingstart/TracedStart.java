package org.measuredmile.trial.standingstart;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.Candidate;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// A candidate start in a recording: the fit where it qualifies, its own reasons where it does not.
///
/// Shape: `restEndS` is the last sample at rest; `samples` run from before the start to the end of
/// the run; `passed` is what one that crept, or that cannot be used, gives from half a metre a second
/// on; `reasons` give limit and value each and are empty for a start that can be used.
record TracedStart(
        Recording recording,
        SpeedSource source,
        double restEndS,
        double cutEndS,
        Channel samples,
        Optional<StartFit.Fitted> fitted,
        Map<Target, Reached> targets,
        Map<Target, FromNamedSpeed.Passed> passed,
        List<String> reasons)
        implements Candidate {
    TracedStart {
        targets = Collections.unmodifiableMap(new TreeMap<>(targets));
        passed = Collections.unmodifiableMap(new TreeMap<>(passed));
        reasons = List.copyOf(reasons);
    }

    /// What became of a speed that the start was to reach.
    sealed interface Reached {
        /// It was reached.
        ///
        /// Unit: seconds from the first movement and from the ramp, metres from rest; `crossingSd` is the
        /// standard uncertainty of the time of crossing, in seconds.
        record Yes(Crossing crossing, double timeS, double rampTimeS, double distanceM, double crossingSd)
                implements Reached {}

        /// It has no time, and why.
        record No(String why, boolean stayedBelow) implements Reached {}
    }

    @Override
    public double beginS() {
        return fitted.filter(_ -> qualifies()).map(StartFit.Fitted::motionS).orElse(restEndS);
    }

    @Override
    public boolean qualifies() {
        return reasons.isEmpty() && fitted.isPresent();
    }

    @Override
    public double endS() {
        return samples.isEmpty() ? cutEndS : samples.timeS(samples.size() - 1);
    }

    String reason() {
        return String.join("; ", reasons);
    }

    Optional<Reached.Yes> reached(Target target) {
        return qualifies() && targets.get(target) instanceof Reached.Yes yes ? Optional.of(yes) : Optional.empty();
    }

    /// The highest mean speed over two seconds.
    double highestMps() {
        return highestMps(samples);
    }

    static double highestMps(Channel samples) {
        double highest = 0;
        int from = 0;
        double sum = 0;
        for (int i = 0; i < samples.size(); i++) {
            sum += samples.value(i);
            while (samples.timeS(i) - samples.timeS(from) > StandingStartRules.MEAN_OVER_S + 1e-9) {
                sum -= samples.value(from++);
            }
            if (samples.timeS(i) - samples.timeS(from) > 0.8 * StandingStartRules.MEAN_OVER_S) {
                highest = Math.max(highest, sum / (i - from + 1));
            }
        }
        return highest;
    }
}
