package org.measuredmile.trial.standingstart;

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

/// Builds days of standing starts in memory, for the tests of this package.
final class StartDays {
    private final List<Run> runs = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final TreeMap<String, Recording> recordings = new TreeMap<>();
    private final List<RecordingEntry> entries = new ArrayList<>();
    private final List<Rider> riders = new ArrayList<>();
    private final TreeMap<FigureKey, Figure> used = new TreeMap<>();
    private Optional<PreRideCheck> check = Optional.of(new PreRideCheck("mechanic", "tester", "08:40"));
    private OptionalDouble windMps = OptionalDouble.of(1);

    static StartDays day() {
        return new StartDays();
    }

    StartDays withoutCheck() {
        check = Optional.empty();
        return this;
    }

    StartDays withoutWind() {
        windMps = OptionalDouble.empty();
        return this;
    }

    StartDays rider(double kg) {
        riders.add(new Rider("R1", OptionalDouble.of(kg)));
        return this;
    }

    /// A bike that the weigh-in found to have a mass.
    StartDays weighed(double kg, double sd) {
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

    StartDays run(String id, String direction) {
        return run(id, direction, Run.State.CONFIRMED, "");
    }

    StartDays run(String id, String direction, Run.State state, String reason) {
        runs.add(new Run(
                id,
                "standingstart",
                Variant.of("drive", "throttle").with("to", "20-mph"),
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

    StartDays reading(String run, String name, String value) {
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

    StartDays recording(Recording recording, String... holding) {
        recordings.put(recording.name(), recording);
        entries.add(new RecordingEntry(recording.name(), "", List.of(holding), 0, ""));
        return this;
    }

    /// Both ends of a run, in seconds of a recording that is there already.
    StartDays window(String file, String run, double fromS, double toS) {
        entries.replaceAll(entry -> entry.file().equals(file) ? entry.naming(run, new Window(fromS, toS)) : entry);
        return this;
    }

    Outcome reduce() {
        return new StandingStart().reduce(input());
    }

    private TrialInput input() {
        var none = OptionalDouble.empty();
        var conditions = new Conditions(none, none, none, windMps, "", "dry", OptionalDouble.of(0.9), none);
        var day = new TestDay(
                "day",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "bike",
                Configuration.UNKNOWN,
                List.of(),
                riders,
                check,
                conditions,
                List.of(),
                List.of(),
                List.of(),
                runs,
                readings,
                entries);
        return new TrialInput(
                day,
                Bike.known("bike"),
                runs,
                ReadingResolver.resolve(StandingStart.DECLARATION, day),
                recordings,
                ScatterRecord.DECLARED_PRIORS,
                used);
    }

    /// A ride by steps of a millisecond, seen by a receiver without filter, a quarter of a second late: built
    /// without any formula of the reduction.
    static final class Ride {
        private static final double STEP_S = 0.001;
        private final List<Double> speeds = new ArrayList<>();
        private double lastTimeToTenMphS;

        Ride stand(double seconds) {
            return hold(0, seconds);
        }

        Ride hold(double speedMps, double seconds) {
            for (int i = 0; i < seconds / STEP_S; i++) {
                speeds.add(speedMps);
            }
            return this;
        }

        /// Thrust builds up in 0.4 s to an acceleration that falls evenly to nothing at a top speed; ridden
        /// for a time.
        Ride start(double thrustMps2, double topMps, double seconds) {
            double v = speeds.isEmpty() ? 0 : speeds.getLast();
            lastTimeToTenMphS = Double.NaN;
            for (double t = 0; t < seconds; t += STEP_S) {
                v += thrustMps2 * Math.min(1, t / 0.4) * (1 - v / topMps) * STEP_S;
                speeds.add(v);
                lastTimeToTenMphS = Double.isNaN(lastTimeToTenMphS) && v >= 4.4704 ? t : lastTimeToTenMphS;
            }
            return this;
        }

        /// The lesser of a force and a power, building up in 0.4 s, against rolling of 0.009 and a drag
        /// area of 0.6 m² in air of 1.2 kg/m³, on a whole with 3 kg of turning mass; ridden to 20 mph and a
        /// second more, or for a time.
        Ride thrust(double launchN, double powerW, double kg, double seconds) {
            double v = 0;
            double over = 0;
            for (double t = 0; t < seconds && over < 1; t += STEP_S) {
                double against = kg * 9.80665 * 0.009 + 1.2 * 0.6 / 2 * v * v;
                double net = Math.min(launchN, powerW / Math.max(v, 0.1)) - against;
                v += net * Math.min(1, t / 0.4) / (kg + 3) * STEP_S;
                speeds.add(v);
                over += v > 8.9408 ? STEP_S : 0;
            }
            return this;
        }

        Ride brake(double toMps) {
            for (double v = speeds.getLast(); v > toMps; v -= 3 * STEP_S) {
                speeds.add(v);
            }
            return this;
        }

        double lastTimeToTenMphS() {
            return lastTimeToTenMphS;
        }

        Recording seen(String name, double rateHz, long seed) {
            return seen(name, rateHz, seed, Double.NaN, Double.NaN);
        }

        /// The same with no samples between two times.
        Recording seen(String name, double rateHz, long seed, double gapFromS, double gapToS) {
            var random = new Random(seed);
            int every = (int) Math.round(1 / rateHz / STEP_S);
            var times = new ArrayList<Double>();
            var values = new ArrayList<Double>();
            for (int i = 0; i < speeds.size(); i += every) {
                double timeS = i * STEP_S + 0.25;
                double shown = Math.abs(speeds.get(i) + 0.05 * random.nextGaussian());
                if (!(timeS > gapFromS && timeS < gapToS)) {
                    times.add(timeS);
                    values.add(shown);
                }
            }
            var channel = new Channel(
                    ChannelKind.SPEED,
                    "speed",
                    "m/s",
                    new Channel.Series(
                            times.stream().mapToDouble(Double::doubleValue).toArray(),
                            values.stream().mapToDouble(Double::doubleValue).toArray()));
            return new Recording(
                    name,
                    Format.DELIMITED,
                    "",
                    Optional.empty(),
                    true,
                    channel.size(),
                    channel.timesS(),
                    List.of(new Segment(times.getFirst(), times.getLast())),
                    List.of(channel),
                    new TreeMap<>(),
                    List.of());
        }
    }

    static Ride ride() {
        return new Ride();
    }
}
