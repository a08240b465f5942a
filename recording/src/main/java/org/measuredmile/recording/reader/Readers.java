package org.measuredmile.recording.reader;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;

/// All readers, and the choice among them: by what a file holds first, by what it is called only when that says
/// nothing.
///
/// Files packed with gzip are unpacked on the way, within limits.
public final class Readers {
    private static final int HEAD = 8192;
    private static final List<RecordingReader> ALL =
            List.of(new FitReader(), new GpxReader(), new TcxReader(), new CaptionReader(), new NmeaReader(), new DelimitedReader());

    /// How names end that speak for a format, asked only where the content does not.
    private static final Map<String, Format> ENDINGS = Map.of(
            ".gpx", Format.GPX,
            ".tcx", Format.TCX,
            ".vtt", Format.CAPTIONS,
            ".srt", Format.CAPTIONS,
            ".nmea", Format.NMEA,
            ".nma", Format.NMEA);
