package org.measuredmile.archive;

import java.time.Instant;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/// The files of a test day or a ledger as they stood after one act. Never changed; a correction is another revision.
///
/// Shape: `number` counts from 1; `files` by path inside the folder.
public record Revision(
        Subject subject, String name, long number, Instant at, Act act, SortedMap<String, StoredFile> files) {
    /// What has revisions.
    public enum Subject {
        DAY("day"),
        LEDGER("ledger");

        private final String id;

        Subject(String id) {
            this.id = id;
        }

        public String id() {
            return id;
        }
    }

    /// A file's content by its hash, and how many bytes it has.
    public record StoredFile(String sha256, long bytes) {}

    public Revision {
        files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
    }
}
