package org.measuredmile.trial;

import java.util.List;
import java.util.SortedMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.TestDay;

/// A whole test day, from its files to figures: read, decode, reduce every trial in the order of their uses.
///
/// Shape: see [Reduced]. The same files, scatter record and trial versions give the same result, bit for bit.
public final class DayReduction {
    private DayReduction() {}

    /// What became of a day.
    ///
    /// Shape: `recordings` by file name, refused ones among them; `outcomes` by trial id, for every trial that had
    /// anything to work on; `findings` are those of the day's own files.
    public record Reduced(
            TestDay day,
            Bike bike,
            SortedMap<String, Decoding> recordings,
            SortedMap<String, Outcome> outcomes,
            List<Finding> findings,
            List<Figure.InputHash> inputs) {
        public Reduced {
            findings = List.copyOf(findings);
            inputs = List.copyOf(inputs);
        }

        /// Every figure of every trial, in the order of [Trials#ALL].
        public List<Figure> figures() {
            return Trials.ALL.stream()
                    .map(trial -> outcomes.get(trial.declaration().id()))
                    .filter(java.util.Objects::nonNull)
                    .flatMap(outcome -> outcome.figures().stream())
                    .toList();
        }
    }
}
