package org.measuredmile.recording.day;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;

/// A test-day folder put together from texts.
record FolderOf(SortedMap<String, byte[]> texts, SortedMap<String, DayFolder.ByteSource> recordings) {
    static final String DAY = """
            date: 2031-04-14
            timeZone: Europe/London
            place: Wendlesea promenade (invented)
            bike: ostrelle-lamplight
            riders:
              - {code: T1, massAsRidden: 82.4 kg}
            instruments:
              - {id: tape-1, kind: tape, resolution: 1 cm}
            courses:
              - {id: promenade, kind: straight}
            """;

    static FolderOf day() {
        return empty().with("day.yaml", DAY);
    }

    static FolderOf empty() {
        return new FolderOf(new TreeMap<>(), new TreeMap<>());
    }

    FolderOf with(String file, String text) {
        return with(file, text.getBytes(StandardCharsets.UTF_8));
    }

    FolderOf with(String file, byte[] bytes) {
        var more = new TreeMap<>(texts);
        more.put(file, bytes);
        return new FolderOf(more, recordings);
    }

    FolderOf withRecording(String name) {
        var more = new TreeMap<>(recordings);
        more.put(name, () -> new ByteArrayInputStream(new byte[0]));
        return new FolderOf(texts, more);
    }

    DayFolder folder() {
        return new DayFolder("day-001", texts, recordings);
    }

    DayRead read() {
        return DayReader.read(folder());
    }

    DayRead.Read readable() {
        return (DayRead.Read) read();
    }

    List<Finding> findings() {
        return switch (read()) {
            case DayRead.Read read -> read.findings();
            case DayRead.Unusable unusable -> unusable.findings();
        };
    }

    /// Findings as `code @ place`, notes left out.
    List<String> faults() {
        return findings().stream()
                .filter(one -> one.level() != Finding.Level.NOTE)
                .map(one -> one.code() + " @ " + one.place().text())
                .toList();
    }

    List<String> notes() {
        return findings().stream()
                .filter(one -> one.level() == Finding.Level.NOTE)
                .map(one -> one.code() + " @ " + one.place().text())
                .toList();
    }
}
