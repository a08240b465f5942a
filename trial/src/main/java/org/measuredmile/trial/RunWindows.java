package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.RecordingPart;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.RunResult.Stretch;

/// Where runs lie whose ends a person set: each is what lies between them, and nothing else.
///
/// Shape: by run id; the first file of recordings.csv that gives a run its ends holds it.
public record RunWindows(SortedMap<String, Stretch> byRun, List<Finding> findings) {
    public RunWindows {
        byRun = Collections.unmodifiableSortedMap(new TreeMap<>(byRun));
        findings = List.copyOf(findings);
    }

    /// The windows of a day's runs of one trial.
    static RunWindows of(TestDay day, List<Run> runs) {
        var byRun = new TreeMap<String, Stretch>();
        var findings = new ArrayList<Finding>();
        for (Run run : runs) {
            for (RecordingEntry entry : day.recordings()) {
                var window = entry.window(run.id());
                if (window.isPresent() && byRun.containsKey(run.id())) {
                    findings.add(Finding.warning(
                            "ends-in-two-recordings",
                            Place.in(entry.file()),
                            "run " + run.id() + " has its ends in "
                                    + byRun.get(run.id()).recording() + " already, which are taken",
                            "take the ends out of one of the two in recordings.csv"));
                } else {
                    window.ifPresent(one -> byRun.put(run.id(), new Stretch(entry.file(), one.fromS(), one.toS())));
                }
            }
        }
        findings.addAll(overlaps(byRun));
        return new RunWindows(byRun, findings);
    }

    private static List<Finding> overlaps(SortedMap<String, Stretch> byRun) {
        var findings = new ArrayList<Finding>();
        byRun.forEach((run, stretch) -> byRun.tailMap(run + "\0").forEach((other, of) -> {
            if (of.recording().equals(stretch.recording()) && of.overlaps(stretch.fromS(), stretch.toS())) {
                double fromS = Math.max(stretch.fromS(), of.fromS());
                double toS = Math.min(stretch.toS(), of.toS());
                findings.add(Finding.warning(
                        "runs-overlap",
                        Place.atTime(stretch.recording(), fromS),
                        "run " + run + " and run " + other + " have " + seconds(toS - fromS)
                                + " in common; what lies there is used twice",
                        "move the end of one of them, or void one"));
            }
        }));
        return findings;
    }

    /// Where a run lies, when its ends were set.
    public Optional<Stretch> of(String run) {
        return Optional.ofNullable(byRun.get(run));
    }

    /// Whether a stretch of a recording is somebody's run already, in part or whole.
    boolean hold(String recording, double fromS, double toS) {
        return byRun.values().stream().anyMatch(one -> one.recording().equals(recording) && one.overlaps(fromS, toS));
    }

    /// Which runs have their ends in a recording, in the order written.
    public List<Run> in(String recording, List<Run> runs) {
        return runs.stream()
                .filter(run -> of(run.id())
                        .filter(one -> one.recording().equals(recording))
                        .isPresent())
                .toList();
    }

    /// A recording without the stretches that are somebody's run already.
    public Recording outside(Recording recording) {
        var rest = recording;
        for (Stretch one : byRun.values()) {
            if (one.recording().equals(recording.name())) {
                rest = RecordingPart.without(rest, one.fromS(), one.toS());
            }
        }
        return rest;
    }

    /// A stretch in words, for reasons.
    public static String words(Stretch stretch) {
        return "between " + seconds(stretch.fromS()) + " and " + seconds(stretch.toS()) + " of " + stretch.recording();
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f s", value);
    }

    /// The picture of a stretch in which nothing was found: its samples alone.
    static Optional<Trace> samples(Recording recording, Stretch stretch) {
        var part = RecordingPart.between(recording, stretch.fromS(), stretch.toS());
        return SpeedSource.best(part)
                .filter(source -> source.channel().size() > 1)
                .map(source -> {
                    double[] times = source.channel().timesS().clone();
                    for (int i = 0; i < times.length; i++) {
                        times[i] -= stretch.fromS();
                    }
                    var line = new Trace.Line(
                            Trace.Role.SAMPLES,
                            source.kind().title(),
                            times,
                            source.channel().values());
                    var end = new Trace.Event("end", stretch.toS() - stretch.fromS(), 0, OptionalDouble.empty());
                    return new Trace(
                            recording.name(),
                            stretch.fromS(),
                            "beginning",
                            QuantityKind.SPEED,
                            List.of(line),
                            List.of(end));
                });
    }
}
