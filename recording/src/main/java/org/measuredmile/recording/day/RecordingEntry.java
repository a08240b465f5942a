package org.measuredmile.recording.day;

import java.util.List;

/// What recordings.csv says of one file.
///
/// Unit: `clockOffsetS` seconds to add to the file's own clock.
public record RecordingEntry(String file, String instrument, List<String> runs, double clockOffsetS, String note) {
    public RecordingEntry {
        runs = List.copyOf(runs);
    }
}
