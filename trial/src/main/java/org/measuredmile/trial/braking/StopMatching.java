package org.measuredmile.trial.braking;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.TrialInput;

/// Which candidate stop is which run that was written down: by the run's start time, else by order where that
/// leaves no choice.
///
/// Shape: `byRun` by run id; `left` are candidates that no written run claims, in order of recording and time.
record StopMatching(SortedMap<String, TracedStop> byRun, List<TracedStop> left, List<Finding> findings) {
    /// A written start may lie so long before the onset of its stop, s.
    private static final double LONGEST_RUN_UP_S = 120;
    /// A written start may lie so long after the onset of its stop, for clocks differ, s.
    private static final double CLOCK_SLACK_S = 10;

    StopMatching {
        byRun = Collections.unmodifiableSortedMap(new TreeMap<>(byRun));
        left = List.copyOf(left);
        findings = List.copyOf(findings);
    }

    static StopMatching of(TrialInput input, SortedMap<String, List<TracedStop>> byRecording) {
        var byRun = new TreeMap<String, TracedStop>();
        var left = new ArrayList<TracedStop>();
        var findings = new ArrayList<Finding>();
        for (var entry : byRecording.entrySet()) {
            var stops = new ArrayList<>(entry.getValue());
            var runs = runsOf(input, entry.getKey(), byRun);
            matchTimed(input, runs, stops, byRun);
            matchInOrder(entry.getKey(), runs, stops, byRun).ifPresent(findings::add);
            left.addAll(stops);
        }
        return new StopMatching(byRun, left, findings);
    }

    /// The runs that a recording may hold and that have no stop yet.
    private static List<Run> runsOf(TrialInput input, String name, SortedMap<String, TracedStop> taken) {
        var recording = Optional.ofNullable(input.recordings().get(name)).orElseThrow();
        var stated = input.runsIn(recording);
        var runs = input.day().recording(name).isPresent() && !stated.isEmpty()
                ? stated
                : input.runs().stream()
                        .filter(run -> startS(input, run, recording).isPresent())
                        .toList();
        return new ArrayList<>(
                runs.stream().filter(run -> !taken.containsKey(run.id())).toList());
    }

    /// When a run started, on the recording's own time base; nothing when either does not say, or when it lies
    /// outside.
    private static Optional<Double> startS(TrialInput input, Run run, Recording recording) {
        if (run.start().isEmpty() || recording.start().isEmpty()) {
            return Optional.empty();
        }
        double offset = input.day()
                .recording(recording.name())
                .map(RecordingEntry::clockOffsetS)
                .orElse(0.0);
        double start =
                Duration.between(recording.start().get(), run.start().get()).toMillis() / 1000.0 - offset;
        return start >= -LONGEST_RUN_UP_S && start <= recording.spanS() + CLOCK_SLACK_S
                ? Optional.of(start)
                : Optional.empty();
    }

    private static void matchTimed(
            TrialInput input, List<Run> runs, List<TracedStop> stops, SortedMap<String, TracedStop> byRun) {
        record Timed(Run run, double startS) {}
        var timed = new ArrayList<Timed>();
        for (var run : runs) {
            if (!stops.isEmpty()) {
                startS(input, run, stops.getFirst().recording()).ifPresent(start -> timed.add(new Timed(run, start)));
            }
        }
        timed.sort(Comparator.comparingDouble(Timed::startS));
        for (int i = 0; i < timed.size(); i++) {
            double from = timed.get(i).startS() - CLOCK_SLACK_S;
            double next = i + 1 < timed.size() ? timed.get(i + 1).startS() : Double.POSITIVE_INFINITY;
            double to = Math.min(timed.get(i).startS() + LONGEST_RUN_UP_S, Math.max(next, from + 2 * CLOCK_SLACK_S));
            var run = timed.get(i).run();
            var within = stops.stream()
                    .filter(stop -> stop.onsetS() >= from && stop.onsetS() <= to)
                    .toList();
            within.stream()
                    .filter(TracedStop::qualifies)
                    .findFirst()
                    .or(() -> within.stream().findFirst())
                    .ifPresent(stop -> {
                        byRun.put(run.id(), stop);
                        stops.remove(stop);
                    });
        }
        runs.removeIf(run -> byRun.containsKey(run.id()));
    }

    private static Optional<Finding> matchInOrder(
            String name, List<Run> runs, List<TracedStop> stops, SortedMap<String, TracedStop> byRun) {
        runs.removeIf(run -> run.start().isPresent());
        if (runs.isEmpty() || stops.isEmpty()) {
            return Optional.empty();
        }
        var good = stops.stream().filter(TracedStop::qualifies).toList();
        var chosen = good.size() == runs.size() ? good : List.copyOf(stops);
        if (chosen.size() != runs.size()) {
            return Optional.of(Finding.warning(
                    "stops-not-told-apart",
                    Place.in(name),
                    stops.size() + " candidate stops, " + good.size() + " of them usable, for " + runs.size() + " runs",
                    "write each run's start time in runs.csv"));
        }
        for (int i = 0; i < chosen.size(); i++) {
            byRun.put(runs.get(i).id(), chosen.get(i));
            stops.remove(chosen.get(i));
        }
        return Optional.empty();
    }
}
