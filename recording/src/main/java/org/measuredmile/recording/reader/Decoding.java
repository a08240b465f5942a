package org.measuredmile.recording.reader;

import java.util.List;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;

/// What came of reading a file.
public sealed interface Decoding {
    /// The name of what was read; of an entry of a packed file, behind that file's own and a slash.
    String name();

    List<Finding> findings();

    /// A recording; what is wrong with it stands in its findings.
    record Decoded(Recording recording) implements Decoding {
        @Override
        public String name() {
            return recording.name();
        }

        @Override
        public List<Finding> findings() {
            return recording.findings();
        }
    }

    /// No recording could be made; at least one finding of level refused says why, where, and what
    /// to do.
    record Refused(String name, List<Finding> findings) implements Decoding {
        public Refused {
            findings = List.copyOf(findings);
        }
    }
}
