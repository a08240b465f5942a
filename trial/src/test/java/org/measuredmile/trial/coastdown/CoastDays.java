package org.measuredmile.trial.coastdown;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
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

/// Builds days of coasts in memory, by steps of a hundredth of a second and without any formula of the reduction.
final class CoastDays {
    static final double RIDER_KG = 77;
    static final double BIKE_KG = 28;
    /// What the wheels' turning adds, as the reduction assumes it.
    private static final double WHEELS_KG = 3;
    /// Air of 20 °C, 100 kPa and 50 % humidity, kg/m³ (CIPM-2007, Picard et al. 2008).
    static final double AIR = 1.1834;
    private static final double STEP_S = 0.01;

    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final TreeMap<String, Recording> recordings = new TreeMap<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private final TreeMap<FigureKey, Figure> used = new TreeMap<>();
    private OptionalDouble windMps = OptionalDouble.of(1);

    static CoastDays day() {
        return new CoastDays().weighed(BIKE_KG, 0.03);
    }

    static CoastDays withoutScale() {
        return new CoastDays();
    }

    private CoastDays weighed(double kg, double sd) {
        var key = new FigureKey("weighin.mass", Variant.of("battery", "in"));
        var known = Budget.of(Contribution.typeB("scale", sd)).around(kg);
        used.put(
                key,
                new Figure(
                        key,
                        QuantityKind.MASS,
                        "weighin",
                        1,
                        kg,
                        known,
                        known,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of()));
        return this;
    }

    CoastDays wind(OptionalDouble mps) {
        windMps = mps;
        return this;
    }

    CoastDays run(String id, String direction) {
        return run(id, direction, Run.State.CONFIRMED, "");
    }

    CoastDays run(String id, String direction, Run.State state, String reason) {
        runs.add(new Run(
                id,
                "coastdown",
                Variant.NONE,
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

    CoastDays reading(String run, String name, String value) {
        var place = Place.atLine("readings.csv", readings.size() + 2L);
        readings.add(new Reading(run, name, value, "", "", Optional.empty(), "T1", "", place));
        return this;
    }

    CoastDays recording(Recording recording, String... holding) {
        recordings.put(recording.name(), recording);
        entries.add(new RecordingEntry(recording.name(), "", List.of(holding), 0, ""));
        return this;
    }

    CoastDays window(String file, String run, double fromS, double toS) {
        entries.replaceAll(entry -> entry.file().equals(file) ? entry.naming(run, new Window(fromS, toS)) : entry);
        return this;
    }

    Outcome reduce() {
        var none = OptionalDouble.empty();
        var conditions = new Conditions(
                OptionalDouble.of(293.15),
                OptionalDouble.of(100_000),
                OptionalDouble.of(0.5),
                windMps,
                "",
                "dry",
                none,
                none);
        var day = new TestDay(
                "day",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                List.of(new Rider("R1", OptionalDouble.of(RIDER_KG))),
                Optional.empty(),
                conditions,
                List.of(),
                List.of(),
                List.of(),
                runs,
                readings,
                entries);
        return new Coastdown()
                .reduce(new TrialInput(
                        day,
                        Bike.known("bike"),
                        runs,
                        ReadingResolver.resolve(Coastdown.DECLARATION, day),
                        recordings,
                        ScatterRecord.DECLARED_PRIORS,
                        used));
    }

    static Figure figure(Outcome outcome, String name) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals("coastdown." + name))
                .findFirst()
                .orElseThrow();
    }

    static boolean has(Outcome outcome, String code) {
        return outcome.findings().stream().anyMatch(finding -> finding.code().equals(code));
    }

    /// What holds a bike back, and along what road and wind it coasts.
    record Coast(double rolling, double areaM2, double grade, double headWindMps) {
        Coast back() {
            return new Coast(rolling, areaM2, -grade, -headWindMps);
        }

        double slowingMps2(double mps) {
            double air = mps + headWindMps;
            double newtons =
                    (RIDER_KG + BIKE_KG) * 9.80665 * (rolling + grade) + 0.5 * AIR * areaM2 * air * Math.abs(air);
            return newtons / (RIDER_KG + BIKE_KG + WHEELS_KG);
        }

        /// Seconds from one speed to another.
        double timeS(double fromMps, double toMps) {
            double seconds = 0;
            for (double v = fromMps; v > toMps; v -= slowingMps2(v) * 0.0001) {
                seconds += 0.0001;
            }
            return seconds;
        }
    }

    /// A ride of coasts, one after the other, each driven up to its speed and braked at the end.
    static final class Ride {
        private final List<Double> speeds = new ArrayList<>();

        Ride coast(Coast coast) {
            return coast(coast, 36 / 3.6, 8 / 3.6);
        }

        Ride coast(Coast coast, double fromMps, double toMps) {
            for (double v = 0; v < fromMps; v += 1.2 * STEP_S) {
                speeds.add(v);
            }
            double v = fromMps;
            while (v > toMps) {
                speeds.add(v);
                v -= coast.slowingMps2(v) * STEP_S;
            }
            for (; v > 0; v -= 2 * STEP_S) {
                speeds.add(v);
            }
            for (int i = 0; i < 300; i++) {
                speeds.add(0.0);
            }
            return this;
        }

        Recording seen(String name, double rateHz, double noiseMps, long seed) {
            var random = new Random(seed);
            int every = (int) Math.round(1 / rateHz / STEP_S);
            int size = (speeds.size() + every - 1) / every;
            double[] times = new double[size];
            double[] values = new double[size];
            for (int i = 0; i < size; i++) {
                times[i] = i * every * STEP_S;
                values[i] = Math.abs(speeds.get(i * every) + noiseMps * random.nextGaussian());
            }
            var channel = new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, values));
            return new Recording(
                    name,
                    Format.DELIMITED,
                    "",
                    Optional.empty(),
                    true,
                    size,
                    times,
                    List.of(new Segment(times[0], times[size - 1])),
                    List.of(channel),
                    new TreeMap<>(),
                    List.of());
        }
    }
}
