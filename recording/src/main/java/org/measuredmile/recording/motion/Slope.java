package org.measuredmile.recording.motion;

/// The slope of the least-squares line through some of the points (x, y).
final class Slope {
    private Slope() {}

    /// Over the points from `from` to before `to`; 0 where all share one x.
    static double of(double[] x, double[] y, int from, int to) {
        double meanX = 0;
        double meanY = 0;
        for (int i = from; i < to; i++) {
            meanX += x[i] / (to - from);
            meanY += y[i] / (to - from);
        }
        double product = 0;
        double square = 0;
        for (int i = from; i < to; i++) {
            product += (x[i] - meanX) * (y[i] - meanY);
            square += (x[i] - meanX) * (x[i] - meanX);
        }
        return square > 0 ? product / square : 0;
    }
}
