package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import org.measuredmile.recording.Format;

/// Reads GPX 1.0 and 1.1, with or without their namespace, in one pass.
///
/// Taken: track points with position, elevation, time, and by local name, under any prefix at any depth: speed, course,
/// heart rate, cadence, power, air temperature, satellites, horizontal dilution; waypoints with a time, as marks. Not
/// taken: routes and waypoints without a time, which are places and not samples; they are counted.
/// Source: GPX 1.1 schema documentation (topografix.com/GPX/1/1): speeds in m/s (GPX 1.0), times in UTC.
public final class GpxReader implements RecordingReader {
    private static final Pattern ROOT = Pattern.compile("<(?:[A-Za-z_][\\w.-]*:)?gpx[\\s>/]");

    @Override
    public Format format() {
        return Format.GPX;
    }

    @Override
    public boolean recognises(byte[] head) {
        return ROOT.matcher(TextHead.preview(head)).find();
    }

    @Override
    public Decoding read(String name, InputStream bytes) throws IOException {
        return XmlWalk.read(bytes, new GpxContent(name));
    }
}
