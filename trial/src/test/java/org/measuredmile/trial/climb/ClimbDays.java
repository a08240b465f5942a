package org.measuredmile.trial.climb;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import net.sf.geographiclib.Geodesic;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.Course.Gate;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.recording.day.CourseHeights;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.PreRideCheck;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.recording.day.Window;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingResolver;
import org.measuredmile.trial.ScatterRecord;
import org.measuredmile.trial.TrialInput;

/// Builds days of climbs in memory, on a hill of 300 m whose gates lie 100 m and 400 m along a straight road.
final class ClimbDays {
    private static final double BEARING = 63;

    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<Course> courses = new ArrayList<>();
    private final TreeMap<String, Recording> recordings = new TreeMap<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private final List<Instrument> instruments = new ArrayList<>();
    private final TreeMap<FigureKey, Figure> used = new TreeMap<>();
    private double riderKg = 80;
    private OptionalDouble windMps = OptionalDouble.of(0);

    static ClimbDays onTheHill() {
        return onAHill(300, 18);
    }

    static ClimbDays onAHill(double lengthM, double riseM) {
        return onAHill(lengthM, riseM, CourseHeights.NONE);
    }

    static ClimbDays onAHill(double lengthM, double riseM, CourseHeights heights) {
        var day = new ClimbDays();
        day.courses.add(new Course(
                "hill",
                "climb",
                Optional.of(new Surveyed(lengthM, 0.1)),
                Optional.of(new Surveyed(riseM, 0.05)),
                Optional.of(gate(100)),
                Optional.of(gate(400)),
                heights.isEmpty() ? "" : "hill-heights.csv",
                Optional.empty(),
                "",
                heights));
        return day;
    }

    static ClimbDays withoutCourse() {
        return new ClimbDays();
    }

    private static Gate gate(double alongM) {
        var at = Geodesic.WGS84.Direct(45, 10, BEARING, alongM);
        return new Gate(at.lat2, at.lon2, at.azi2);
    }

    ClimbDays rider(double kg) {
        riderKg = kg;
        return this;
    }

    ClimbDays camera(String frameRate) {
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

    /// A figure of another trial, known to a standard uncertainty.
    ClimbDays used(String figure, Variant variant, QuantityKind kind, double value, double sd) {
        var key = new FigureKey(figure, variant);
        var known = Budget.of(Contribution.typeB("given", sd)).around(value);
        String trial = figure.substring(0, figure.indexOf('.'));
        used.put(
                key,
                new Figure(
                        key, kind, trial, 1, value, known, known, List.of(), List.of(), List.of(), List.of(), List.of(),
                        List.of(), List.of()));
        return this;
    }

    ClimbDays weighed(double kg) {
        return used("weighin.mass", Variant.of("battery", "in"), QuantityKind.MASS, kg, 0.05);
    }

    ClimbDays run(String id, String drive) {
        return run(id, drive, Run.State.CONFIRMED, "");
    }

    ClimbDays run(String id, String drive, Run.State state, String reason) {
        runs.add(new Run(
                id,
                "climb",
                Variant.of("drive", drive),
                "R1",
                Optional.empty(),
                courses.isEmpty() ? "" : "hill",
                "",
                state,
                reason,
                "",
                Place.atLine("runs.csv", runs.size() + 2L)));
        return this;
    }

    ClimbDays reading(String run, String name, String value) {
        readings.add(new Reading(
                run,
                name,
                value,
                "",
                "",
                Optional.empty(),
                "T1",
                "",
                Place.atLine("readings.csv", readings.size() + 2L)));
        return this;
    }

    ClimbDays recording(Recording recording, String... holding) {
        recordings.put(recording.name(), recording);
        entries.add(new RecordingEntry(recording.name(), "", List.of(holding), 0, ""));
        return this;
    }

    ClimbDays window(String file, String run, double fromS, double toS) {
        entries.replaceAll(entry -> entry.file().equals(file) ? entry.naming(run, new Window(fromS, toS)) : entry);
        return this;
    }

    TrialInput input() {
        var none = OptionalDouble.empty();
        var conditions = new Conditions(
                OptionalDouble.of(293.15),
                OptionalDouble.of(100_000),
                OptionalDouble.of(0.5),
                windMps,
                "",
                "dry",
                OptionalDouble.of(0.9),
                none);
        var day = new TestDay(
                "day",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                List.of(new Rider("R1", OptionalDouble.of(riderKg))),
                Optional.of(new PreRideCheck("mechanic", "tester", "08:40")),
                conditions,
                instruments,
                courses,
                List.of(),
                runs,
                readings,
                entries);
        return new TrialInput(
                day,
                Bike.known("bike"),
                runs,
                ReadingResolver.resolve(Climb.DECLARATION, day),
                recordings,
                ScatterRecord.DECLARED_PRIORS,
                used);
    }

    Outcome reduce() {
        return new Climb().reduce(input());
    }

    static Figure figure(Outcome outcome, String key) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(key + " is not among "
                        + outcome.figures().stream()
                                .map(figure -> figure.key().text())
                                .toList()));
    }

    static Finding finding(Outcome outcome, String code) {
        return outcome.findings().stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " is not among "
                        + outcome.findings().stream().map(Finding::code).toList()));
    }

    /// Rides up and down the road once a second: each climb at an even speed from 0 to 480 m along it, then down.
    static Recording ride(String name, boolean withSpeed, double... climbsMps) {
        var random = new Random(5);
        var times = new ArrayList<Double>();
        var along = new ArrayList<Double>();
        var speeds = new ArrayList<Double>();
        double timeS = 0.3;
        for (double upMps : climbsMps) {
            for (double[] leg : new double[][] {{0, 480, upMps}, {480, 480, 20}, {480, 0, 8}, {0, 0, 20}}) {
                boolean stands = leg[0] == leg[1];
                double seconds = stands ? leg[2] : Math.abs(leg[1] - leg[0]) / leg[2];
                for (double t = 0; t < seconds; t++) {
                    times.add(timeS);
                    along.add(leg[0] + (leg[1] - leg[0]) * t / seconds);
                    speeds.add(stands ? 0 : leg[2] + 0.03 * random.nextGaussian());
                    timeS++;
                }
            }
        }
        return recording(name, withSpeed, times, along, speeds);
    }

    private static Recording recording(
            String name, boolean withSpeed, List<Double> times, List<Double> along, List<Double> speeds) {
        double[] at = numbers(times);
        double[] latitudes = new double[at.length];
        double[] longitudes = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            var spot = Geodesic.WGS84.Direct(45, 10, BEARING, along.get(i));
            latitudes[i] = spot.lat2;
            longitudes[i] = spot.lon2;
        }
        var channels = new ArrayList<Channel>();
        channels.add(channel(ChannelKind.LATITUDE, at, latitudes));
        channels.add(channel(ChannelKind.LONGITUDE, at, longitudes));
        if (withSpeed) {
            channels.add(channel(ChannelKind.SPEED, at, numbers(speeds)));
        }
        return new Recording(
                name,
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                at.length,
                at,
                List.of(new Segment(at[0], at[at.length - 1])),
                channels,
                new TreeMap<>(),
                List.of());
    }

    private static Channel channel(ChannelKind kind, double[] times, double[] values) {
        return new Channel(kind, kind.name(), "", new Channel.Series(times, values));
    }

    private static double[] numbers(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
