package org.measuredmile.recording.spoken;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.recording.motion.SpeedSource;

/// What was said, beside what the recording has at that moment.
///
/// Shape: `traceMps` and `differenceMps` (said less trace) are there for speeds only, and only where the trace has a
/// value.
/// Unit: `traceTimeS` seconds on the recording's own time base: for a speed the moment it stood on the display, for
/// anything else the moment it was said.
public record SpokenAgainstTrace(
        SpokenReading reading,
        double traceTimeS,
        OptionalDouble traceMps,
        OptionalDouble differenceMps,
        Agreement agreement) {
    /// How the two compare.
    public enum Agreement {
        AGREES("agrees"),
        DISAGREES("disagrees"),
        /// No speed, or nothing recorded then.
        NOT_COMPARED("not compared");

        private final String words;

        Agreement(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// Every candidate of a clip beside the trace, at an offset that was found.
    public static List<SpokenAgainstTrace> of(List<SpokenReading> said, CameraOffset.Found offset, SpeedSource speed) {
        double momentS = StrictMath.hypot(offset.standardUncertaintyS(), SpeechLag.EACH_S);
        var window = new TraceWindow(TraceTable.of(speed), offset.offsetS(), momentS);
        return said.stream()
                .map(one -> one.isSpeed()
                        ? compared(one, window, speed)
                        : new SpokenAgainstTrace(
                                one,
                                one.timeS() + offset.offsetS(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Agreement.NOT_COMPARED))
                .toList();
    }

    private static SpokenAgainstTrace compared(SpokenReading one, TraceWindow window, SpeedSource speed) {
        TraceWindow.Near near = window.near(one.timeS());
        if (!near.isKnown()) {
            return new SpokenAgainstTrace(
                    one, near.timeS(), OptionalDouble.empty(), OptionalDouble.empty(), Agreement.NOT_COMPARED);
        }
        double sigmaMps = SaidSpeed.of(List.of(one)).getFirst().sigmaMps(speed);
        return new SpokenAgainstTrace(
                one,
                near.timeS(),
                OptionalDouble.of(near.mps()),
                OptionalDouble.of(one.value() - near.mps()),
                near.agreesWith(one.value(), sigmaMps) ? Agreement.AGREES : Agreement.DISAGREES);
    }
}
