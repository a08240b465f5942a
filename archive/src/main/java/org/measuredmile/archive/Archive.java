package org.measuredmile.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.archive.Revision.Subject;
import org.measuredmile.archive.ledger.Ledger;
import org.measuredmile.archive.ledger.LedgerEntry;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.trial.DayReduction;

/// A crew's archive: one folder with a database and the files it names by hash.
///
/// Shape: inputs come first: a day's files are kept, with who, when and why, before anything is computed from
/// them, and a correction is another revision. Safe for use by several threads and several processes at once.
/// Error: UncheckedIOException when the disk fails or a kept file is no longer what it was.
public final class Archive implements AutoCloseable {
    private static final int KEPT_REDUCTIONS = 8;
    private static final String RECORDINGS = "recordings/";

    private final Path folder;
    private final Clock clock;
    private final Reducer reducer;
    private final ContentStore content;
    private final WaitingFiles waiting;
    private final Database database;
    private final Revisions revisions;
    private final Figures figures;
    private final Ledgers ledgers;
    private final Replies replies;
    private final SeenSentences sentences;
    private final Map<String, DayReduction.Result> reductions = new LinkedHashMap<>(16, 0.75f, true);

    Archive(Path folder, Clock clock, Reducer reducer) throws IOException {
        Files.createDirectories(folder);
        this.folder = folder;
        this.clock = clock;
        this.reducer = reducer;
        content = new ContentStore(folder.resolve("content"));
        waiting = new WaitingFiles(folder.resolve("waiting"), clock);
        database = Database.open(folder.resolve("archive.db"));
        revisions = new Revisions(database);
        figures = new Figures(database);
        ledgers = new Ledgers(database, revisions, content);
        replies = new Replies(database, revisions, content);
        sentences = new SeenSentences(database);
    }

    /// Opens the archive in a folder, or makes it; an older one is brought to the current schema.
    public static Archive open(Path folder, Clock clock) {
        try {
            return new Archive(folder, clock, Reducer.DECLARED);
        } catch (IOException trouble) {
            throw new UncheckedIOException(folder + ": the archive cannot be opened", trouble);
        }
    }

    /// Whether a folder holds an archive.
    public static boolean isArchive(Path folder) {
        return Files.isRegularFile(folder.resolve("archive.db"));
    }

    public Path folder() {
        return folder;
    }

    /// Keeps a test day's files and reduces them. The same bytes again make no revision.
    ///
    /// Shape: the day's id is the folder's name; when that day is there already, this is a revision of it.
    public ImportReport importDay(DayFolder day, Act act) {
        return new Intake(this).take(day, act, clock.instant(), "imported");
    }

    /// Keeps a correction of a day that is there.
    ///
    /// Error: IllegalArgumentException when there is no such day.
    public ImportReport revise(String dayId, DayFolder day, Act act) {
        if (revisions.latest(Subject.DAY, dayId).isEmpty()) {
            throw new IllegalArgumentException("no test day " + dayId + " in the archive");
        }
        return new Intake(this)
                .take(new DayFolder(dayId, day.texts(), day.recordings()), act, clock.instant(), "revised");
    }

    /// The test days, latest first.
    public List<DayEntry> days() {
        return figures.days();
    }

    public Optional<DayEntry> entry(String dayId) {
        return figures.day(dayId);
    }

    /// A test day's files as they stand now.
    public Optional<StoredDay> day(String dayId) {
        return revisions.latest(Subject.DAY, dayId).map(this::stored);
    }

    /// A test day's files as they stood after an earlier revision.
    public Optional<StoredDay> day(String dayId, long revision) {
        return revisions.one(Subject.DAY, dayId, revision).map(this::stored);
    }

    /// A test day with its traces, runs and budgets, computed from its files; empty when there is no such
    /// day or its own files cannot be used.
    public Optional<DayReduction.Result.Reduced> reduced(String dayId) {
        return day(dayId).map(this::reduce).flatMap(Archive::reducedOf);
    }

    /// The bikes of all days that could be reduced, by title.
    public List<BikeEntry> bikes() {
        return figures.bikes();
    }

    public Optional<BikeEntry> bike(String id) {
        return bikes().stream().filter(bike -> bike.id().equals(id)).findFirst();
    }

    /// Every bike with its specification, as the folder of its latest reduced day describes it, by id.
    public SortedMap<String, Bike> described() {
        return figures.described();
    }

    /// One bike with its specification.
    public Optional<Bike> describe(String id) {
        return Optional.ofNullable(figures.described().get(id));
    }

    /// Figures of the current trial versions; see [FigureQuery] for which.
    public List<StoredFigure> figures(FigureQuery query) {
        return figures.query(query);
    }

    /// A text that changes whenever a figure or a ledger does, by whichever process.
    public String stateOfFigures() {
        return figures.state();
    }

    /// Keeps a ledger's file. The same bytes again make no revision; what stood under the name before stays in the
    /// history and no longer counts.
    public LedgerReport importLedger(String name, byte[] bytes, Act act) {
        return ledgers.take(new Ledgers.File(name, bytes), act, clock.instant(), "imported");
    }

    /// The results of earlier years of a figure, of the latest revision of every ledger.
    public List<LedgerEntry> ledger(String figureId) {
        return ledgers.all().stream()
                .flatMap(ledger -> ledger.entries().stream())
                .filter(entry -> entry.figure().id().equals(figureId))
                .toList();
    }

    /// Every ledger as it stands now, with what was noticed in it.
    public List<Ledger> ledgers() {
        return ledgers.all();
    }

    /// Keeps the sheet that was sent to a bike's maker, with the day it was sent and the day an answer is due.
    public SentReply keepSent(SentReply.Sheet sheet, Act act) {
        return replies.keep(sheet, act, clock.instant());
    }

    /// What was sent to a bike's maker, oldest first.
    public List<SentReply> sent(String bike) {
        return replies.of(bike);
    }

    /// The sentences of a bike, or of every bike where it is empty, as they were last seen, by id.
    public List<SeenSentence> seenSentences(String bike) {
        return sentences.latest(bike);
    }

    /// Keeps sentences as seen now; what was seen before stays.
    public void seeSentences(List<SeenSentence> seen, Act act) {
        database.inTransaction(() -> {
            sentences.add(seen, clock.instant(), act.who());
            return seen.size();
        });
    }

    /// Everything that was done, oldest first.
    public List<HistoryEntry> history() {
        return revisions.history();
    }

    /// What was done to one day or ledger, oldest first.
    public List<HistoryEntry> history(Subject subject, String name) {
        return history().stream()
                .filter(entry ->
                        entry.subject().equals(subject.id()) && entry.name().equals(name))
                .toList();
    }

    /// Checks every kept file against its hash and every figure against the files it is made from; changes
    /// nothing.
    public Recomputation recompute(Progress progress) {
        return new Recomputing(this, progress).all();
    }

    /// Reduces again every day whose figures are missing or of another method, and says which.
    public List<String> renew(Progress progress) {
        var days = figures.outOfDate();
        for (int i = 0; i < days.size(); i++) {
            progress.step(days.get(i), i, days.size());
            day(days.get(i)).ifPresent(stored -> new Intake(this).reduce(stored));
        }
        return days;
    }

    /// Writes everything as plain files into an empty folder; [ArchiveExport#bringIn] takes them in again.
    public void export(Path target, Progress progress) throws IOException {
        ArchiveExport.write(this, target, progress);
    }

    /// The content store, for showing a file's bytes or checking its hash.
    public ContentStore content() {
        return content;
    }

    /// Files that were sent ahead of the form that names them.
    public WaitingFiles waiting() {
        return waiting;
    }

    @Override
    public void close() {
        reductions.clear();
    }

    Database database() {
        return database;
    }

    Revisions revisions() {
        return revisions;
    }

    Figures figureTable() {
        return figures;
    }

    SeenSentences sentenceTable() {
        return sentences;
    }

    Ledgers ledgerTable() {
        return ledgers;
    }

    Replies replyTable() {
        return replies;
    }

    StoredDay stored(Revision revision) {
        var texts = new TreeMap<String, byte[]>();
        var recordings = new TreeMap<String, DayFolder.ByteSource>();
        revision.files().forEach((path, file) -> {
            if (path.startsWith(RECORDINGS)) {
                recordings.put(path.substring(RECORDINGS.length()), () -> content.open(file.sha256()));
            } else {
                texts.put(path, read(revision.name() + "/" + path, file.sha256()));
            }
        });
        return new StoredDay(revision.name(), revision, new DayFolder(revision.name(), texts, recordings));
    }

    private byte[] read(String path, String sha256) {
        try {
            return content.read(sha256);
        } catch (IOException trouble) {
            throw new UncheckedIOException(path + ": " + trouble.getMessage(), trouble);
        }
    }

    /// Keeps all files of a folder in the content store.
    SortedMap<String, Revision.StoredFile> keep(DayFolder day) throws IOException {
        var files = new TreeMap<String, Revision.StoredFile>();
        for (var text : day.texts().entrySet()) {
            files.put(text.getKey(), content.put(new ByteArrayInputStream(text.getValue())));
        }
        for (var recording : day.recordings().entrySet()) {
            try (var bytes = recording.getValue().open()) {
                files.put(RECORDINGS + recording.getKey(), content.put(bytes));
            }
        }
        return files;
    }

    /// Reduces a stored day; the last few reductions are remembered, by revision.
    DayReduction.Result reduce(StoredDay stored) {
        String key = stored.id() + " " + stored.revision().number();
        synchronized (reductions) {
            var known = reductions.get(key);
            if (known != null) {
                return known;
            }
        }
        var result = reduceAnew(stored);
        synchronized (reductions) {
            reductions.put(key, result);
            if (reductions.size() > KEPT_REDUCTIONS) {
                reductions.remove(reductions.keySet().iterator().next());
            }
        }
        return result;
    }

    /// Reduces a stored day without remembering it.
    DayReduction.Result reduceAnew(StoredDay stored) {
        try {
            return reducer.reduce(stored.folder());
        } catch (IOException trouble) {
            throw new UncheckedIOException(stored.id() + ": " + trouble.getMessage(), trouble);
        }
    }

    static Optional<DayReduction.Result.Reduced> reducedOf(DayReduction.Result result) {
        return switch (result) {
            case DayReduction.Result.Reduced reduced -> Optional.of(reduced);
            case DayReduction.Result.Unusable _ -> Optional.empty();
        };
    }
}
