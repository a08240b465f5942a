package org.measuredmile.recording.reader;

import java.util.Arrays;
import org.measuredmile.recording.Track;

/// Gathers the positions of a file in its own order.
final class TrackColumns {
    private final DoubleColumn latitudes = new DoubleColumn();
    private final DoubleColumn longitudes = new DoubleColumn();
    private final LongColumn starts = new LongColumn();
    private boolean breakPending = true;

    /// The next position begins a segment.
    void startSegment() {
        breakPending = true;
    }

    void add(double latitude, double longitude) {
        if (breakPending) {
            starts.add(latitudes.size());
            breakPending = false;
        }
        latitudes.add(latitude);
        longitudes.add(longitude);
    }

    int size() {
        return latitudes.size();
    }

    Track track() {
        int[] at = new int[starts.size()];
        Arrays.setAll(at, i -> (int) starts.get(i));
        return new Track(latitudes.toArray(), longitudes.toArray(), at);
    }
}
