package org.measuredmile.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.RecordingPart;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.RunResult.Stretch;

/// Looks for a trial's candidates: in the stretch of each run whose ends a person set, and in all that these leave.
final class CandidateSearch<C extends Candidate> {
    private final TrialInput input;
    private final CandidateFinder<C> finder;
    private final RunWindows windows;
    private final List<Finding> findings = new ArrayList<>();
    private final SortedMap<String, C> inWindows = new TreeMap<>();
    private final SortedMap<String, String> whyNone = new TreeMap<>();

    CandidateSearch(TrialInput input, CandidateFinder<C> finder) {
        this.input = input;
        this.finder = finder;
        this.windows = input.windows();
        windows.byRun().forEach(this::look);
    }

    /// The candidate of each run with both its ends, where there is one.
    SortedMap<String, C> inWindows() {
        return inWindows;
    }

    /// Why a run with both its ends has no candidate.
    SortedMap<String, String> whyNone() {
        return whyNone;
    }

    List<Finding> findings() {
        return findings;
    }

    /// Whether a run's ends were set, so that it is looked for nowhere else.
    boolean isSet(Run run) {
        return windows.of(run.id()).isPresent();
    }

    private void look(String run, Stretch stretch) {
        var recording = Optional.ofNullable(input.recordings().get(stretch.recording()));
        if (recording.isEmpty()) {
            whyNone.put(run, "the recording " + stretch.recording() + ", which holds its ends, could not be read");
            return;
        }
        var part = RecordingPart.between(recording.get(), stretch.fromS(), stretch.toS());
        var found =
                SpeedSource.best(part).map(source -> finder.find(part, source)).orElse(List.of());
        var good = found.stream().filter(Candidate::qualifies).toList();
        if (found.isEmpty()) {
            whyNone.put(run, nothing(recording.get(), part, stretch));
        } else if (good.size() > 1) {
            whyNone.put(
                    run,
                    good.size() + " " + finder.word() + "s lie " + RunWindows.words(stretch)
                            + ", a run is one: split it, or move its ends");
        } else {
            inWindows.put(run, good.isEmpty() ? found.getFirst() : good.getFirst());
        }
    }

    private String nothing(Recording whole, Recording part, Stretch stretch) {
        if (part.timesS().length > 0) {
            return "no " + finder.word() + " lies " + RunWindows.words(stretch);
        }
        double[] times = whole.timesS();
        return "nothing was recorded " + RunWindows.words(stretch)
                + (times.length == 0
                        ? ""
                        : String.format(
                                Locale.ROOT, ", which runs from %.2f s to %.2f s", times[0], times[times.length - 1]));
    }

    /// The candidates of every recording that may hold runs of this trial, but for those that overlap a run whose
    /// ends were set.
    SortedMap<String, List<C>> elsewhere() {
        var byRecording = new TreeMap<String, List<C>>();
        for (var recording : input.recordingsToSearch()) {
            byRecording.put(
                    recording.name(),
                    all(recording).stream()
                            .filter(one -> !windows.hold(recording.name(), one.beginS(), one.endS()))
                            .toList());
        }
        return byRecording;
    }

    private List<C> all(Recording recording) {
        var place = Place.in(recording.name());
        var source = SpeedSource.best(recording);
        if (source.isEmpty()) {
            if (!input.runsIn(recording).isEmpty()) {
                findings.add(Finding.refused(
                        "no-speed", place, "the recording has neither speed nor positions", finder.withoutSpeed()));
            }
            return List.of();
        }
        var found = finder.find(recording, source.get());
        if (!found.isEmpty()) {
            finder.tooCoarse(place, source.get()).ifPresent(findings::add);
        }
        return found;
    }
}
