package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/// What recordings.csv says of one file.
///
/// Shape: `windows` holds the stretch of each of its `runs` whose ends a person set, by the run's id.
/// Unit: `clockOffsetS` seconds to add to the file's own clock.
public record RecordingEntry(
        String file,
        String instrument,
        List<String> runs,
        SortedMap<String, Window> windows,
        double clockOffsetS,
        String note) {
    public RecordingEntry {
        runs = List.copyOf(runs);
        windows = Collections.unmodifiableSortedMap(new TreeMap<>(windows));
    }

    /// An entry of runs whose ends nobody set.
    public RecordingEntry(String file, String instrument, List<String> runs, double clockOffsetS, String note) {
        this(file, instrument, runs, Collections.emptySortedMap(), clockOffsetS, note);
    }

    /// The stretch that a person set for a run.
    public Optional<Window> window(String run) {
        return Optional.ofNullable(windows.get(run));
    }

    /// The same entry naming a run, once.
    public RecordingEntry naming(String run) {
        var more = new ArrayList<>(runs);
        if (!more.contains(run)) {
            more.add(run);
        }
        return new RecordingEntry(file, instrument, more, windows, clockOffsetS, note);
    }

    /// The same entry naming a run with both its ends, in place of those it had.
    public RecordingEntry naming(String run, Window window) {
        var more = new TreeMap<>(windows);
        more.put(run, window);
        var named = naming(run);
        return new RecordingEntry(file, instrument, named.runs, more, clockOffsetS, note);
    }

    /// The same entry with a run's ends forgotten; the run stays named.
    public RecordingEntry withoutWindow(String run) {
        var fewer = new TreeMap<>(windows);
        fewer.remove(run);
        return new RecordingEntry(file, instrument, runs, fewer, clockOffsetS, note);
    }
}
