package org.measuredmile.trial;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.TestDay;

/// What the trials find in a recording of which nothing else is known.
public final class FoundRuns {
    private FoundRuns() {}

    /// A run or a candidate, and whose it is.
    public record Found(String trial, RunResult run) {}

    /// Every run and candidate that any trial finds, in the order of the trials.
    public static List<Found> in(Recording recording) {
        if (!recording.mayGiveFigures()) {
            return List.of();
        }
        var recordings = new TreeMap<String, Recording>();
        recordings.put(recording.name(), recording);
        var found = new ArrayList<Found>();
        for (var trial : Trials.ALL) {
            var declaration = trial.declaration();
            var input = new TrialInput(
                    unknownDay(),
                    Bike.known("unknown"),
                    List.of(),
                    ReadingResolver.resolve(declaration, unknownDay()),
                    recordings,
                    ScatterRecord.DECLARED_PRIORS,
                    new TreeMap<>());
            for (var run : trial.reduce(input).runs()) {
                found.add(new Found(declaration.id(), run));
            }
        }
        return found;
    }

    private static TestDay unknownDay() {
        return new TestDay(
                "",
                LocalDate.EPOCH,
                ZoneOffset.UTC,
                "",
                "unknown",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                java.util.Optional.empty(),
                Conditions.UNKNOWN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }
}
