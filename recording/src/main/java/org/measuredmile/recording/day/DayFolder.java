package org.measuredmile.recording.day;

import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/// The files of a test day, wherever they lie.
///
/// Shape: `texts` holds the small files people write, by path inside the folder: `day.yaml`, `runs.csv`,
/// `readings.csv`, `recordings.csv`, `bike/bike.yaml`, `bike/spec.csv`, `courses/<id>.yaml`; `recordings` the
/// instruments' files by their name inside `recordings/`, opened as often as wanted.
public record DayFolder(String name, SortedMap<String, byte[]> texts, SortedMap<String, ByteSource> recordings) {
    /// Bytes that can be read from the beginning any number of times.
    public interface ByteSource {
        InputStream open() throws IOException;
    }

    public DayFolder {
        texts = Collections.unmodifiableSortedMap(new TreeMap<>(texts));
        recordings = Collections.unmodifiableSortedMap(new TreeMap<>(recordings));
    }
}
