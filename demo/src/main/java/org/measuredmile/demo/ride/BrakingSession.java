package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.statistics.Draw;

/// A session of hard stops on one day: the bike as it brakes that day, the crew's errors, and what is read and
/// recorded.
///
/// Shape: `stops` in order; the ride holds all of them, with the ride up to speed before each and a pause
/// after it.
public record BrakingSession(List<Ridden> stops, TrueRide ride) {
    public BrakingSession {
        stops = List.copyOf(stops);
    }

    /// A stop and what the crew wrote of it: entry speed from a display to a tenth of a mile an hour, distance by
    /// tape to a centimetre.
    public record Ridden(BrakedStop stop, String entryReading, String tapeReading) {}

    /// What a day's session is like.
    ///
    /// Unit: `nominalMps` the speed aimed at; `slope` uphill positive; `markLateS` by how much the mark comes
    /// after the control in every run; `speedScale` what the display shows of the true speed.
    public record Plan(int runs, double nominalMps, double slope, double markLateS, double speedScale) {}

    /// Rides a session.
    public static BrakingSession ride(BrakedBike today, Plan plan, RandomGenerator random) {
        var ridden = new ArrayList<Ridden>();
        var history = new History();
        for (int i = 0; i < plan.runs(); i++) {
            var bike = today.changed(Draw.normal(random, 0, today.runScatter()))
                    .timed(Draw.normal(random, today.takeUpS(), 0.015), Draw.normal(random, today.buildUpS(), 0.02));
            double entryMps = Draw.normal(random, plan.nominalMps(), 0.15);
            double drift = Draw.normal(random, -0.1, 0.12);
            var stop = BrakedStop.of(bike, new BrakedStop.Entry(entryMps, drift, plan.slope()));
            history.rideUpTo(entryMps, drift);
            history.add(stop.speeds());
            history.stand(3);
            ridden.add(new Ridden(stop, entryReading(entryMps, plan, random), tapeReading(stop, plan, random)));
        }
        return new BrakingSession(ridden, history.ride());
    }

    private static String entryReading(double entryMps, Plan plan, RandomGenerator random) {
        double shown = entryMps * plan.speedScale() + Draw.normal(random, 0, 0.05);
        return String.format(Locale.ROOT, "%.1f mph", Unit.MILE_PER_HOUR.fromSi(shown));
    }

    private static String tapeReading(BrakedStop stop, Plan plan, RandomGenerator random) {
        double lateS = plan.markLateS() + Draw.normal(random, 0, 0.02);
        double metres = stop.fromControlM() - stop.speeds()[0] * lateS + Draw.normal(random, 0, 0.02);
        return String.format(Locale.ROOT, "%.2f m", metres);
    }

    /// Speeds at every step, one ride after the other.
    private static final class History {
        private double[] speeds = new double[1 << 17];
        private int size;

        void rideUpTo(double entryMps, double drift) {
            double seconds = 4;
            double begin = entryMps - drift * seconds;
            for (double v = 0; v < begin; v += 1.5 * BrakedStop.STEP_S) {
                add(v);
            }
            for (double t = 0; t < seconds; t += BrakedStop.STEP_S) {
                add(begin + drift * t);
            }
        }

        void stand(double seconds) {
            for (double t = 0; t < seconds; t += BrakedStop.STEP_S) {
                add(0);
            }
        }

        void add(double[] all) {
            for (double speed : all) {
                add(speed);
            }
        }

        private void add(double speed) {
            if (size == speeds.length) {
                speeds = Arrays.copyOf(speeds, 2 * size);
            }
            speeds[size++] = speed;
        }

        TrueRide ride() {
            return TrueRide.of(Arrays.copyOf(speeds, size), BrakedStop.STEP_S);
        }
    }
}
