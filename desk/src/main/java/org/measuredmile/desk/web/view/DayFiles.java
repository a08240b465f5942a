package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.archive.Revision;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.quantity.UnitSystem;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;

/// Tells what was found in each of a test day's recordings.
final class DayFiles {
    private static final String FOLDER = "recordings/";
    private static final long WIDE = 640;
    private static final long NARROW = 352;
    private static final long CURVE = 80;
    private static final long SKETCH = 170;
    private static final int MOST_RUNS = 6;

    private final Printing printing;
    private final StoredDay stored;
    private final Optional<DayReduction.Result.Reduced> reduced;
    private final List<String> newPaths;

    DayFiles(
            Printing printing, StoredDay stored, Optional<DayReduction.Result.Reduced> reduced, List<String> newPaths) {
        this.printing = printing;
        this.stored = stored;
        this.reduced = reduced;
        this.newPaths = newPaths;
    }

    List<DayView.FileRow> rows() {
        var rows = new ArrayList<DayView.FileRow>();
        stored.revision().files().forEach((path, file) -> {
            if (path.startsWith(FOLDER)) {
                for (String name : recordingsIn(path.substring(FOLDER.length()))) {
                    rows.add(row(path, name, file));
                }
            }
        });
        return rows;
    }

    /// The file itself, or the recordings that lie packed in it.
    private List<String> recordingsIn(String file) {
        var within = reduced.stream()
                .flatMap(one -> one.recordings().keySet().stream())
                .filter(name -> name.equals(file) || name.startsWith(file + "/"))
                .toList();
        return within.isEmpty() ? List.of(file) : within;
    }

    /// One recording of the day by its name, which for a packed one begins with its package's.
    DayView.FileRow row(String name) {
        for (var entry : stored.revision().files().entrySet()) {
            String path = entry.getKey();
            if (path.startsWith(FOLDER)
                    && recordingsIn(path.substring(FOLDER.length())).contains(name)) {
                return row(path, name, entry.getValue());
            }
        }
        throw new IllegalArgumentException("no file " + name + " in day " + stored.id());
    }

    private DayView.FileRow row(String path, String name, Revision.StoredFile file) {
        Optional<Decoding> decoding =
                reduced.flatMap(one -> Optional.ofNullable(one.recordings().get(name)));
        Optional<Recording> recording = decoding.flatMap(
                one -> one instanceof Decoding.Decoded(Recording read) ? Optional.of(read) : Optional.empty());
        List<Finding> findings = decoding.map(DayReduction::findingsOf).orElse(List.of());
        boolean asks = findings.stream().anyMatch(one -> one.level() == Finding.Level.WARNING);
        var drawing = reduced.flatMap(one -> FileDrawing.of(new FileDrawing.Of(printing, stored.id(), one), name));
        String state = recording.isPresent() ? (asks ? "read, mind" : "read") : "kept, not read";
        return new DayView.FileRow(
                recording.isPresent() ? (asks ? "widened" : "valid") : "refused",
                state,
                name,
                drawing.isPresent() ? Paths.file(stored.id(), name) : "",
                Paths.content(file.sha256(), name.contains("/") ? path.substring(FOLDER.length()) : name),
                recording.map(DayFiles::format).orElse(""),
                recording.map(DayFiles::channels).orElse("none"),
                recording.map(DayFiles::rate).orElse(""),
                recording.map(this::span).orElse(""),
                size(file.bytes()),
                drawing.flatMap(this::trace),
                drawing.flatMap(this::track),
                drawing.map(this::found).orElse(List.of()),
                FindingView.of(findings),
                newPaths.contains(path));
    }

    private static String format(Recording recording) {
        String device = recording.device().isEmpty() ? "" : "; " + recording.device();
        return recording.format().title() + device;
    }

    private static String channels(Recording recording) {
        return recording.channels().stream()
                .filter(channel -> !channel.isEmpty())
                .map(channel -> channel.kind() == ChannelKind.OTHER
                        ? "“" + channel.name() + "”"
                        : channel.kind().id().replace('-', ' '))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /// The rate of the channel that is sampled most often, by the middle step between its samples.
    private static String rate(Recording recording) {
        double step = recording.channels().stream()
                .mapToDouble(Channel::medianStepS)
                .filter(one -> one > 0)
                .min()
                .orElse(Double.NaN);
        if (Double.isNaN(step)) {
            return "";
        }
        return step <= 1
                ? String.format(Locale.ROOT, "%.3g", 1 / step).replaceAll("\\.0*$", "") + "\u00a0Hz"
                : "every " + String.format(Locale.ROOT, "%.1f", step).replace(".0", "") + "\u00a0s";
    }

    private String span(Recording recording) {
        double seconds = recording.spanS();
        if (recording.start().isPresent() && reduced.isPresent()) {
            var zone = reduced.get().day().timeZone();
            var start = recording.start().get();
            return Printing.clock(start, zone) + " to "
                    + Printing.clock(start.plusMillis(Math.round(1000 * seconds)), zone);
        }
        return String.format(Locale.ROOT, "%.1f\u00a0s", seconds);
    }

    /// The runs in a file, by trial.
    private List<DayView.FoundIn> found(FileDrawing drawing) {
        var byTrial = new LinkedHashMap<String, List<DayView.FoundRun>>();
        for (FileDrawing.Placed run : drawing.runs()) {
            byTrial.computeIfAbsent(run.trial().title(), title -> new ArrayList<>())
                    .add(new DayView.FoundRun(
                            run.label(),
                            run.word(),
                            RunWords.mark(run.run().state(), run.run().counted()),
                            Paths.file(
                                    stored.id(),
                                    drawing.recording().name(),
                                    run.run().run())));
        }
        return byTrial.entrySet().stream()
                .map(one -> new DayView.FoundIn(
                        one.getKey(),
                        one.getValue().stream().limit(MOST_RUNS).toList(),
                        Math.max(0, one.getValue().size() - MOST_RUNS)))
                .toList();
    }

    private Optional<FileView.Picture> trace(FileDrawing drawing) {
        if (drawing.curve().isEmpty()) {
            return Optional.empty();
        }
        String name = drawing.recording().name();
        String at = Paths.file(stored.id(), name) + "/trace.svg?" + version() + "&h=" + CURVE;
        long height = Math.round(drawing.heightOf(CURVE));
        return Optional.of(new FileView.Picture(
                at + "&w=" + WIDE,
                at + "&w=" + NARROW,
                new FileView.Size(WIDE, height),
                new FileView.Size(NARROW, height),
                drawing.curve().get().words() + " of " + name + " over time, with the runs listed beside it"));
    }

    private Optional<FileView.Picture> track(FileDrawing drawing) {
        if (!drawing.hasTrack()) {
            return Optional.empty();
        }
        String name = drawing.recording().name();
        return Optional.of(track(name, SKETCH));
    }

    /// The sketch of a file's track, as wide as high.
    FileView.Picture track(String name, long width) {
        String at = Paths.file(stored.id(), name) + "/track.svg?" + version() + "&w=" + width + "&h=" + width;
        var size = new FileView.Size(width, width);
        return new FileView.Picture(at, at, size, size, "Where " + name + " went, north up");
    }

    private String version() {
        return version(Long.toString(stored.revision().number()), printing.system());
    }

    /// What of an address makes its drawing the same for good: the day's revision and the units.
    static String version(String revision, UnitSystem system) {
        return "v=" + revision + "&u=" + (system == UnitSystem.METRIC ? "metric" : "imperial");
    }

    private static String size(long bytes) {
        if (bytes < 1_000) {
            return bytes + "\u00a0B";
        }
        return bytes < 1_000_000
                ? Math.round(bytes / 1e3) + "\u00a0kB"
                : String.format(Locale.ROOT, "%.1f\u00a0MB", bytes / 1e6);
    }
}
