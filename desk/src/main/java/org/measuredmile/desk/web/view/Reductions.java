package org.measuredmile.desk.web.view;

import java.util.Optional;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.DayEntry;
import org.measuredmile.trial.DayReduction;

/// A test day as reduced, where it could be.
public final class Reductions {
    private Reductions() {}

    /// The reduced day; empty when there is none, when its own files cannot be used, or when reducing it failed
    /// before, so that a page can still show what is kept.
    public static Optional<DayReduction.Result.Reduced> of(Archive archive, String day) {
        return archive.entry(day)
                .filter(entry -> entry.state() == DayEntry.State.REDUCED)
                .flatMap(entry -> archive.reduced(entry.id()));
    }
}
