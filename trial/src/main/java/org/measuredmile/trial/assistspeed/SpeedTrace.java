package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.SecondMeans;
import org.measuredmile.recording.motion.SecondMeans.Span;
import org.measuredmile.recording.motion.SpeedSource;

/// A recording's speed, averaged to whole seconds, with what is known of the instrument's scale.
///
/// Shape: seconds in which a sensor dropped out are missing, and said so in `findings`.
record SpeedTrace(Recording recording, SecondMeans seconds, SpeedScale scale, List<Finding> findings) {
    private static final double DROPS_OUT_FROM_MPS = 4;
    private static final int LONGEST_DROP_OUT_S = 3;

    SpeedTrace {
        findings = List.copyOf(findings);
    }

    /// What came of a recording: a trace, or the reason why its speed cannot carry a level.
    sealed interface Read {
        record Usable(SpeedTrace trace) implements Read {}

        record Refused(Finding finding) implements Read {}
    }

    /// Reads the best speed of a recording.
    static Read of(Recording recording, Optional<Instrument> instrument, AssistSpeedRules rules) {
        var place = Place.in(recording.name());
        var source = SpeedSource.best(recording);
        if (source.isEmpty() || source.get().kind() == SpeedSource.Kind.POSITIONS) {
            return new Read.Refused(Finding.refused(
                    "no-speed",
                    place,
                    "no speed channel; differences of positions overstate a steady speed",
                    "record receiver or wheel speed, or write the speed down per level"));
        }
        var channel = source.get().channel();
        if (channel.size() < rules.leastHeldS()) {
            return new Read.Refused(Finding.refused(
                    "recording-too-short",
                    place,
                    channel.size() + " speed samples; a level needs " + rules.leastHeldS() + " s",
                    "hold each level for half a minute"));
        }
        double step = channel.medianStepS();
        if (!(step <= rules.slowestStepS())) {
            return new Read.Refused(Finding.refused(
                    "sampled-too-coarsely",
                    place,
                    AssistSpeedWords.seconds(step) + " between samples; one second at most is needed",
                    "set the recorder to once a second or faster"));
        }
        var scale = SpeedScale.of(instrument, channel.kind() == ChannelKind.WHEEL_SPEED);
        var findings = new ArrayList<Finding>();
        var seconds = withoutDropOuts(SecondMeans.of(channel).times(scale.factor()), recording.name(), rules, findings);
        return new Read.Usable(new SpeedTrace(recording, seconds, scale, findings));
    }

    /// A fall from riding speed to nothing within one second is a sensor's, not a brake's; the zeros after it are
    /// no speeds.
    private static SecondMeans withoutDropOuts(
            SecondMeans means, String name, AssistSpeedRules rules, List<Finding> findings) {
        double[] speed = means.speedMps().clone();
        for (int i = 1; i < speed.length; i++) {
            if (means.speedMps()[i - 1] >= DROPS_OUT_FROM_MPS && speed[i] < rules.standingBelowMps()) {
                int end = i;
                while (end < speed.length && !(speed[end] >= rules.standingBelowMps())) {
                    end++;
                }
                findings.add(Finding.note(
                        "sensor-drop-out",
                        Place.atTime(name, means.timeS(i)),
                        "speed falls from " + AssistSpeedWords.speed(means.speedMps()[i - 1])
                                + " to nothing in a second: taken for a sensor that dropped out, not for a stop"));
                if (end - i <= LONGEST_DROP_OUT_S) {
                    java.util.Arrays.fill(speed, i, end, Double.NaN);
                }
            }
        }
        return new SecondMeans(speed, means.startS());
    }

    List<Span> moving(AssistSpeedRules rules, int longestGapS) {
        return seconds.moving(rules.standingBelowMps(), longestGapS);
    }
}
