package org.measuredmile.demo;

import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayWriter;
import org.measuredmile.recording.day.NotRidden;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// A test day of the invented fleet while it is being ridden: runs, readings and recordings are added in the order in
/// which they happen, and the folder is written at the end.
final class DayScript {
    private final Fleet.Member member;
    private final LocalDate date;
    private final String rider;
    private final RandomGenerator random;
    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private final SortedMap<String, byte[]> files = new TreeMap<>();
    private final List<NotRidden> notRidden = new ArrayList<>();
    private LocalTime clock = LocalTime.of(9, 30);

    DayScript(Fleet.Member member, LocalDate date, String rider, RandomGenerator random) {
        this.member = member;
        this.date = date;
        this.rider = rider;
        this.random = random;
    }

    /// How a run is to be written down.
    record Line(String trial, Variant variant, String course, String direction, Run.State state, String reason) {
        static Line confirmed(String trial, Variant variant) {
            return new Line(trial, variant, "", "", Run.State.CONFIRMED, "");
        }

        Line on(String newCourse, String newDirection) {
            return new Line(trial, variant, newCourse, newDirection, state, reason);
        }

        Line voided(String newReason) {
            return new Line(trial, variant, course, direction, Run.State.VOID, newReason);
        }

        Line proposed() {
            return new Line(trial, variant, course, direction, Run.State.PROPOSED, "");
        }
    }

    Fleet.Member member() {
        return member;
    }

    RandomGenerator random() {
        return random;
    }

    /// The code of the day's rider.
    String rider() {
        return rider;
    }

    /// The instant that the next run starts at.
    Instant now() {
        return date.atTime(clock).atZone(Town.ZONE).toInstant();
    }

    void pass(double seconds) {
        clock = clock.plusSeconds(Math.round(seconds));
    }

    /// Writes a run that starts now, and gives its id.
    String run(Line line) {
        // A climb begins with the same letter.
        char letter = line.trial().equals("coastdown") ? 'f' : line.trial().charAt(0);
        String id = letter + String.format(Locale.ROOT, "-%02d", countOf(line.trial()) + 1);
        runs.add(new Run(
                id,
                line.trial(),
                line.variant(),
                rider,
                Optional.of(now()),
                line.course(),
                line.direction(),
                line.state(),
                line.reason(),
                "",
                Place.NOWHERE));
        return id;
    }

    private long countOf(String trial) {
        return runs.stream().filter(run -> run.trial().equals(trial)).count();
    }

    void reading(String run, String name, String value, String instrument) {
        readings.add(new Reading(run, name, value, "", instrument, Optional.of(now()), rider, "", Place.NOWHERE));
    }

    void recording(String file, byte[] bytes, String instrument, List<String> ofRuns) {
        files.put(file, bytes);
        entries.add(new RecordingEntry(file, instrument, ofRuns, 0, ""));
    }

    /// A recording that was made and is not there any more.
    void lostRecording(String file, String instrument, List<String> ofRuns, String note) {
        entries.add(new RecordingEntry(file, instrument, ofRuns, 0, note));
    }

    void notRidden(String trial, Variant variant, String reason) {
        notRidden.add(new NotRidden(trial, variant, reason));
    }

    /// The folder, written as a crew's own would be.
    DayFolder folder(Configuration configuration, Conditions conditions) {
        String bike = member.bike().id();
        var day = new TestDay(
                date + "-" + bike,
                date,
                Town.ZONE,
                Town.NAME,
                bike,
                configuration,
                Town.crew(),
                Town.riders(),
                Optional.of(new PreRideCheck(rider, "M1", "09:10")),
                conditions,
                Town.instruments(),
                Town.courses(),
                notRidden,
                runs,
                readings,
                entries);
        SortedMap<String, DayFolder.ByteSource> recordings = new TreeMap<>();
        files.forEach((name, bytes) -> recordings.put(name, () -> new ByteArrayInputStream(bytes)));
        return new DayFolder(day.id(), DayWriter.write(day, member.bike()), recordings);
    }
}
