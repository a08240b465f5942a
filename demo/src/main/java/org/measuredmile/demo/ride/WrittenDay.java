package org.measuredmile.demo.ride;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// What a simulated crew wrote down of a day.
final class WrittenDay {
    private WrittenDay() {}

    static TestDay of(
            List<Run> runs,
            List<Reading> readings,
            List<Instrument> instruments,
            List<RecordingEntry> recordings,
            Conditions conditions) {
        return of(runs, readings, instruments, recordings, new Ridden(conditions, List.of()));
    }

    /// Under what a day was ridden, and by whom.
    record Ridden(Conditions conditions, List<Rider> riders) {}

    static TestDay of(
            List<Run> runs,
            List<Reading> readings,
            List<Instrument> instruments,
            List<RecordingEntry> recordings,
            Ridden ridden) {
        return new TestDay(
                "simulated",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "simulated",
                Configuration.UNKNOWN,
                List.of(),
                ridden.riders(),
                Optional.of(new PreRideCheck("M1", "T1", "08:40")),
                ridden.conditions(),
                instruments,
                List.of(),
                List.of(),
                runs,
                readings,
                recordings);
    }

    static Run run(String id, String trial, Variant variant, String direction) {
        return new Run(
                id, trial, variant, "R1", Optional.empty(), "", direction, Run.State.CONFIRMED, "", "", Place.NOWHERE);
    }

    static Reading reading(String run, String name, String written) {
        return new Reading(run, name, written, "", "", Optional.empty(), "T1", "", Place.NOWHERE);
    }
}
