package org.measuredmile.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/// The tables of revisions and of history: rows are added, never changed.
final class Revisions {
    private static final String COLUMNS = "select number, at, who, why from revision where subject = ? and name = ? ";

    private final Database database;

    Revisions(Database database) {
        this.database = database;
    }

    Optional<Revision> latest(Revision.Subject subject, String name) {
        return header(COLUMNS + "order by number desc limit 1", subject, name, subject.id(), name);
    }

    Optional<Revision> one(Revision.Subject subject, String name, long number) {
        return header(COLUMNS + "and number = ?", subject, name, subject.id(), name, number);
    }

    List<Revision> all(Revision.Subject subject) {
        record Head(String name, long number) {}
        return database
                .sql()
                .sql("select name, number from revision where subject = ? order by name, number")
                .param(subject.id())
                .query((row, index) -> new Head(row.getString(1), row.getLong(2)))
                .list()
                .stream()
                .flatMap(head -> one(subject, head.name(), head.number()).stream())
                .toList();
    }

    List<String> names(Revision.Subject subject) {
        return database.sql()
                .sql("select distinct name from revision where subject = ? order by name")
                .param(subject.id())
                .query((row, index) -> row.getString(1))
                .list();
    }

    /// Adds a revision with its line of history.
    void add(Revision revision, String act, List<FileChange> changes) {
        var subject = revision.subject().id();
        database.sql()
                .sql("insert into revision (subject, name, number, at, who, why) values (?, ?, ?, ?, ?, ?)")
                .params(
                        subject,
                        revision.name(),
                        revision.number(),
                        Database.text(revision.at()),
                        revision.act().who(),
                        revision.act().why())
                .update();
        revision.files()
                .forEach((path, file) -> database.sql()
                        .sql("insert into revision_file (subject, name, number, path, sha256, bytes) values (?, "
                                + "?, ?, ?, ?, ?)")
                        .params(subject, revision.name(), revision.number(), path, file.sha256(), file.bytes())
                        .update());
        note(revision, act, changes);
    }

    private void note(Revision revision, String act, List<FileChange> changes) {
        long id = database.sql()
                .sql("select coalesce(max(id), 0) + 1 from history")
                .query(Long.class)
                .single();
        String lines = changes.stream().map(FileChange::line).collect(Collectors.joining("\n"));
        database.sql()
                .sql("insert into history (id, at, who, act, subject, name, number, why, changes)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        id,
                        Database.text(revision.at()),
                        revision.act().who(),
                        act,
                        revision.subject().id(),
                        revision.name(),
                        revision.number(),
                        revision.act().why(),
                        lines)
                .update();
    }

    List<HistoryEntry> history() {
        return database.sql()
                .sql("select id, at, who, act, subject, name, number, why, changes from history order by id")
                .query((row, index) -> new HistoryEntry(
                        row.getLong("id"),
                        Instant.parse(row.getString("at")),
                        row.getString("who"),
                        row.getString("act"),
                        row.getString("subject"),
                        row.getString("name"),
                        row.getLong("number"),
                        row.getString("why"),
                        row.getString("changes").lines().toList()))
                .list();
    }

    private Optional<Revision> header(String query, Revision.Subject subject, String name, Object... parameters) {
        return database.sql()
                .sql(query)
                .params(List.of(parameters))
                .query((row, index) -> new Revision(
                        subject,
                        name,
                        row.getLong("number"),
                        Instant.parse(row.getString("at")),
                        new Act(row.getString("who"), row.getString("why")),
                        new TreeMap<>()))
                .optional()
                .map(head -> new Revision(
                        subject, name, head.number(), head.at(), head.act(), files(subject, name, head.number())));
    }

    private SortedMap<String, Revision.StoredFile> files(Revision.Subject subject, String name, long number) {
        record Line(String path, Revision.StoredFile file) {}
        var files = new TreeMap<String, Revision.StoredFile>();
        database.sql()
                .sql("select path, sha256, bytes from revision_file where subject = ? and name = ? and number = ?")
                .params(subject.id(), name, number)
                .query((row, index) ->
                        new Line(row.getString(1), new Revision.StoredFile(row.getString(2), row.getLong(3))))
                .list()
                .forEach(line -> files.put(line.path(), line.file()));
        return files;
    }
}
