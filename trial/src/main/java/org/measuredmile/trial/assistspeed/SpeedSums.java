package org.measuredmile.trial.assistspeed;

/// Running sums of a speed trace about its overall mean, so that the residual sum of squares of any stretch, about a
/// constant or a straight line, is had at once.
///
/// Shape: stretches are half-open, `[from, to)`; seconds that are missing weigh nothing.
/// Unit: costs in (m/s)².
/// Valid: speeds are centred before they are squared, which keeps twelve digits in an hour of recording.
final class SpeedSums {
    private final double meanMps;
    private final int middle;
    private final int[] count;
    private final double[] v;
    private final double[] vv;
    private final double[] t;
    private final double[] tt;
    private final double[] tv;

    SpeedSums(double[] speedMps) {
        int n = speedMps.length;
        meanMps = presentMean(speedMps);
        middle = n / 2;
        count = new int[n + 1];
        v = new double[n + 1];
        vv = new double[n + 1];
        t = new double[n + 1];
        tt = new double[n + 1];
        tv = new double[n + 1];
        for (int i = 0; i < n; i++) {
            boolean present = !Double.isNaN(speedMps[i]);
            double speed = present ? speedMps[i] - meanMps : 0;
            double time = present ? i - middle : 0;
            count[i + 1] = count[i] + (present ? 1 : 0);
            v[i + 1] = v[i] + speed;
            vv[i + 1] = vv[i] + speed * speed;
            t[i + 1] = t[i] + time;
            tt[i + 1] = tt[i] + time * time;
            tv[i + 1] = tv[i] + time * speed;
        }
    }

    private static double presentMean(double[] speedMps) {
        double sum = 0;
        int present = 0;
        for (double speed : speedMps) {
            if (!Double.isNaN(speed)) {
                sum += speed;
                present++;
            }
        }
        return present == 0 ? 0 : sum / present;
    }

    /// Seconds that are there.
    int count(int from, int to) {
        return count[to] - count[from];
    }

    /// The mean speed of a stretch that has at least one second.
    double meanMps(int from, int to) {
        return meanMps + (v[to] - v[from]) / count(from, to);
    }

    /// The residual sum of squares about the stretch's mean.
    double constantCost(int from, int to) {
        int n = count[to] - count[from];
        if (n == 0) {
            return 0;
        }
        double sum = v[to] - v[from];
        return Math.max(0, vv[to] - vv[from] - sum * sum / n);
    }

    /// The residual sum of squares about the stretch's own straight line.
    double lineCost(int from, int to) {
        int n = count[to] - count[from];
        if (n < 3) {
            return 0;
        }
        double sumT = t[to] - t[from];
        double spreadT = tt[to] - tt[from] - sumT * sumT / n;
        double product = tv[to] - tv[from] - sumT * (v[to] - v[from]) / n;
        return Math.max(0, constantCost(from, to) - product * product / spreadT);
    }

    /// The slope of the stretch's straight line, in m/s²; 0 where fewer than two seconds are there.
    double slopeMps2(int from, int to) {
        int n = count[to] - count[from];
        if (n < 2) {
            return 0;
        }
        double sumT = t[to] - t[from];
        double spreadT = tt[to] - tt[from] - sumT * sumT / n;
        return (tv[to] - tv[from] - sumT * (v[to] - v[from]) / n) / spreadT;
    }
}
