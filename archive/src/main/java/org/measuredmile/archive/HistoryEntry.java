package org.measuredmile.archive;

import java.time.Instant;
import java.util.List;

/// One thing that was done to the archive.
///
/// Shape: `act` is `imported`, `revised`, `sent` or `brought in from an export`; `subject` is `day`, `ledger`
/// or `reply`, `name` which one and `number` the revision it led to; `changes` one line a file.
public record HistoryEntry(
        long id,
        Instant at,
        String who,
        String act,
        String subject,
        String name,
        long number,
        String why,
        List<String> changes) {
    public HistoryEntry {
        changes = List.copyOf(changes);
    }
}
