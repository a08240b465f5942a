package org.measuredmile.recording.reader;

import java.util.List;

/// The words that captions show together, as they stand in the file, and for how long.
///
/// Shape: `lines` without markup and without empty ones.
/// Unit: seconds from the clip's start.
record CaptionCue(double fromS, double toS, List<String> lines, long line) {
    CaptionCue {
        lines = List.copyOf(lines);
    }
}
