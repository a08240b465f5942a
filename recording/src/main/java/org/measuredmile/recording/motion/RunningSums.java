package org.measuredmile.recording.motion;

/// Running sums of evenly spaced values about their overall mean, so that the residual sum of squares of any stretch,
/// about a
/// constant or a straight line, is had at once.
///
/// Shape: stretches are half-open, `[from, to)`; values that are missing (NaN) weigh nothing.
/// Unit: costs in squares of the values' unit, slopes a step.
/// Valid: values are centred before they are squared, which keeps twelve digits in an hour of recording.
public final class RunningSums {
    private final double overall;
    private final int middle;
    private final int[] count;
    private final double[] v;
    private final double[] vv;
    private final double[] t;
    private final double[] tt;
    private final double[] tv;

    public RunningSums(double[] values) {
        int n = values.length;
        overall = presentMean(values);
        middle = n / 2;
        count = new int[n + 1];
        v = new double[n + 1];
        vv = new double[n + 1];
        t = new double[n + 1];
        tt = new double[n + 1];
        tv = new double[n + 1];
        for (int i = 0; i < n; i++) {
            boolean present = !Double.isNaN(values[i]);
            double value = present ? values[i] - overall : 0;
            double time = present ? i - middle : 0;
            count[i + 1] = count[i] + (present ? 1 : 0);
            v[i + 1] = v[i] + value;
            vv[i + 1] = vv[i] + value * value;
            t[i + 1] = t[i] + time;
            tt[i + 1] = tt[i] + time * time;
            tv[i + 1] = tv[i] + time * value;
        }
    }

    private static double presentMean(double[] values) {
        double sum = 0;
        int present = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                sum += value;
                present++;
            }
        }
        return present == 0 ? 0 : sum / present;
    }

    /// Values that are there.
    public int count(int from, int to) {
        return count[to] - count[from];
    }

    /// The mean of a stretch that has at least one value.
    public double mean(int from, int to) {
        return overall + (v[to] - v[from]) / count(from, to);
    }

    /// The residual sum of squares about the stretch's mean.
    public double constantCost(int from, int to) {
        int n = count[to] - count[from];
        if (n == 0) {
            return 0;
        }
        double sum = v[to] - v[from];
        return Math.max(0, vv[to] - vv[from] - sum * sum / n);
    }

    /// The residual sum of squares about the stretch's own straight line.
    public double lineCost(int from, int to) {
        int n = count[to] - count[from];
        if (n < 3) {
            return 0;
        }
        double sumT = t[to] - t[from];
        double spreadT = tt[to] - tt[from] - sumT * sumT / n;
        double product = tv[to] - tv[from] - sumT * (v[to] - v[from]) / n;
        return Math.max(0, constantCost(from, to) - product * product / spreadT);
    }

    /// The slope of the stretch's straight line; 0 where fewer than two values are there.
    public double slope(int from, int to) {
        int n = count[to] - count[from];
        if (n < 2) {
            return 0;
        }
        double sumT = t[to] - t[from];
        double spreadT = tt[to] - tt[from] - sumT * sumT / n;
        return (tv[to] - tv[from] - sumT * (v[to] - v[from]) / n) / spreadT;
    }
}
