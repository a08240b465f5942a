package org.measuredmile.archive;

import java.time.Instant;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/// The files of a test day, a ledger or a reply sheet as they stood after one act. Never changed; a correction
/// is another revision.
///
/// Shape: `number` counts from 1; `files` by path inside the folder.
public record Revision(
        Subject subject, String name, long number, Instant at, Act act, SortedMap<String, StoredFile> files) {
    /// What has revisions.
    public enum Subject {
        DAY("day"),
        LEDGER("ledger"),
        /// What was sent to a bike's maker; the name is the bike's id.
        REPLY("reply");

        private final String id;

        Subject(String id) {
            this.id = id;
        }

        public String id() {
            return id;
        }

        /// The folder of an export that holds these.
        String folder() {
            return this == REPLY ? "replies" : id + "s";
        }
    }

    /// A file's content by its hash, and how many bytes it has.
    public record StoredFile(String sha256, long bytes) {}

    public Revision {
        files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
    }
}
