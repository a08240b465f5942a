package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import org.measuredmile.recording.Format;

/// Reads training files with activities, laps, tracks and track points (TCX), in one pass.
///
/// Taken: track points with time, position, altitude, distance, heart rate, cadence, and by local name, under any
/// prefix: speed, power and what else a GPX point may carry; laps and pauses as marks; the creator as the device.
/// Not taken: lap totals, which are the instrument's own sums of the same points; they stand in the lap's mark.
/// Source: the public schema of the training file (version 2) and of its activity extension (version 2): metres, m/s,
/// beats and turns a minute, watts, times with their zone.
public final class TcxReader implements RecordingReader {
    private static final Pattern ROOT = Pattern.compile("<(?:[A-Za-z_][\\w.-]*:)?TrainingCenterDatabase[\\s>/]");

    @Override
    public Format format() {
        return Format.TCX;
    }

    @Override
    public boolean recognises(byte[] head) {
        return ROOT.matcher(TextHead.preview(head)).find();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        return XmlWalk.read(bytes, new TcxContent(name));
    }
}
