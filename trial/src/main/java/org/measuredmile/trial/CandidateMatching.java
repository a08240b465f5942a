package org.measuredmile.trial;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;

/// Which candidate in a recording is which run that was written down: by the ends that a person set, by the run's
/// start time, else by order where that leaves no choice.
///
/// Shape: `byRun` by run id; `whyNone` says of runs with both ends why nothing of theirs can be told; `left` are
/// candidates that no written run claims, in order of recording and time. A candidate that qualifies is taken before
/// one that does not, but a run with both ends has none outside them.
public record CandidateMatching<C extends Candidate>(
        SortedMap<String, C> byRun, SortedMap<String, String> whyNone, List<C> left, List<Finding> findings) {
    /// A written start may lie so long before the beginning of its candidate, s.
    private static final double LONGEST_RUN_UP_S = 120;
    /// A written start may lie so long after the beginning of its candidate, for clocks differ, s.
    private static final double CLOCK_SLACK_S = 10;

    public CandidateMatching {
        byRun = Collections.unmodifiableSortedMap(new TreeMap<>(byRun));
        whyNone = Collections.unmodifiableSortedMap(new TreeMap<>(whyNone));
        left = List.copyOf(left);
        findings = List.copyOf(findings);
    }

    /// Finds the candidates of the recordings and matches them with the trial's runs.
    public static <C extends Candidate> CandidateMatching<C> of(TrialInput input, CandidateFinder<C> finder) {
        var search = new CandidateSearch<>(input, finder);
        var byRun = new TreeMap<>(search.inWindows());
        var left = new ArrayList<C>();
        var unclear = new ArrayList<Finding>();
        for (var entry : search.elsewhere().entrySet()) {
            var candidates = new ArrayList<>(entry.getValue());
            var runs = runsOf(input, search, entry.getKey(), byRun);
            matchTimed(input, runs, candidates, byRun);
            matchInOrder(entry.getKey(), runs, candidates, byRun, finder.word() + "s")
                    .ifPresent(unclear::add);
            left.addAll(candidates);
        }
        var findings = new ArrayList<>(search.findings());
        findings.addAll(unclear);
        return new CandidateMatching<>(byRun, search.whyNone(), left, findings);
    }

    /// Why a found candidate that could be used does not count beside runs that were written down.
    public static final String BESIDE_WRITTEN = "found beside the written runs; write it into runs.csv to count it";

    /// What a run has in a recording: a candidate, or none; `whyNone` is empty unless its ends were set and
    /// nothing can be told between them.
    public record Held<C extends Candidate>(Optional<C> candidate, String whyNone) {
        /// A candidate that is nobody's run yet.
        public static <C extends Candidate> Held<C> found(C candidate) {
            return new Held<>(Optional.of(candidate), "");
        }
    }

    /// What a run that was written down has.
    public Held<C> of(Run run) {
        return new Held<>(Optional.ofNullable(byRun.get(run.id())), whyNone.getOrDefault(run.id(), ""));
    }

    /// The run that a candidate is proposed as.
    public static Run proposal(Candidate candidate, String trial, Variant variant) {
        String recording = candidate.recording().name();
        return new Run(
                recording + " at " + String.format(Locale.ROOT, "%.2f s", candidate.beginS()),
                trial,
                variant,
                "",
                Optional.empty(),
                "",
                "",
                Run.State.PROPOSED,
                "",
                "",
                Place.atTime(recording, candidate.beginS()));
    }

    /// The runs that a recording may hold and that have no candidate yet.
    private static List<Run> runsOf(
            TrialInput input, CandidateSearch<?> search, String name, SortedMap<String, ?> taken) {
        var recording = Optional.ofNullable(input.recordings().get(name)).orElseThrow();
        var stated = input.runsIn(recording).stream()
                .filter(run -> !search.isSet(run))
                .toList();
        var runs = input.day().recording(name).isPresent() && !stated.isEmpty()
                ? stated
                : input.runs().stream()
                        .filter(run -> !search.isSet(run))
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
        double[] times = recording.timesS();
        double lastS = times.length == 0 ? 0 : times[times.length - 1];
        return start >= -LONGEST_RUN_UP_S && start <= lastS + CLOCK_SLACK_S ? Optional.of(start) : Optional.empty();
    }

    private static <C extends Candidate> void matchTimed(
            TrialInput input, List<Run> runs, List<C> candidates, SortedMap<String, C> byRun) {
        record Timed(Run run, double startS) {}
        var timed = new ArrayList<Timed>();
        for (var run : runs) {
            if (!candidates.isEmpty()) {
                startS(input, run, candidates.getFirst().recording())
                        .ifPresent(start -> timed.add(new Timed(run, start)));
            }
        }
        timed.sort(Comparator.comparingDouble(Timed::startS));
        for (int i = 0; i < timed.size(); i++) {
            double from = timed.get(i).startS() - CLOCK_SLACK_S;
            double next = i + 1 < timed.size() ? timed.get(i + 1).startS() : Double.POSITIVE_INFINITY;
            double to = Math.min(timed.get(i).startS() + LONGEST_RUN_UP_S, Math.max(next, from + 2 * CLOCK_SLACK_S));
            var run = timed.get(i).run();
            var within = candidates.stream()
                    .filter(candidate -> candidate.beginS() >= from && candidate.beginS() <= to)
                    .toList();
            within.stream()
                    .filter(Candidate::qualifies)
                    .findFirst()
                    .or(() -> within.stream().findFirst())
                    .ifPresent(candidate -> {
                        byRun.put(run.id(), candidate);
                        candidates.remove(candidate);
                    });
        }
        runs.removeIf(run -> byRun.containsKey(run.id()));
    }

    private static <C extends Candidate> Optional<Finding> matchInOrder(
            String name, List<Run> runs, List<C> candidates, SortedMap<String, C> byRun, String word) {
        runs.removeIf(run -> run.start().isPresent());
        if (runs.isEmpty() || candidates.isEmpty()) {
            return Optional.empty();
        }
        var good = candidates.stream().filter(Candidate::qualifies).toList();
        var chosen = good.size() == runs.size() ? good : List.copyOf(candidates);
        if (chosen.size() != runs.size()) {
            return Optional.of(Finding.warning(
                    word + "-not-told-apart",
                    Place.in(name),
                    candidates.size() + " candidate " + word + ", " + good.size() + " of them usable, for "
                            + runs.size() + " runs",
                    "write each run's start time in runs.csv"));
        }
        for (int i = 0; i < chosen.size(); i++) {
            byRun.put(runs.get(i).id(), chosen.get(i));
            candidates.remove(chosen.get(i));
        }
        return Optional.empty();
    }
}
