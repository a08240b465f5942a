package org.measuredmile.demo.ride;

/// One stop, moved through in steps of a millisecond from the control's first movement to rest.
///
/// Unit: metres from the control's first movement and from the onset of deceleration; metres per second; seconds.
/// Shape: `speeds` at every [ReceiverModel#STEP_S] from the control's first movement, the last of them 0; `onset`
/// is the index of the onset.
public record BrakedStop(double[] speeds, int onset, double fromControlM, double fromOnsetM) {
    /// Steps of time, s.
    public static final double STEP_S = 0.001;

    private static final double GRAVITY_MPS2 = 9.80665;

    /// How the stop is entered.
    ///
    /// Unit: speed when the control moves, its change until the onset, slope uphill positive.
    public record Entry(double speedMps, double driftMps2, double slope) {}

    /// The stop of a bike.
    public static BrakedStop of(BrakedBike bike, Entry entry) {
        double step = STEP_S;
        int most = 20_000;
        double[] speeds = new double[most];
        double roughDurationS = entry.speedMps() / bike.decelerationMps2();
        double risePerS = bike.riseShare() * bike.decelerationMps2() / roughDurationS;
        int onset = (int) Math.round(bike.takeUpS() / step);
        double v = entry.speedMps();
        double fromControl = 0;
        double fromOnset = 0;
        int i = 0;
        while (v > 0 && i < most - 1) {
            speeds[i] = v;
            double sinceOnset = (i + 0.5 - onset) * step;
            double slowing = -entry.driftMps2();
            if (sinceOnset > 0) {
                double developed = Math.min(1, sinceOnset / bike.buildUpS());
                double grown = Math.max(0, sinceOnset - bike.buildUpS());
                // What slowed the bike before goes on until the brakes have taken over.
                slowing = -entry.driftMps2() * (1 - developed)
                        + bike.decelerationMps2() * developed
                        + risePerS * grown
                        + GRAVITY_MPS2 * entry.slope() * developed;
            }
            double next = v - slowing * step;
            // The last step ends where the speed does.
            double metres = next > 0 ? (v + next) / 2 * step : v * v / (2 * slowing);
            fromControl += metres;
            fromOnset += i >= onset ? metres : 0;
            v = next;
            i++;
        }
        return new BrakedStop(java.util.Arrays.copyOf(speeds, i + 1), onset, fromControl, fromOnset);
    }

    /// Speed at the onset of deceleration.
    public double onsetMps() {
        return speeds[onset];
    }

    /// Deceleration that would do the same over the distance from onset.
    public double meanMps2() {
        return onsetMps() * onsetMps() / 2 / fromOnsetM;
    }

    /// Deceleration that would do the same over the distance between 80 and 10 per cent of the speed at onset.
    public double meanDevelopedMps2() {
        double high = 0.8 * onsetMps();
        double low = 0.1 * onsetMps();
        double metres = 0;
        for (int i = onset; i + 1 < speeds.length; i++) {
            double from = Math.min(high, speeds[i]);
            double to = Math.max(low, speeds[i + 1]);
            if (from > to && speeds[i] > speeds[i + 1]) {
                double part = (from - to) / (speeds[i] - speeds[i + 1]);
                metres += part * (from + to) / 2 * STEP_S;
            }
        }
        return (high * high - low * low) / 2 / metres;
    }
}
