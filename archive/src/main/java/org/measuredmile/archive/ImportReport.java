package org.measuredmile.archive;

import java.util.List;
import java.util.Optional;
import org.measuredmile.trial.DayReduction;

/// What came of taking a test day in.
///
/// Shape: `changes` is empty when the same bytes were there already, and then no revision was made. `reduced` is absent
/// when the day's own files cannot be used or the reduction failed; `entry` says which, and the files are kept.
public record ImportReport(
        String day,
        long revision,
        List<FileChange> changes,
        Optional<DayReduction.Result.Reduced> reduced,
        DayEntry entry) {
    public ImportReport {
        changes = List.copyOf(changes);
    }

    public boolean isNew() {
        return !changes.isEmpty();
    }
}
