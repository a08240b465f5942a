package org.measuredmile.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.archive.json.Json;
import org.measuredmile.recording.day.DayFolder;

/// The sheets that were sent to makers: each is a revision of its bike's reply, kept as it was sent.
final class Replies {
    private static final String SHEET = "sheet.txt";
    private static final String DATES = "dates.json";
    private static final String SENT = "sent";

    private final Database database;
    private final Revisions revisions;
    private final ContentStore content;

    Replies(Database database, Revisions revisions, ContentStore content) {
        this.database = database;
        this.revisions = revisions;
        this.content = content;
    }

    SentReply keep(SentReply.Sheet sheet, Act act, Instant at) {
        var files = new TreeMap<String, byte[]>();
        files.put(SHEET, sheet.text().getBytes(StandardCharsets.UTF_8));
        var dates = Json.object()
                .put("sent", sheet.sent().toString())
                .put("due", sheet.due().toString());
        files.put(DATES, Json.pretty(dates).getBytes(StandardCharsets.UTF_8));
        return sent(add(sheet.bike(), files, act, at, SENT)).orElseThrow();
    }

    /// What an export holds of a sheet.
    void take(DayFolder folder, Act act, Instant at, String word) {
        add(folder.name(), folder.texts(), act, at, word);
    }

    private Revision add(String bike, SortedMap<String, byte[]> bytes, Act act, Instant at, String word) {
        try {
            var files = new TreeMap<String, Revision.StoredFile>();
            for (var file : bytes.entrySet()) {
                files.put(file.getKey(), content.put(new ByteArrayInputStream(file.getValue())));
            }
            return Objects.requireNonNull(database.inTransaction(() -> {
                var before = revisions.latest(Subject.REPLY, bike);
                var changes = FileChange.between(before.map(Revision::files).orElseGet(TreeMap::new), files);
                long number = before.map(Revision::number).orElse(0L) + 1;
                var revision = new Revision(Subject.REPLY, bike, number, at, act, files);
                revisions.add(revision, word, changes);
                return revision;
            }));
        } catch (IOException trouble) {
            throw new UncheckedIOException("reply sheet of " + bike + ": " + trouble.getMessage(), trouble);
        }
    }

    List<SentReply> of(String bike) {
        var all = new ArrayList<SentReply>();
        long last = revisions.latest(Subject.REPLY, bike).map(Revision::number).orElse(0L);
        for (long number = 1; number <= last; number++) {
            revisions.one(Subject.REPLY, bike, number).flatMap(this::sent).ifPresent(all::add);
        }
        return List.copyOf(all);
    }

    private Optional<SentReply> sent(Revision revision) {
        var sheet = revision.files().get(SHEET);
        var dates = revision.files().get(DATES);
        if (sheet == null || dates == null) {
            return Optional.empty();
        }
        try {
            var read = Json.parse(new String(content.read(dates.sha256()), StandardCharsets.UTF_8));
            return Optional.of(new SentReply(
                    revision.name(),
                    revision.number(),
                    LocalDate.parse(read.path("sent").asString()),
                    LocalDate.parse(read.path("due").asString()),
                    revision.act().who(),
                    revision.at(),
                    sheet.sha256()));
        } catch (IOException trouble) {
            throw new UncheckedIOException(revision.name() + ": " + trouble.getMessage(), trouble);
        }
    }
}
