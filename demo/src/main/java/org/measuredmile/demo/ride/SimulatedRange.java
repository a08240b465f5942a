package org.measuredmile.demo.ride;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.measuredmile.demo.ride.SimulatedDay.Truth;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Rider;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;

/// Range rides by throttle: with a battery log on a clock of its own and recordings in two parts; by hand with a wall
/// meter; or stopped early after some laps.
///
/// Population: bikes of 28 ± 4 kg, riders of 65 to 105 kg (known), rolling 0.009 ± 0.003 and area 0.60 ± 0.09 m²; 300
/// to
/// 800 Wh nominal of which 93 ± 3 % are usable; mean speeds of 5 to 7.5 m/s in pieces that differ by 12 %; wind of 0 to
/// 3 m/s read within 20 %; 1 to 6 m of rise a kilometre read within 10 %, of which 75 ± 12 % are lost. A ride scatters
/// by
/// 3 %, a day by 5 %, both differing between crews; laps by 5 %; 65 to 85 % of the energy reaches the road.
/// Instruments err as the trial takes for granted.
public record SimulatedRange(How how) implements SimulatedTrial {
    /// How the ride was kept.
    public enum How {
        LOG,
        HAND,
        EARLY
    }

    private static final double RUN_SD = 0.03;
    private static final double DAY_SD = 0.05;
    private static final double LAP_SD = 0.05;
    private static final double STEP_S = 0.5;
    private static final double SAMPLE_M = 10_000;
    private static final double LOG_SD = 0.015;
    private static final double RECEIVER_SD = 0.005;
    private static final double DISPLAY_SD = 0.01;
    private static final double USABLE_SD = 0.03 / 0.93;
    private static final double CHARGER_SD = 0.03 / 0.87;
    private static final double EFFICIENCY_CHANGE = 0.06;
    /// How much of a battery's energy reaches the road.
    private static final double LEAST_DRIVE = 0.65;
    private static final double MOST_DRIVE = 0.85;
    private static final double DRIVE_SD = 0.2 / Math.sqrt(12) / 0.75;
    private static final double WATT_HOUR_J = 3600;
    private static final RoadLine ROAD = new RoadLine(45, 10, 90, 100);
    private static final Instant BEGIN = Instant.parse("2031-05-14T08:00:00Z");

    @Override
    public String title() {
        return switch (how) {
            case LOG -> "range by battery log";
            case HAND -> "range by hand";
            case EARLY -> "range stopped early";
        };
    }

    @Override
    public SimulatedDay day(Seed seed, long index) {
        var random = seed.child(title()).stream(index);
        double nominalJ = WATT_HOUR_J * Math.rint(Draw.rectangular(random, 30, 80)) * 10;
        double usableJ = nominalJ * (0.93 + Draw.normal(random, 0, 0.03));
        double meanMps = Draw.rectangular(random, 5, 7.5);
        var plan = plan(random, meanMps);
        double anyM = usableJ * Draw.rectangular(random, LEAST_DRIVE, MOST_DRIVE) / plan.costJPerM();
        double dayM = anyM * (1 + DAY_SD * Crews.spread(random) * Draw.normal(random));
        double wayM = dayM * (1 + RUN_SD * Crews.spread(random) * Draw.normal(random));
        return switch (how) {
            case LOG -> new Kept(how, random, plan, meanMps, nominalJ, usableJ).logged(anyM, dayM, wayM);
            case HAND -> new Kept(how, random, plan, meanMps, nominalJ, usableJ).byHand(anyM, dayM, wayM);
            case EARLY -> new Kept(how, random, plan, meanMps, nominalJ, usableJ).early(anyM, dayM, wayM);
        };
    }

    /// A lower level that nobody rode on a day: its mean speed, that of the ride, and how far the bike would go at
    /// reference conditions on any day.
    ///
    /// Unit: m/s, m.
    public record Lower(double riddenMps, double mps, double distanceM) {}

    /// The same day's bike at a share of the speed it was ridden at.
    public Lower lower(Seed seed, long index, double share) {
        var random = seed.child(title()).stream(index);
        double nominalJ = WATT_HOUR_J * Math.rint(Draw.rectangular(random, 30, 80)) * 10;
        double usableJ = nominalJ * (0.93 + Draw.normal(random, 0, 0.03));
        double meanMps = Draw.rectangular(random, 5, 7.5);
        var plan = plan(random, meanMps);
        double drive = Draw.rectangular(random, LEAST_DRIVE, MOST_DRIVE);
        double slowly = plan.slower(share).referenceCostJPerM(0);
        double ratio = plan.costJPerM() / slowly;
        var apart = seed.child(title() + ", lower level").stream(index);
        // What the efficiency of motor and battery changes, as between any two rides.
        double changed = 1 + EFFICIENCY_CHANGE * Math.abs(StrictMath.log(ratio)) * Draw.normal(apart);
        return new Lower(meanMps, share * meanMps, usableJ * drive / slowly * changed);
    }

    /// What holds this bike back on this loop at these speeds, from a sample of its way.
    private static RiddenRange plan(RandomGenerator random, double meanMps) {
        double stops = Draw.rectangular(random, 0.0001, 0.0006);
        var speeds = RiddenRange.speeds(SAMPLE_M, meanMps, stops, STEP_S, random);
        return new RiddenRange(
                Math.max(15, Draw.normal(random, 28, 4)),
                Math.rint(Draw.rectangular(random, 65, 105)),
                1.2,
                Math.max(0.003, Draw.normal(random, 0.009, 0.003)),
                Math.max(0.3, Draw.normal(random, 0.60, 0.09)),
                Math.clamp(Draw.normal(random, 0.75, 0.12), 0, 1),
                Draw.rectangular(random, 0, 3),
                Draw.rectangular(random, 0.001, 0.006),
                stops,
                0,
                speeds);
    }

    /// Writes down one ride.
    private record Kept(
            How how, RandomGenerator random, RiddenRange plan, double meanMps, double nominalJ, double usableJ) {
        private static final Variant LEVEL = Variant.of("drive", "throttle");
        private static final Variant FIGURE = Variant.of("level", "throttle").with("levelRole", "throttle");

        SimulatedDay logged(double anyM, double dayM, double wayM) {
            var speeds = RiddenRange.speeds(wayM, meanMps, plan.stopsPerM(), STEP_S, random);
            var ridden = at(speeds);
            var recordings = new TreeMap<String, byte[]>();
            var entries = new ArrayList<RecordingEntry>();
            double scale = 1 + Draw.normal(random, 0, RECEIVER_SD);
            double[] mps = speeds.mps();
            int cut = (int) (mps.length * Draw.rectangular(random, 0.3, 0.7));
            record(recordings, entries, "ride-1.csv", 0, java.util.Arrays.copyOfRange(mps, 0, cut), scale);
            record(recordings, entries, "ride-2.csv", cut, java.util.Arrays.copyOfRange(mps, cut, mps.length), scale);
            recordings.put("battery.csv", log(ridden));
            entries.add(new RecordingEntry("battery.csv", "", List.of("g-1"), 0, ""));
            var readings = readings("assistance-ended", wayM);
            return day(readings, entries, recordings, truths(ridden, anyM, dayM));
        }

        private RiddenRange at(RiddenRange.Speeds speeds) {
            double[] mps = speeds.mps();
            int stops = 0;
            for (int i = 1; i < mps.length; i++) {
                stops += mps[i - 1] == 0 && mps[i] > 0 ? 1 : 0;
            }
            // The first time it leaves rest is the start.
            stops -= stops > 0 && mps[0] == 0 ? 1 : 0;
            return new RiddenRange(
                    plan.bikeKg(),
                    plan.riderKg(),
                    plan.airKgPerM3(),
                    plan.rolling(),
                    plan.areaM2(),
                    plan.kept(),
                    plan.windMps(),
                    plan.risePerM(),
                    stops / speeds.wayM(),
                    0,
                    speeds);
        }

        private void record(
                TreeMap<String, byte[]> recordings,
                List<RecordingEntry> entries,
                String name,
                int from,
                double[] speeds,
                double scale) {
            double[] shown = new double[speeds.length];
            for (int i = 0; i < shown.length; i++) {
                shown[i] = speeds[i] / scale;
            }
            var receiver = new ReceiverModel(1, ReceiverModel.Noise.OPEN_SKY, new ReceiverModel.Filter.None(), 0, 0.05);
            var seen = receiver.watch(TrueRide.of(shown, STEP_S), ROAD, random);
            var begun = BEGIN.plusMillis(Math.round(from * STEP_S * 1000));
            recordings.put(name, new ReceiverLog(begun, seen).delimited());
            entries.add(new RecordingEntry(name, "", List.of("g-1"), 0, ""));
        }

        /// Every two seconds, on a clock that is off by minutes.
        private byte[] log(RiddenRange ridden) {
            double scale = 1 + Draw.normal(random, 0, LOG_SD);
            double offS = Math.rint(Draw.rectangular(random, -900, 900));
            double perMetre = usableJ / ridden.speeds().wayM() / scale;
            var text = new StringBuilder("time,voltage_V,current_A\n");
            int every = (int) Math.round(2 / STEP_S);
            for (int i = 0; i < ridden.speeds().mps().length; i += every) {
                double volts = 48 - 8.0 * i / ridden.speeds().mps().length;
                double watts = ridden.speeds().mps()[i] * perMetre * Math.max(0, Draw.normal(random, 1, 0.2));
                text.append(BEGIN.plusMillis(Math.round((i * STEP_S + offS) * 1000)))
                        .append(String.format(Locale.ROOT, ",%.2f,%.3f%n", volts, watts / volts));
            }
            return text.toString().getBytes(StandardCharsets.UTF_8);
        }

        SimulatedDay byHand(double anyM, double dayM, double wayM) {
            var speeds = RiddenRange.speeds(wayM, meanMps, plan.stopsPerM(), STEP_S, random);
            var ridden = at(speeds);
            var readings = readings("display-empty", wayM);
            double shownKm = wayM / (1 + Draw.normal(random, 0, DISPLAY_SD)) / 1000;
            readings.add(reading("distance", String.format(Locale.ROOT, "%.1f km", shownKm)));
            readings.add(reading(
                    "riding-time",
                    String.format(Locale.ROOT, "%.0f s", ridden.speeds().ridingS())));
            readings.add(reading("stops", String.valueOf(Math.round(ridden.stopsPerM() * wayM))));
            double charger = 0.87 + Draw.normal(random, 0, 0.03);
            double wallWh = usableJ / charger / (1 + Draw.normal(random, 0, LOG_SD)) / WATT_HOUR_J;
            readings.add(reading("wall-energy", String.format(Locale.ROOT, "%.2f kWh", wallWh / 1000)));
            return day(readings, List.of(), new TreeMap<>(), truths(ridden, anyM, dayM));
        }

        SimulatedDay early(double anyM, double dayM, double wayM) {
            double lapM = wayM / (6 + random.nextInt(6)) * Draw.rectangular(random, 0.85, 1);
            int most = (int) (wayM / lapM);
            int done = Math.max(3, (int) Math.round(most * Draw.rectangular(random, 0.35, 0.85)));
            double doneLaps = 0;
            double allLaps = 0;
            for (int i = 0; i * lapM < wayM; i++) {
                double whole = Math.min(1, wayM / lapM - i);
                double cost = whole * (1 + LAP_SD * Draw.normal(random));
                doneLaps += i < done ? cost : 0;
                allLaps += cost;
            }
            double usedJ = usableJ * doneLaps / allLaps;
            var readings = readings("stopped-early", done * lapM);
            double shownKm = done * lapM / (1 + Draw.normal(random, 0, DISPLAY_SD)) / 1000;
            readings.add(reading("distance", String.format(Locale.ROOT, "%.1f km", shownKm)));
            readings.add(reading("laps", String.valueOf(done)));
            double scale = 1 + Draw.normal(random, 0, LOG_SD);
            var text = new StringBuilder("time,voltage_V,current_A\n");
            for (int s = 0; s <= 3600; s += 4) {
                text.append(BEGIN.plusSeconds(s))
                        .append(String.format(Locale.ROOT, ",48.00,%.4f%n", usedJ / scale / 3600 / 48));
            }
            var recordings = new TreeMap<String, byte[]>();
            recordings.put("battery.csv", text.toString().getBytes(StandardCharsets.UTF_8));
            var entries = List.of(new RecordingEntry("battery.csv", "", List.of("g-1"), 0, ""));
            double laps = LAP_SD * Math.sqrt(1.0 / done - Math.min(1.0 / done, lapM / wayM));
            double runSd = root(RUN_SD, USABLE_SD, LOG_SD, DISPLAY_SD, laps);
            var truth = new Truth(
                    "range.predicted", FIGURE, dayM, anyM, runSd * dayM, StrictMath.hypot(runSd, DAY_SD) * anyM);
            return day(readings, entries, recordings, List.of(truth));
        }

        /// What log or wall meter and charger leave open of the energy, the label beside them.
        private double energySd() {
            double read = how == How.LOG ? LOG_SD : StrictMath.hypot(CHARGER_SD, LOG_SD);
            return read * USABLE_SD / StrictMath.hypot(read, USABLE_SD);
        }

        /// The best possible reads the way as well as its instrument, takes the energy from meter and label
        /// together, and at reference conditions knows of bike, road, wind and drive what is written, what is
        /// usual, and what the energy per distance tells of them.
        private List<Truth> truths(RiddenRange ridden, double anyM, double dayM) {
            double ratio = ridden.costJPerM() / ridden.referenceCostJPerM(0);
            double change = EFFICIENCY_CHANGE * Math.abs(StrictMath.log(ratio));
            double changed = 1 + change * Draw.normal(random);
            double way = how == How.LOG ? RECEIVER_SD : DISPLAY_SD;
            double cost = root(RUN_SD, way, energySd());
            double open = ridden.ratioSpread(random, root(cost, DAY_SD, DRIVE_SD));
            var at = FIGURE.with("at", "reference");
            double run = root(RUN_SD, way);
            double atRun = root(run, open, change);
            return List.of(
                    new Truth("range.distance", FIGURE, dayM, anyM, run * dayM, root(run, DAY_SD) * anyM),
                    new Truth(
                            "range.distance",
                            at,
                            dayM * ratio * changed,
                            anyM * ratio * changed,
                            atRun * dayM * ratio,
                            root(atRun, DAY_SD) * anyM * ratio),
                    new Truth(
                            "range.energy-per-distance",
                            FIGURE,
                            usableJ / dayM,
                            usableJ / anyM,
                            cost * usableJ / dayM,
                            root(cost, DAY_SD) * usableJ / anyM));
        }

        private static double root(double... parts) {
            double squares = 0;
            for (double part : parts) {
                squares += part * part;
            }
            return Math.sqrt(squares);
        }

        private List<Reading> readings(String ended, double wayM) {
            var readings = new ArrayList<Reading>();
            readings.add(reading("ended", ended));
            double rise = plan.risePerM() * (1 + Draw.normal(random, 0, 0.1));
            readings.add(reading("ascent", String.format(Locale.ROOT, "%.0f m", rise * wayM)));
            return readings;
        }

        private static Reading reading(String name, String value) {
            return new Reading("g-1", name, value, "", "", Optional.empty(), "T1", "", Place.NOWHERE);
        }

        private SimulatedDay day(
                List<Reading> readings,
                List<RecordingEntry> entries,
                TreeMap<String, byte[]> recordings,
                List<Truth> truths) {
            var run = new Run(
                    "g-1", "range", LEVEL, "R1", Optional.empty(), "", "", Run.State.CONFIRMED, "", "", Place.NOWHERE);
            var day = new TestDay(
                    "simulated",
                    LocalDate.of(2031, 5, 14),
                    ZoneOffset.UTC,
                    "",
                    "simulated",
                    Configuration.UNKNOWN,
                    List.of(),
                    List.of(new Rider("R1", OptionalDouble.of(plan.riderKg()))),
                    Optional.empty(),
                    conditions(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(run),
                    readings,
                    entries);
            return new SimulatedDay(day, bike(), recordings, truths);
        }

        private Conditions conditions() {
            double readMps = plan.windMps() * Math.max(0, 1 + 0.2 * Draw.normal(random));
            return new Conditions(
                    OptionalDouble.of(288.15),
                    OptionalDouble.of(99_600),
                    OptionalDouble.of(0.6),
                    OptionalDouble.of(readMps),
                    "",
                    "dry",
                    OptionalDouble.empty(),
                    OptionalDouble.empty());
        }

        private Bike bike() {
            var known = Bike.known("simulated");
            String claimed = String.valueOf(Math.round(nominalJ / WATT_HOUR_J));
            return new Bike(
                    known.id(),
                    "",
                    "",
                    OptionalInt.empty(),
                    "",
                    "throttle",
                    "cadence",
                    OptionalInt.empty(),
                    "",
                    known.price(),
                    known.loan(),
                    List.of(new SpecLine("battery-energy", claimed, "Wh", "", "", "", "", "", "", Place.NOWHERE)));
        }
    }
}
