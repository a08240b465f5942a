package org.measuredmile.trial.braking;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.day.Window;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingResolver;
import org.measuredmile.trial.ScatterRecord;
import org.measuredmile.trial.TrialInput;

/// Builds braking days in memory, for the tests of this package.
final class BrakingDays {
    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<Recording> recordings = new ArrayList<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private Optional<PreRideCheck> check = Optional.of(new PreRideCheck("mechanic", "tester", "08:40"));

    static BrakingDays day() {
        return new BrakingDays();
    }

    BrakingDays withoutCheck() {
        check = Optional.empty();
        return this;
    }

    BrakingDays taped(String id, String distance, String entry) {
        return run(id, "tape", Run.State.CONFIRMED, "")
                .reading(id, "entry-speed", entry)
                .reading(id, "stopping-distance", distance);
    }

    BrakingDays run(String id, String method, Run.State state, String reason) {
        runs.add(new Run(
                id,
                "braking",
                Variant.of("method", method).with("surface", "dry").with("nominal", "20-mph"),
                "R1",
                Optional.empty(),
                "",
                "",
                state,
                reason,
                "",
                Place.atLine("runs.csv", runs.size() + 2)));
        return this;
    }

    BrakingDays reading(String run, String name, String value) {
        readings.add(new Reading(
                run,
                name,
                value,
                "",
                "",
                Optional.empty(),
                "T1",
                "",
                Place.atLine("readings.csv", readings.size() + 2)));
        return this;
    }

    BrakingDays recording(Recording recording, String... holding) {
        recordings.add(recording);
        entries.add(new RecordingEntry(recording.name(), "", List.of(holding), 0, ""));
        return this;
    }

    /// Both ends of a run, in seconds of a recording that is there already.
    BrakingDays window(String file, String run, double fromS, double toS) {
        entries.replaceAll(entry -> entry.file().equals(file) ? entry.naming(run, new Window(fromS, toS)) : entry);
        return this;
    }

    Outcome reduce() {
        return new Braking().reduce(input());
    }

    TrialInput input() {
        var conditions = new Conditions(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(1.0),
                "",
                "dry",
                OptionalDouble.empty(),
                OptionalDouble.empty());
        var day = new TestDay(
                "day",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                check,
                conditions,
                List.of(),
                List.of(),
                List.of(),
                runs,
                readings,
                entries);
        var byName = new TreeMap<String, Recording>();
        recordings.forEach(one -> byName.put(one.name(), one));
        return new TrialInput(
                day,
                Bike.known("bike"),
                runs,
                ReadingResolver.resolve(Braking.DECLARATION, day),
                byName,
                ScatterRecord.DECLARED_PRIORS,
                new TreeMap<>());
    }

    /// A recording with channels of the given kinds.
    static Recording recording(String name, Channel... channels) {
        var times = channels[0].timesS();
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                times.length,
                times,
                List.of(new Segment(times[0], times[times.length - 1])),
                List.of(channels),
                new TreeMap<>(),
                List.of());
    }

    static Channel speed(double[] times, double[] values) {
        return new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, values));
    }
}
