package org.measuredmile.desk.web.edit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Window;
import org.measuredmile.recording.reader.Decoding;
import org.measuredmile.trial.DayReduction;
import org.measuredmile.trial.RunResult;

/// What can be done to a day's runs: add one, confirm one that was found, void one, tick the check.
public final class Runs {
    private Runs() {}

    /// The id for a trial's next run, free in the whole day: counted on from the trial's last (b-06, b-07), else a
    /// plain number.
    public static String nextId(DayReduction.Result.Reduced reduced, String trial) {
        return nextId(reduced, reduced.day(), trial);
    }

    static String nextId(DayReduction.Result.Reduced reduced, TestDay day, String trial) {
        var taken = new TreeSet<String>();
        day.runs().forEach(run -> taken.add(run.id()));
        reduced.outcomes().values().forEach(outcome -> outcome.runs().forEach(run -> taken.add(run.run())));
        String last = day.runs().stream()
                .filter(run -> run.trial().equals(trial))
                .reduce((before, after) -> after)
                .map(Run::id)
                .filter(id -> id.matches("(?s).*\\d{1,6}"))
                .orElse("0");
        String stem = last.replaceAll("\\d{1,6}$", "");
        String digits = last.substring(stem.length());
        int number = Integer.parseInt(digits) + 1;
        while (taken.contains(id(stem, number, digits.length()))) {
            number++;
        }
        return id(stem, number, digits.length());
    }

    private static String id(String stem, int number, int width) {
        String digits = Integer.toString(number);
        return stem + "0".repeat(Math.max(0, width - digits.length())) + digits;
    }

    /// The run that is the same in trial, way, start and readings, under whichever id: one that was sent before.
    public static Optional<String> twin(TestDay day, RunForm.Read.Kept kept) {
        return day.runs().stream()
                .filter(run -> isTwin(run, kept.run()))
                .map(Run::id)
                .filter(id -> written(day.readings().stream()
                                .filter(reading -> reading.run().equals(id))
                                .toList())
                        .containsAll(written(kept.readings())))
                .findFirst();
    }

    private static boolean isTwin(Run one, Run other) {
        return one.trial().equals(other.trial())
                && one.variant().equals(other.variant())
                && one.direction().equals(other.direction())
                && one.start().equals(other.start());
    }

    private static List<String> written(List<Reading> readings) {
        return readings.stream().map(one -> one.name() + " " + one.written()).toList();
    }

    public static TestDay adding(TestDay day, RunForm.Read.Kept kept) {
        var runs = new ArrayList<>(day.runs());
        runs.add(kept.run());
        var readings = new ArrayList<>(day.readings());
        readings.addAll(kept.readings());
        return DayParts.with(day, runs, readings);
    }

    /// Readings that belong to the day, each in place of the one that was there.
    public static TestDay withDayReadings(TestDay day, List<Reading> readings) {
        List<Reading> all = day.readings();
        for (Reading one : readings) {
            all = DayParts.exchanged(
                    all, known -> known.run().isEmpty() && known.name().equals(one.name()), known -> one, one);
        }
        return DayParts.with(day, day.runs(), all);
    }

    /// The day with a run confirmed or void; one that was only found is written down with its recording.
    ///
    /// @param reason the cause, for a void run
    public static TestDay decided(DayReduction.Result.Reduced reduced, RunResult result, Decision decision) {
        return decided(reduced, reduced.day(), result, decision);
    }

    /// The day with several found runs confirmed at once.
    public static TestDay confirmed(DayReduction.Result.Reduced reduced, Map<RunResult, String> trialByRun) {
        TestDay day = reduced.day();
        for (var entry : trialByRun.entrySet()) {
            var decision = new Decision(entry.getValue(), Run.State.CONFIRMED, "");
            day = decided(reduced, day, entry.getKey(), decision);
        }
        return day;
    }

    private static TestDay decided(
            DayReduction.Result.Reduced reduced, TestDay day, RunResult result, Decision decision) {
        if (isWritten(day, result)) {
            var runs = day.runs().stream()
                    .map(run -> run.id().equals(result.run()) ? in(run, decision) : run)
                    .toList();
            return DayParts.with(day, runs, day.readings());
        }
        String id = nextId(reduced, day, decision.trial());
        var runs = new ArrayList<>(day.runs());
        var run = found(reduced, result, id, decision);
        runs.add(run);
        return naming(DayParts.with(day, runs, day.readings()), result, run);
    }

    /// Whether somebody wrote the run down; else the tool found it.
    public static boolean isWritten(TestDay day, RunResult result) {
        return day.runs().stream().anyMatch(run -> run.id().equals(result.run()));
    }

    /// What a person says of a run.
    public record Decision(String trial, Run.State state, String reason) {}

    static Run in(Run run, Decision decision) {
        return new Run(
                run.id(),
                run.trial(),
                run.variant(),
                run.rider(),
                run.start(),
                run.course(),
                run.direction(),
                decision.state(),
                decision.reason(),
                run.note(),
                run.place());
    }

    private static Run found(DayReduction.Result.Reduced reduced, RunResult result, String id, Decision decision) {
        return new Run(
                id,
                decision.trial(),
                result.variant(),
                reduced.day().riders().stream().findFirst().map(Rider::code).orElse(""),
                result.stretch().flatMap(stretch -> start(reduced, stretch)),
                "",
                result.direction(),
                decision.state(),
                decision.reason(),
                "",
                Place.NOWHERE);
    }

    /// When a stretch of a recording began, by the recording's clock set right; nothing where it has no clock.
    static Optional<Instant> start(DayReduction.Result.Reduced reduced, RunResult.Stretch stretch) {
        var decoding = reduced.recordings().get(stretch.recording());
        return decoding instanceof Decoding.Decoded(Recording recording)
                ? recording
                        .start()
                        .map(start -> start.plusMillis(
                                Math.round(1000 * (stretch.fromS() + offsetS(reduced.day(), stretch.recording())))))
                : Optional.empty();
    }

    private static double offsetS(TestDay day, String file) {
        return day.recording(file).map(RecordingEntry::clockOffsetS).orElse(0.0);
    }

    /// The recording's entry names the run with both its ends: what was found is what was confirmed, and other
    /// runs of the recording are found as before.
    private static TestDay naming(TestDay day, RunResult result, Run run) {
        return Windows.of(day, result)
                .map(ends ->
                        Windows.withWindow(day, run.id(), ends.recording(), Window.rounded(ends.fromS(), ends.toS())))
                .orElse(day);
    }

    public static TestDay checked(TestDay day, PreRideCheck check) {
        return DayParts.checked(day, check);
    }
}
