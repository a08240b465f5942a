package org.measuredmile.recording.reader;

import java.io.IOException;
import java.io.InputStream;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Format;

/// A reader of one format.
public interface RecordingReader {
    Format format();

    /// Whether the first bytes of a file (up to 8 KiB of them) look like this format.
    boolean recognises(byte[] head);

    /// Reads a whole file in one pass and bounded memory.
    ///
    /// Error: IOException only when the stream itself fails; whatever the bytes hold is answered by a [Decoding].
    Decoding read(String name, InputStream bytes) throws IOException;

    /// The same where it is set what the columns of an instrument's tables mean; formats without columns have
    /// no use for it.
    default Decoding read(String name, InputStream bytes, ColumnSettings settings) throws IOException {
        return read(name, bytes);
    }
}
