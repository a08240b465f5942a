package org.measuredmile.recording.spoken;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SpeedSource;

/// What was said in a clip, laid beside every recording that has a speed.
///
/// Shape: `readings` in order of time; `beside` in the order the recordings were given, those without a speed left out.
public record SpokenClip(String file, List<SpokenReading> readings, List<Beside> beside) {
    public SpokenClip {
        readings = List.copyOf(readings);
        beside = List.copyOf(beside);
    }

    /// The clip beside one recording.
    ///
    /// Shape: `compared` holds one entry for each reading, in their order; empty where no offset was found.
    public record Beside(String recording, SpeedSource speed, CameraOffset offset, List<SpokenAgainstTrace> compared) {
        public Beside {
            compared = List.copyOf(compared);
        }

        /// The offset, where one was found.
        public Optional<CameraOffset.Found> found() {
            return offset instanceof CameraOffset.Found one ? Optional.of(one) : Optional.empty();
        }
    }

    /// A reading, and what the recording that it is best laid beside has at its moment.
    public record Line(SpokenReading reading, Optional<Beside> recording, Optional<SpokenAgainstTrace> trace) {}

    /// Whether a recording is the words of a clip.
    public static boolean isOne(Recording recording) {
        return recording.format() == Format.CAPTIONS;
    }

    /// The clip beside the recordings of its day.
    public static SpokenClip of(Recording clip, List<Recording> others) {
        List<SpokenReading> said = SpokenReadings.in(clip);
        List<Beside> beside = new ArrayList<>();
        for (Recording other : others) {
            if (!isOne(other)) {
                SpeedSource.best(other)
                        .filter(speed -> speed.channel().size() > 1)
                        .ifPresent(speed -> beside.add(beside(said, other.name(), speed)));
            }
        }
        return new SpokenClip(clip.name(), said, beside);
    }

    private static Beside beside(List<SpokenReading> said, String recording, SpeedSource speed) {
        CameraOffset offset = CameraOffset.of(said, speed);
        List<SpokenAgainstTrace> compared =
                offset instanceof CameraOffset.Found found ? SpokenAgainstTrace.of(said, found, speed) : List.of();
        return new Beside(recording, speed, offset, compared);
    }

    /// The recordings that the clip's clock was set against, the surest first.
    public List<Beside> found() {
        return beside.stream()
                .filter(one -> one.found().isPresent())
                .sorted((a, b) -> Double.compare(uncertaintyS(a), uncertaintyS(b)))
                .toList();
    }

    private static double uncertaintyS(Beside one) {
        return one.found().orElseThrow().standardUncertaintyS();
    }

    /// Each reading beside the surest recording that has a value at its moment; else beside the surest of all.
    public List<Line> lines() {
        List<Beside> clocks = found();
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            int at = i;
            Optional<Beside> chosen = Stream.concat(
                            clocks.stream()
                                    .filter(one ->
                                            one.compared().get(at).traceMps().isPresent()),
                            clocks.stream())
                    .findFirst();
            lines.add(new Line(
                    readings.get(i), chosen, chosen.map(one -> one.compared().get(at))));
        }
        return lines;
    }
}
