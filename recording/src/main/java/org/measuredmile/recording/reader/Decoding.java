package org.measuredmile.recording.reader;

import java.util.List;
import org.measuredmile.recording.ColumnMeaning;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;

/// What came of reading a file.
public sealed interface Decoding {
    /// The name of what was read; of an entry of a packed file, behind that file's own and a slash.
    String name();

    List<Finding> findings();

    /// What the columns of a table were taken for, whichever way it ended; empty for other formats.
    List<ColumnMeaning> columns();

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

        @Override
        public List<ColumnMeaning> columns() {
            return recording.columns();
        }
    }

    /// No recording could be made; at least one finding of level refused says why, where, and what
    /// to do.
    ///
    /// Shape: `columns` are those of a table that could be told apart all the same, so that a
    /// person can set what they mean.
    record Refused(String name, List<Finding> findings, List<ColumnMeaning> columns) implements Decoding {
        public Refused {
            findings = List.copyOf(findings);
            columns = List.copyOf(columns);
        }

        public Refused(String name, List<Finding> findings) {
            this(name, findings, List.of());
        }
    }
}
