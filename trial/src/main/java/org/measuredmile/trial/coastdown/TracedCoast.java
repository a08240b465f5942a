package org.measuredmile.trial.coastdown;

import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.Candidate;

/// A candidate coast in a recording: its samples, and why it cannot be used where it cannot.
///
/// Shape: `reasons` give limit and value each and are empty for a coast that can be used.
record TracedCoast(Recording recording, SpeedSource source, Channel samples, List<String> reasons)
        implements Candidate {
    TracedCoast {
        reasons = List.copyOf(reasons);
    }

    @Override
    public double beginS() {
        return samples.timeS(0);
    }

    @Override
    public double endS() {
        return samples.timeS(samples.size() - 1);
    }

    @Override
    public boolean qualifies() {
        return reasons.isEmpty();
    }

    String reason() {
        return String.join("; ", reasons);
    }
}
