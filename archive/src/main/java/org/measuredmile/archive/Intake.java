package org.measuredmile.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.trial.DayReduction;

/// Takes a test day in: content, then revision and history, then reduction, each kept whatever becomes of the next.
final class Intake {
    private final Archive archive;

    Intake(Archive archive) {
        this.archive = archive;
    }

    ImportReport take(DayFolder day, Act act, Instant at, String word) {
        record Taken(Revision revision, List<FileChange> changes) {}
        try {
            var files = archive.keep(day);
            var taken = Objects.requireNonNull(archive.database().inTransaction(() -> {
                var before = archive.revisions().latest(Subject.DAY, day.name());
                var changes = FileChange.between(before.map(Revision::files).orElseGet(TreeMap::new), files);
                if (changes.isEmpty() && before.isPresent()) {
                    return new Taken(before.get(), changes);
                }
                long number = before.map(Revision::number).orElse(0L) + 1;
                var revision = new Revision(Subject.DAY, day.name(), number, at, act, files);
                archive.revisions().add(revision, before.isPresent() ? "revised" : word, changes);
                return new Taken(revision, changes);
            }));
            return report(archive.stored(taken.revision()), taken.changes());
        } catch (IOException trouble) {
            throw new UncheckedIOException(day.name() + ": " + trouble.getMessage(), trouble);
        }
    }

    private ImportReport report(StoredDay stored, List<FileChange> changes) {
        boolean standsReduced =
                changes.isEmpty() && !archive.figureTable().outOfDate().contains(stored.id());
        var result = standsReduced ? Optional.of(archive.reduce(stored)) : reduce(stored);
        return new ImportReport(
                stored.id(),
                stored.revision().number(),
                changes,
                result.flatMap(Archive::reducedOf),
                archive.entry(stored.id()).orElseThrow());
    }

    /// Reduces a stored day and puts its figures in place; a failure of the program is noted and loses nothing.
    Optional<DayReduction.Result> reduce(StoredDay stored) {
        try {
            var result = archive.reduce(stored);
            archive.database().inTransaction(() -> {
                archive.figureTable().replace(stored.revision(), result);
                return null;
            });
            return Optional.of(result);
        } catch (RuntimeException failure) {
            archive.database().inTransaction(() -> {
                archive.figureTable().fail(stored.revision(), String.valueOf(failure));
                return null;
            });
            return Optional.empty();
        }
    }
}
