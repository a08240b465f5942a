package org.measuredmile.trial;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.RecordingPart;
import org.measuredmile.recording.check.Beside;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;

/// All that a trial's reduction may read.
///
/// Shape: `runs` are this trial's, in the order of runs.csv, each variant completed with the trial's usual values;
/// `readings` are resolved by its declaration; `recordings` are the day's decoded files by name; `used` holds the
/// figures it declared to use, where there are any, and `correlations` how those lean on one another; `besides` says
/// during which stretches of a recording another one is searched for runs.
public record TrialInput(
        TestDay day,
        Bike bike,
        List<Run> runs,
        ResolvedReadings readings,
        SortedMap<String, Recording> recordings,
        ScatterRecord scatter,
        SortedMap<FigureKey, Figure> used,
        List<Correlation> correlations,
        List<Beside> besides) {
    public TrialInput {
        runs = List.copyOf(runs);
        besides = List.copyOf(besides);
        recordings = Collections.unmodifiableSortedMap(new TreeMap<>(recordings));
        used = Collections.unmodifiableSortedMap(new TreeMap<>(used));
        correlations = List.copyOf(correlations);
    }

    /// An input whose used figures, if any, stand alone.
    public TrialInput(
            TestDay day,
            Bike bike,
            List<Run> runs,
            ResolvedReadings readings,
            SortedMap<String, Recording> recordings,
            ScatterRecord scatter,
            SortedMap<FigureKey, Figure> used) {
        this(day, bike, runs, readings, recordings, scatter, used, List.of(), List.of());
    }

    /// The correlation of two used figures; 0 where nobody stated one.
    public double correlation(FigureKey one, FigureKey other) {
        return correlations.stream()
                .filter(each -> each.isBetween(one, other))
                .mapToDouble(Correlation::coefficient)
                .findFirst()
                .orElse(0);
    }

    /// The instrument that wrote a recording, where recordings.csv says so.
    public Optional<Instrument> instrumentOf(Recording recording) {
        return day.recording(recording.name()).map(RecordingEntry::instrument).flatMap(day::instrument);
    }

    /// Where the runs lie whose ends a person set.
    public RunWindows windows() {
        return RunWindows.of(day, runs);
    }

    /// This trial's runs that a recording holds, in the order written; empty when nobody said.
    public List<Run> runsIn(Recording recording) {
        var entry = day.recording(recording.name());
        if (entry.isEmpty()) {
            return List.of();
        }
        var named = entry.get().runs();
        return runs.stream().filter(run -> named.contains(run.id())).toList();
    }

    /// The recordings that runs of this trial may lie in: all but captions, which hold words only, and those that
    /// recordings.csv gives to other trials alone. What another of them holds too is left out of all but one.
    public List<Recording> recordingsToSearch() {
        return recordings.values().stream()
                .filter(this::mayHoldRuns)
                .flatMap(recording -> alone(recording).stream())
                .toList();
    }

    private boolean mayHoldRuns(Recording recording) {
        return recording.format() != Format.CAPTIONS
                && (!runsIn(recording).isEmpty()
                        || day.recording(recording.name())
                                .map(entry -> entry.windows().keySet().containsAll(entry.runs()))
                                .orElse(true));
    }

    /// A recording without the stretches during which another one is searched; nothing where that is all of it.
    private Optional<Recording> alone(Recording recording) {
        var rest = recording;
        for (Beside beside : besides) {
            var with = Optional.ofNullable(recordings.get(beside.with()));
            if (beside.file().equals(recording.name())
                    && with.filter(this::mayHoldRuns).isPresent()) {
                rest = RecordingPart.without(rest, beside.fromS(), beside.toS());
            }
        }
        return rest.timesS().length == 0 && recording.timesS().length > 0 ? Optional.empty() : Optional.of(rest);
    }
}
