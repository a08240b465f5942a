package org.measuredmile.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.archive.ledger.Ledger;

/// The ledgers in the archive: each a file, read again when it is asked for.
final class Ledgers {
    static final String TABLE = "ledger.csv";

    private final Database database;
    private final Revisions revisions;
    private final ContentStore content;
    private final Map<String, Ledger> known = new ConcurrentHashMap<>();

    /// A ledger's file and the name it goes by.
    record File(String name, byte[] bytes) {}

    Ledgers(Database database, Revisions revisions, ContentStore content) {
        this.database = database;
        this.revisions = revisions;
        this.content = content;
    }

    LedgerReport take(File file, Act act, Instant at, String word) {
        try {
            var files = new TreeMap<String, Revision.StoredFile>();
            files.put(TABLE, content.put(new ByteArrayInputStream(file.bytes())));
            return Objects.requireNonNull(database.inTransaction(() -> {
                var before = revisions.latest(Subject.LEDGER, file.name());
                var changes = FileChange.between(before.map(Revision::files).orElseGet(TreeMap::new), files);
                if (before.isPresent() && changes.isEmpty()) {
                    return new LedgerReport(before.get().number(), false, ledger(before.get()));
                }
                long number = before.map(Revision::number).orElse(0L) + 1;
                var revision = new Revision(Subject.LEDGER, file.name(), number, at, act, files);
                revisions.add(revision, before.isPresent() ? "revised" : word, changes);
                return new LedgerReport(number, true, ledger(revision));
            }));
        } catch (IOException trouble) {
            throw new UncheckedIOException(file.name() + ": " + trouble.getMessage(), trouble);
        }
    }

    List<Ledger> all() {
        return revisions.names(Subject.LEDGER).stream()
                .flatMap(name -> revisions.latest(Subject.LEDGER, name).stream())
                .map(this::ledger)
                .toList();
    }

    private Ledger ledger(Revision revision) {
        return known.computeIfAbsent(revision.name() + " " + revision.number(), key -> read(revision));
    }

    private Ledger read(Revision revision) {
        try {
            var file = revision.files().get(TABLE);
            return Ledger.read(revision.name(), file == null ? new byte[0] : content.read(file.sha256()));
        } catch (IOException trouble) {
            throw new UncheckedIOException(revision.name() + ": " + trouble.getMessage(), trouble);
        }
    }
}
