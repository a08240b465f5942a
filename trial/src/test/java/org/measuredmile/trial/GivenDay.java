package org.measuredmile.trial;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.day.Window;

/// A test day put together by a test, one line for each thing written down, and the outcome of one trial on it.
public final class GivenDay {
    private final Trial trial;
    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<Instrument> instruments = new ArrayList<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private final List<SpecLine> spec = new ArrayList<>();
    private final TreeMap<String, Recording> recordings = new TreeMap<>();
    private OptionalDouble windMps = OptionalDouble.empty();
    private OptionalInt levels = OptionalInt.empty();
    private Optional<PreRideCheck> check = Optional.empty();

    private GivenDay(Trial trial) {
        this.trial = trial;
    }

    public static GivenDay of(Trial trial) {
        return new GivenDay(trial);
    }

    /// A confirmed run with a variant as in runs.csv.
    public GivenDay run(String id, String variant, String direction) {
        return run(id, variant, direction, Run.State.CONFIRMED, "");
    }

    public GivenDay run(String id, String variant, String direction, Run.State state, String reason) {
        var said = Variant.NONE;
        for (String pair : variant.isEmpty() ? new String[0] : variant.split(" ")) {
            said = said.with(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
        }
        runs.add(new Run(
                id,
                trial.declaration().id(),
                RunScreen.completed(trial.declaration(), said),
                "R1",
                Optional.empty(),
                "",
                direction,
                state,
                reason,
                "",
                Place.atLine("runs.csv", runs.size() + 2L)));
        return this;
    }

    public GivenDay reading(String run, String name, String written) {
        return reading(run, name, written, "");
    }

    public GivenDay reading(String run, String name, String written, String instrument) {
        readings.add(new Reading(
                run,
                name,
                written,
                "",
                instrument,
                Optional.empty(),
                "",
                "",
                Place.atLine("readings.csv", readings.size() + 2L)));
        return this;
    }

    public GivenDay instrument(Instrument.Kind kind, double resolution, double factor, double standardUncertainty) {
        instruments.add(new Instrument(
                kind.id() + "-1",
                kind,
                OptionalDouble.of(resolution),
                Optional.of(new Instrument.Calibration(factor, standardUncertainty, Optional.empty())),
                OptionalDouble.empty(),
                OptionalDouble.empty()));
        return this;
    }

    /// An instrument whose scale nobody knows, called as its kind with `-1`.
    public GivenDay uncalibrated(Instrument.Kind kind, OptionalDouble delayS) {
        instruments.add(new Instrument(
                kind.id() + "-1", kind, OptionalDouble.empty(), Optional.empty(), delayS, OptionalDouble.empty()));
        return this;
    }

    /// A camera called `camera-1` of a frame rate as in day.yaml; of an unknown one where the text is empty.
    public GivenDay camera(String frameRate) {
        instruments.add(new Instrument(
                "camera-1",
                Instrument.Kind.CAMERA,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                FrameRate.parse(frameRate),
                List.of()));
        return this;
    }

    public GivenDay recording(Recording recording, String instrument, String... runIds) {
        recordings.put(recording.name(), recording);
        entries.add(new RecordingEntry(recording.name(), instrument, List.of(runIds), 0, ""));
        return this;
    }

    /// Both ends of a run, in seconds of a recording that is there already.
    public GivenDay window(String file, String run, double fromS, double toS) {
        entries.replaceAll(entry -> entry.file().equals(file) ? entry.naming(run, new Window(fromS, toS)) : entry);
        return this;
    }

    /// With the pre-ride check ticked by two people.
    public GivenDay checked() {
        check = Optional.of(new PreRideCheck("M1", "T1", "08:40"));
        return this;
    }

    public GivenDay wind(double mps) {
        windMps = OptionalDouble.of(mps);
        return this;
    }

    public GivenDay bikeLevels(int count) {
        levels = OptionalInt.of(count);
        return this;
    }

    public GivenDay claims(String item, String value, String unit) {
        spec.add(new SpecLine(item, value, unit, "", "", "", "", "", "", Place.in("spec.csv")));
        return this;
    }

    public TrialInput input() {
        return input(ScatterRecord.DECLARED_PRIORS);
    }

    public TrialInput input(ScatterRecord scatter) {
        var none = Conditions.UNKNOWN;
        var conditions = new Conditions(
                none.airTemperatureK(),
                none.pressurePa(),
                none.relativeHumidity(),
                windMps,
                "",
                "",
                none.stateOfCharge(),
                none.batteryTemperatureK());
        var day = new TestDay(
                "2031-05-14-given",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "given",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                check,
                conditions,
                instruments,
                List.of(),
                List.of(),
                runs,
                readings,
                entries);
        var known = Bike.known("given");
        var bike = new Bike(
                known.id(),
                "",
                "",
                OptionalInt.empty(),
                "",
                "",
                "unknown",
                levels,
                "",
                known.price(),
                known.loan(),
                spec);
        var resolved = ReadingResolver.resolve(trial.declaration(), day);
        return new TrialInput(day, bike, runs, resolved, recordings, scatter, new TreeMap<>());
    }

    public Outcome reduced() {
        return trial.reduce(input());
    }

    /// The one figure of an id and a variant, as on a command line.
    public static Figure figure(Outcome outcome, String key) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(key + " is not among "
                        + outcome.figures().stream()
                                .map(figure -> figure.key().text())
                                .toList()));
    }
}
