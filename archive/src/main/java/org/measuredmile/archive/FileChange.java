package org.measuredmile.archive;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeSet;

/// What became of one file from one revision to the next.
public record FileChange(Kind kind, String path) {
    /// In the words of the history.
    public enum Kind {
        ADDED,
        CHANGED,
        REMOVED
    }

    /// `changed readings.csv`.
    public String line() {
        return kind.name().toLowerCase(Locale.ROOT) + " " + path;
    }

    static List<FileChange> between(
            SortedMap<String, Revision.StoredFile> before, SortedMap<String, Revision.StoredFile> after) {
        var paths = new TreeSet<>(before.keySet());
        paths.addAll(after.keySet());
        var changes = new ArrayList<FileChange>();
        for (String path : paths) {
            var old = before.get(path);
            var now = after.get(path);
            if (old == null) {
                changes.add(new FileChange(Kind.ADDED, path));
            } else if (now == null) {
                changes.add(new FileChange(Kind.REMOVED, path));
            } else if (!old.equals(now)) {
                changes.add(new FileChange(Kind.CHANGED, path));
            }
        }
        return changes;
    }
}
