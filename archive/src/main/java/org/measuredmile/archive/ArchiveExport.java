package org.measuredmile.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.archive.json.Json;
import org.measuredmile.recording.day.DayFolder;
import tools.jackson.databind.JsonNode;

/// The whole archive as plain files, and back.
///
/// Shape: `days/<id>/` holds each test day as it stands now, `ledgers/<name>/` each ledger, `replies/<bike>/`
/// what was sent to its maker last, `earlier/…/<number>/` what they were before, `sentences.json` the sentences as
/// they were seen, and `revisions.json` who did what when and why, so that nothing is lost on the way back.
public final class ArchiveExport {
    /// The file by which an export is known.
    public static final String LIST = "revisions.json";

    private static final String BROUGHT_IN = "brought in from an export";
    private static final String FORMAT = "measured-mile export 1";

    private ArchiveExport() {}

    /// Whether a folder was written by an export.
    public static boolean isExport(Path folder) {
        return Files.isRegularFile(folder.resolve(LIST));
    }

    static void write(Archive archive, Path target, Progress progress) throws IOException {
        Files.createDirectories(target);
        try (var there = Files.list(target)) {
            if (there.findAny().isPresent()) {
                throw new IOException(target + " is not empty; give a folder that is empty or does not exist yet");
            }
        }
        var all = new ArrayList<Revision>();
        for (var subject : Subject.values()) {
            all.addAll(archive.revisions().all(subject));
        }
        all.sort(
                Comparator.comparing(Revision::at).thenComparing(Revision::name).thenComparing(Revision::number));
        for (int i = 0; i < all.size(); i++) {
            progress.step(all.get(i).name(), i, all.size());
            write(archive, all.get(i), target.resolve(place(archive, all.get(i))));
        }
        var list = Json.object().put("format", FORMAT);
        list.set("revisions", Json.array(all, revision -> entry(archive, revision)));
        SentenceExport.write(archive.sentenceTable(), target);
        Files.writeString(target.resolve(LIST), Json.pretty(list), StandardCharsets.UTF_8);
    }

    private static String place(Archive archive, Revision revision) {
        String folder = revision.subject().folder() + "/" + revision.name();
        boolean isLatest = archive.revisions()
                .latest(revision.subject(), revision.name())
                .filter(latest -> latest.number() == revision.number())
                .isPresent();
        return isLatest ? folder : "earlier/" + folder + "/" + revision.number();
    }

    private static void write(Archive archive, Revision revision, Path folder) throws IOException {
        for (var file : revision.files().entrySet()) {
            var path = DayFolders.inside(folder, file.getKey());
            Files.createDirectories(path.getParent());
            try (var content = archive.content().open(file.getValue().sha256())) {
                Files.copy(content, path);
            }
        }
    }

    private static JsonNode entry(Archive archive, Revision revision) {
        var object = Json.object()
                .put("subject", revision.subject().id())
                .put("name", revision.name())
                .put("number", revision.number())
                .put("at", Database.text(revision.at()))
                .put("who", revision.act().who())
                .put("why", revision.act().why())
                .put("folder", place(archive, revision));
        object.set(
                "files",
                Json.array(
                        List.copyOf(revision.files().entrySet()),
                        file -> Json.object()
                                .put("path", file.getKey())
                                .put("sha256", file.getValue().sha256())));
        return object;
    }

    /// Takes an export into an archive, revision by revision, with who, when and why as they were.
    ///
    /// Error: IOException when the export is not whole: a file is missing or is not what its hash says.
    public static List<ImportReport> bringIn(Archive archive, Path export, Progress progress) throws IOException {
        var list = Json.parse(Files.readString(export.resolve(LIST), StandardCharsets.UTF_8));
        if (!list.path("format").asString("").equals(FORMAT)) {
            throw new IOException(export.resolve(LIST) + " is not of the format \"" + FORMAT + "\"");
        }
        var reports = new ArrayList<ImportReport>();
        var revisions = list.path("revisions");
        for (int i = 0; i < revisions.size(); i++) {
            var entry = revisions.path(i);
            progress.step(entry.path("name").asString(), i, revisions.size());
            var folder = folder(export, entry);
            var act = new Act(entry.path("who").asString(), entry.path("why").asString());
            var at = Instant.parse(entry.path("at").asString());
            if (entry.path("subject").asString().equals(Subject.DAY.id())) {
                reports.add(new Intake(archive).take(folder, act, at, BROUGHT_IN));
            } else if (entry.path("subject").asString().equals(Subject.REPLY.id())) {
                archive.replyTable().take(folder, act, at, BROUGHT_IN);
            } else {
                archive.ledgerTable().take(ledger(folder), act, at, BROUGHT_IN);
            }
        }
        SentenceExport.bringIn(archive.sentenceTable(), export);
        return reports;
    }

    private static Ledgers.File ledger(DayFolder folder) {
        byte[] none = {};
        return new Ledgers.File(folder.name(), folder.texts().getOrDefault(Ledgers.TABLE, none));
    }

    private static DayFolder folder(Path export, JsonNode entry) throws IOException {
        var folder = DayFolders.inside(export, entry.path("folder").asString());
        var files = new TreeMap<String, Path>();
        for (int i = 0; i < entry.path("files").size(); i++) {
            var file = entry.path("files").path(i);
            var path = DayFolders.inside(folder, file.path("path").asString());
            if (!ContentStore.hashOf(Files.readAllBytes(path))
                    .equals(file.path("sha256").asString())) {
                throw new IOException(path + " is not what the export holds: its hash differs from " + LIST
                        + "; export again, or take the day's folder in by itself");
            }
            files.put(file.path("path").asString(), path);
        }
        return DayFolders.of(entry.path("name").asString(), files);
    }
}
