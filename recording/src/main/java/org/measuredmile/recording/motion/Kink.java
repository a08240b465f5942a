package org.measuredmile.recording.motion;

import org.measuredmile.quantity.statistics.Projection;
import org.measuredmile.recording.Channel;

/// When a speed's slope jumps, near a time at which something looked for it: the broken line that fits best.
///
/// Formula: v(t) = a + b·(t − t₀) + c·(t − τ)₊ by least squares within [#HALF_WINDOW_S] of the time, for every τ of a
/// grid of 10 ms.
/// Unit: seconds. Valid: where one kink lies in the window; samples too few for the line leave the time as it was.
/// Source: Seber and Wild, Nonlinear Regression (1989), chapter 9, from memory.
final class Kink {
    static final double HALF_WINDOW_S = 0.8;
    private static final double REACH_S = 0.6;
    private static final double GRID_S = 0.01;
    private static final int FEWEST = 6;
    /// A kink that leaves less of itself beside the straight line than this is none.
    private static final double LEAST = 1e-9;

    private final double[] timesS;
    private final double[] left;
    private final double[] constant;
    private final double[] slope;

    private Kink(Channel samples) {
        timesS = samples.timesS();
        constant = Projection.constant(timesS.length);
        slope = Projection.unit(Projection.without(timesS.clone(), constant));
        left = Projection.without(Projection.without(samples.values().clone(), constant), slope);
    }

    /// The kink near a time.
    static double near(Channel speed, double aboutS) {
        var samples = speed.between(aboutS - HALF_WINDOW_S, aboutS + HALF_WINDOW_S);
        return samples.size() < FEWEST ? aboutS : new Kink(samples).best(aboutS);
    }

    private double best(double aboutS) {
        double best = aboutS;
        double most = 0;
        for (double kinkS = aboutS - REACH_S; kinkS <= aboutS + REACH_S; kinkS += GRID_S) {
            double[] bend = new double[timesS.length];
            for (int i = 0; i < bend.length; i++) {
                bend[i] = Math.max(0, timesS[i] - kinkS);
            }
            bend = Projection.without(Projection.without(bend, constant), slope);
            double square = Projection.dot(bend, bend);
            double explained = square > LEAST ? Projection.dot(bend, left) * Projection.dot(bend, left) / square : 0;
            if (explained > most) {
                most = explained;
                best = kinkS;
            }
        }
        return best;
    }
}
