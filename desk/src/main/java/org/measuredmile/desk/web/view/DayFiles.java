package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.archive.Revision;
import org.measuredmile.archive.StoredDay;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.Trials;

/// Tells what was found in each of a test day's recordings.
final class DayFiles {
    private static final String FOLDER = "recordings/";

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

    private DayView.FileRow row(String path, String name, Revision.StoredFile file) {
        Optional<Decoding> decoding =
                reduced.flatMap(one -> Optional.ofNullable(one.recordings().get(name)));
        Optional<Recording> recording = decoding.flatMap(
                one -> one instanceof Decoding.Decoded(Recording read) ? Optional.of(read) : Optional.empty());
        List<Finding> findings = decoding.map(DayReduction::findingsOf).orElse(List.of());
        boolean asks = findings.stream().anyMatch(one -> one.level() == Finding.Level.WARNING);
        String state = recording.isPresent() ? (asks ? "read, mind" : "read") : "kept, not read";
        return new DayView.FileRow(
                recording.isPresent() ? (asks ? "widened" : "valid") : "refused",
                state,
                name,
                Paths.content(file.sha256(), name.contains("/") ? path.substring(FOLDER.length()) : name),
                recording.map(DayFiles::format).orElse(""),
                recording.map(DayFiles::channels).orElse("none"),
                recording.map(DayFiles::rate).orElse(""),
                recording.map(this::span).orElse(""),
                size(file.bytes()),
                found(name),
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

    private List<String> found(String name) {
        if (reduced.isEmpty()) {
            return List.of();
        }
        var found = new ArrayList<String>();
        for (var trial : Trials.ALL) {
            var outcome = Optional.ofNullable(
                    reduced.get().outcomes().get(trial.declaration().id()));
            long runs = outcome.stream()
                    .flatMap(one -> one.runs().stream())
                    .filter(run -> run.stretch()
                            .filter(stretch -> stretch.recording().equals(name))
                            .isPresent())
                    .count();
            if (runs > 0) {
                found.add(trial.declaration().title() + ": " + Printing.count(runs, "run", "runs"));
            }
        }
        return found;
    }

    private static String size(long bytes) {
        if (bytes < 1_000) {
            return bytes + "\u00a0B";
        }
        return bytes < 1_000_000
                ? Math.round(bytes / 1e3) + "\u00a0kB"
                : String.format(Locale.ROOT, "%.1f\u00a0MB", bytes / 1e6);
    }

    Printing printing() {
        return printing;
    }
}
