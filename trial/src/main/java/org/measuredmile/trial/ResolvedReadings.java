package org.measuredmile.trial;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Reading;

/// A day's readings as one trial understands them: each with its quantity, read once, in SI.
///
/// Shape: by run id (empty text for the day) and reading name. A run's own reading stands before the day's, the day's
/// before the condition of the same name in day.yaml. What could not be read or believed is not here but in `faults`
/// of its run.
public record ResolvedReadings(
        SortedMap<String, SortedMap<String, Value>> byRun, SortedMap<String, List<Finding>> faults) {
    /// A reading's value.
    ///
    /// Unit: `si` and `resolution` in the SI unit of the declared quantity; `si` already carries the instrument's
    /// calibration factor. `word` holds the text of a reading of kind WORD, for which `si` is 0.
    public record Value(double si, double resolution, String word, Optional<Instrument> instrument, Reading reading) {
        /// The standard uncertainty that reading it off leaves, every error within a step being as
        /// likely: a scale's step, a display's, or that of a camera's frames.
        ///
        /// Source: JCGM 100:2008, F.2.2.1.
        public double stepSd() {
            return resolution / Math.sqrt(12);
        }

        /// Whether pictures told it, so that nobody's reaction is in it.
        public boolean isByCamera() {
            return FrameReading.isMeant(reading.written())
                    || instrument
                            .filter(one -> one.kind() == Instrument.Kind.CAMERA)
                            .isPresent();
        }
    }

    public ResolvedReadings {
        byRun = Collections.unmodifiableSortedMap(new TreeMap<>(byRun));
        faults = Collections.unmodifiableSortedMap(new TreeMap<>(faults));
    }

    /// The value for a run: its own, or the day's.
    public Optional<Value> of(String run, String name) {
        return ownOf(run, name).or(() -> ownOf("", name));
    }

    /// The value that belongs to the day.
    public Optional<Value> ofDay(String name) {
        return ownOf("", name);
    }

    /// The word read for a run or the day; empty text when there is none.
    public String word(String run, String name) {
        return of(run, name).map(Value::word).orElse("");
    }

    /// What is wrong with the readings of a run.
    public List<Finding> faultsOf(String run) {
        return faults.getOrDefault(run, List.of());
    }

    private Optional<Value> ownOf(String run, String name) {
        return Optional.ofNullable(
                byRun.getOrDefault(run, Collections.emptySortedMap()).get(name));
    }
}
