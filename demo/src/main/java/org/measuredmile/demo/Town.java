package org.measuredmile.demo;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.measuredmile.demo.ride.HillSession;
import org.measuredmile.demo.ride.RoadLine;
import org.measuredmile.demo.ride.RoadUp;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.CrewMember;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Rider;

/// Wendlesea, a town that does not exist, with its measured roads, its crew and the crew's instruments.
///
/// Shape: the roads lie where charts show open water, so that nobody looks for them.
public final class Town {
    public static final String NAME = "Wendlesea (invented town)";
    public static final ZoneId ZONE = ZoneId.of("America/New_York");

    /// The promenade: straight, level, closed to traffic on test mornings.
    public static final RoadLine PROMENADE = new RoadLine(40.6021, -66.2107, 68, 4.5);

    /// The causeway: longer, for steady riding at each level, both ways.
    public static final RoadLine CAUSEWAY = new RoadLine(40.6114, -66.1893, 112, 3);

    /// Mill Hill, from the mill's gate up to the reservoir.
    public static final RoadLine HILL = new RoadLine(40.6243, -66.2311, 337, 12);

    /// Its slope from the first gate, which lies 60 m up the road.
    static final RoadUp HILL_SLOPE = new RoadUp(324.6, 0.058, 0.2, 180, 1);

    /// Surveyed lengths of promenade and causeway, in metres.
    static final double PROMENADE_M = 603.5;

    static final double CAUSEWAY_M = 3218.7;

    static final String PROMENADE_ID = "promenade";
    static final String CAUSEWAY_ID = "causeway";
    static final String HILL_ID = "mill-hill";
    static final String TAPE = "tape-1";
    static final String FAST_RECEIVER = "receiver-10hz";
    static final String SLOW_RECEIVER = "receiver-5hz";
    static final String HANDLEBAR = "handlebar-1hz";
    static final String SCALE = "scale-1";
    static final String STOPWATCH = "stopwatch-1";
    static final String CAMERA = "camera-1";
    static final String WHEEL = "wheel-computer";
    static final String WALL_METER = "wall-meter-1";
    static final String BATTERY_LOG = "battery-log-1";
    static final String FAST_CAMERA = "camera-60";

    /// What the scale really reads, as a share of the truth: the crew knows it only by calibration.
    static final double SCALE_READS = 1 / 1.0018;

    private static final LocalDate CALIBRATED = LocalDate.of(2031, 1, 20);

    private Town() {}

    static List<CrewMember> crew() {
        return List.of(
                new CrewMember("L1", "lead"),
                new CrewMember("T1", "tester"),
                new CrewMember("T2", "tester"),
                new CrewMember("R1", "rider"),
                new CrewMember("M1", "mechanic"));
    }

    static List<Rider> riders() {
        return List.of(rider("T1", 82.4), rider("T2", 71.6), rider("R1", 95.2));
    }

    private static Rider rider(String code, double massKg) {
        return new Rider(code, java.util.OptionalDouble.of(massKg));
    }

    static List<Course> courses() {
        return List.of(course(PROMENADE_ID, PROMENADE, PROMENADE_M), course(CAUSEWAY_ID, CAUSEWAY, CAUSEWAY_M), hill());
    }

    private static Course hill() {
        RoadLine.Spot start = HILL.at(HillSession.RUN_UP_M, 0);
        RoadLine.Spot end = HILL.at(HillSession.RUN_UP_M + HILL_SLOPE.lengthM(), 0);
        return new Course(
                HILL_ID,
                "climb",
                Optional.of(new Course.Surveyed(HILL_SLOPE.lengthM(), 0.1)),
                Optional.of(new Course.Surveyed(Math.rint(100 * HILL_SLOPE.riseM()) / 100, 0.05)),
                Optional.of(gate(start, HILL)),
                Optional.of(gate(end, HILL)),
                "",
                Optional.of(LocalDate.of(2030, 10, 5)),
                "steel tape and level");
    }

    private static Course.Gate gate(RoadLine.Spot spot, RoadLine road) {
        return new Course.Gate(tidy(spot.latitudeDegrees()), tidy(spot.longitudeDegrees()), road.bearingDegrees());
    }

    private static Course course(String id, RoadLine road, double lengthM) {
        RoadLine.Spot end = road.at(lengthM, 0);
        return new Course(
                id,
                "straight",
                Optional.of(new Course.Surveyed(lengthM, 0.08)),
                Optional.of(new Course.Surveyed(0, 0.05)),
                Optional.of(new Course.Gate(
                        tidy(road.latitudeDegrees()), tidy(road.longitudeDegrees()), road.bearingDegrees())),
                Optional.of(new Course.Gate(
                        tidy(end.latitudeDegrees()), tidy(end.longitudeDegrees()), road.bearingDegrees())),
                "",
                Optional.of(LocalDate.of(2030, 10, 4)),
                "steel tape, both ways");
    }

    /// A survey gives seven digits of a degree, a centimetre.
    private static double tidy(double degrees) {
        return Math.rint(degrees * 1e7) / 1e7;
    }

    static List<Instrument> instruments() {
        return List.of(
                new Kit(TAPE, Instrument.Kind.TAPE, 0.01).calibrated(1.0005, 0.0003),
                new Kit(FAST_RECEIVER, Instrument.Kind.RECEIVER, 0.01 / 3.6).calibrated(1.0, 0.002),
                new Kit(SLOW_RECEIVER, Instrument.Kind.RECEIVER, 0.01 / 3.6).calibrated(1.0, 0.002),
                new Kit(HANDLEBAR, Instrument.Kind.RECEIVER, 0.1 / 3.6).asBought(),
                new Kit(STOPWATCH, Instrument.Kind.STOPWATCH, 0.1).asBought(),
                camera(),
                new Kit(WHEEL, Instrument.Kind.WHEEL, 0.1 / 3.6).calibrated(1.0, 0.004),
                new Kit(WALL_METER, Instrument.Kind.WALL_METER, 36_000).calibrated(1.0, 0.01),
                new Kit(BATTERY_LOG, Instrument.Kind.BATTERY_LOG, 3600).calibrated(1.0, 0.01),
                new Kit(SCALE, Instrument.Kind.SCALE, 0.05).calibrated(1.002, 0.0006),
                fastCamera());
    }

    private static Instrument camera() {
        return new Instrument(
                CAMERA,
                Instrument.Kind.CAMERA,
                java.util.OptionalDouble.empty(),
                Optional.empty(),
                java.util.OptionalDouble.empty(),
                Optional.of(new FrameRate.Steady(30_000, 1001)),
                List.of());
    }

    /// A camera of 60 frames a second.
    private static Instrument fastCamera() {
        var unknown = java.util.OptionalDouble.empty();
        var frames = Optional.<FrameRate>of(new FrameRate.Steady(60, 1));
        return new Instrument(
                FAST_CAMERA, Instrument.Kind.CAMERA, unknown, Optional.empty(), unknown, frames, List.of());
    }

    private record Kit(String id, Instrument.Kind kind, double resolution) {
        Instrument calibrated(double factor, double standardUncertainty) {
            var calibration = new Instrument.Calibration(factor, standardUncertainty, Optional.of(CALIBRATED));
            return instrument(Optional.of(calibration));
        }

        Instrument asBought() {
            return instrument(Optional.empty());
        }

        private Instrument instrument(Optional<Instrument.Calibration> calibration) {
            var unknown = java.util.OptionalDouble.empty();
            return new Instrument(id, kind, java.util.OptionalDouble.of(resolution), calibration, unknown, unknown);
        }
    }
}
