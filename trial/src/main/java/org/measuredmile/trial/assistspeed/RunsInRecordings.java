package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.TrialInput;

/// Which of the trial's runs lie in which recording: as recordings.csv says, else by their start times, else in the
/// only recording there is.
final class RunsInRecordings {
    private RunsInRecordings() {}

    /// The recordings to be looked at, each with its runs in their order; a recording of nobody's run has none, one
    /// of other trials' runs only is not looked at. Runs whose ends were set are not among them.
    static SortedMap<String, List<Run>> of(TrialInput input, List<Finding> findings) {
        var runsOf = new TreeMap<String, List<Run>>();
        var placed = new HashSet<String>();
        var windows = input.windows();
        placed.addAll(windows.byRun().keySet());
        for (var recording : input.recordingsToSearch()) {
            var runs = input.runsIn(recording).stream()
                    .filter(run -> windows.of(run.id()).isEmpty())
                    .toList();
            runsOf.put(recording.name(), new ArrayList<>(runs));
            runs.forEach(run -> placed.add(run.id()));
        }
        var open = runsOf.entrySet().stream()
                .filter(one -> one.getValue().isEmpty())
                .toList();
        for (var run : input.runs()) {
            if (placed.contains(run.id())
                    || input.readings().of(run.id(), "speed").isPresent()) {
                continue;
            }
            var holding = open.stream()
                    .filter(one -> holdingNames(input, run).contains(one.getKey()))
                    .toList();
            if (holding.size() == 1) {
                holding.getFirst().getValue().add(run);
            } else if (open.size() == 1 && run.start().isEmpty()) {
                open.getFirst().getValue().add(run);
            } else if (!open.isEmpty()) {
                findings.add(Finding.warning(
                        "recording-unclear",
                        run.place(),
                        "nothing says which of " + open.size() + " recordings holds run " + run.id(),
                        "name the run in recordings.csv, or write its start time"));
            }
        }
        return runsOf;
    }

    private static List<String> holdingNames(TrialInput input, Run run) {
        return input.recordings().values().stream()
                .filter(recording -> holds(recording, run))
                .map(Recording::name)
                .toList();
    }

    private static boolean holds(Recording recording, Run run) {
        if (run.start().isEmpty() || recording.start().isEmpty()) {
            return false;
        }
        double sinceS =
                java.time.Duration.between(recording.start().get(), run.start().get())
                                .toMillis()
                        / 1000.0;
        return sinceS >= -1 && sinceS <= recording.spanS();
    }
}
