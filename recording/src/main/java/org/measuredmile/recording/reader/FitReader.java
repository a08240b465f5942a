package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;

/// Reads FIT activity files in one pass: one file, or several chained in one.
///
/// Taken: record messages with all their fields, fields of applications, the satellite, acceleration, turn-rate and
/// pressure messages of action cameras, events, laps, sessions, devices, time correlation. Not taken: courses, workouts
/// and other files that are no recording, which are refused; messages of any other kind, which are counted.
/// Source: the published FIT protocol (headers, definition and data messages, base types, checksums).
public final class FitReader implements RecordingReader {
    static final int SHORTEST_HEADER = 12;

    @Override
    public Format format() {
        return Format.FIT;
    }

    @Override
    public boolean recognises(byte[] head) {
        return head.length >= SHORTEST_HEADER
                && (head[0] & 0xFF) >= SHORTEST_HEADER
                && head[8] == '.'
                && head[9] == 'F'
                && head[10] == 'I'
                && head[11] == 'T';
    }

    @Override
    public Decoding read(String name, InputStream stream) throws IOException {
        Remarks remarks = new Remarks(name, true);
        FitBytes bytes = new FitBytes(stream);
        if (!bytes.has(1)) {
            return remarks.refuse(
                    "empty", Place.in(name), "the file holds nothing", "copy the file from the instrument again");
        }
        FitParts parts = new FitParts(bytes, remarks);
        if (!parts.atHeader()) {
            return FitTold.NOT_FIT.refuse(
                    remarks, Place.atByte(name, 0), "the file does not begin with the header of a FIT file");
        }
        FitContent content = parts.read();
        return new FitAssembly(content, remarks, parts.stoppedAt()).finish();
    }
}
