package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import org.measuredmile.recording.Channel;

/// The smoother on distance, speed and acceleration written out: a filter forwards, then the samples' residuals carried
/// backwards.
///
/// Shape: symmetric matrices as their six entries ss, sv, sa, vv, va, aa; the state as s, v, a; speed is sampled.
/// Unit: m, m/s, m/s²; the density of the jerk's power in m²/s⁵.
/// Source: filter by Kalman (1960); backwards by Bryson and Frazier (1963) in the form of Bierman (1973), Automatica 9,
/// 503–508 (from memory): it gives what Rauch, Tung and Striebel's recursion gives, and inverts no matrix. The test
/// holds it to that recursion as the filtering library has it.
final class WhiteJerk {
    private static final int ENTRIES = 9;

    private final Channel speed;
    private final double variance;
    private final double density;
    /// Filtered: s, v, a, then the six entries, sample after sample.
    private final double[] filtered;

    private double s;
    private double v;
    private double a;
    private double ss;
    private double sv;
    private double sa;
    private double vv;
    private double va;
    private double aa;

    private WhiteJerk(Channel speed, double sigmaMps, double density) {
        this.speed = speed;
        this.variance = sigmaMps * sigmaMps;
        this.density = density;
        this.filtered = new double[ENTRIES * speed.size()];
    }

    /// One state a sample; `speed` has one sample or more.
    static List<Smoother.State> smoothed(Channel speed, double sigmaMps, double density, Smoother.Prior prior) {
        var jerk = new WhiteJerk(speed, sigmaMps, density);
        jerk.begin(prior);
        for (int i = 0; i < speed.size(); i++) {
            if (i > 0) {
                jerk.move(speed.timeS(i) - speed.timeS(i - 1));
            }
            jerk.see(speed.value(i));
            jerk.keep(i * ENTRIES);
        }
        return jerk.backwards();
    }

    private void begin(Smoother.Prior prior) {
        double[] mean = prior.mean();
        double[][] covariance = prior.covariance();
        s = mean[0];
        v = mean[1];
        a = mean[2];
        ss = covariance[0][0];
        sv = covariance[0][1];
        sa = covariance[0][2];
        vv = covariance[1][1];
        va = covariance[1][2];
        aa = covariance[2][2];
    }

    /// F·x and F·P·Fᵀ + Q over a step.
    private void move(double t) {
        double half = t * t / 2;
        s += t * v + half * a;
        v += t * a;
        double svMoved = sv + t * vv + half * va;
        double saMoved = sa + t * va + half * aa;
        ss += t * sv + half * sa + t * svMoved + half * saMoved + density * t * t * t * t * t / 20;
        sv = svMoved + t * saMoved + density * t * t * t * t / 8;
        sa = saMoved + density * t * t * t / 6;
        vv += t * (2 * va + t * aa) + density * t * t * t / 3;
        va += t * aa + density * t * t / 2;
        aa += density * t;
    }

    private void see(double speedMps) {
        double of = 1 / (vv + variance);
        double gainS = sv * of;
        double gainV = vv * of;
        double gainA = va * of;
        double missed = speedMps - v;
        s += gainS * missed;
        v += gainV * missed;
        a += gainA * missed;
        ss -= gainS * sv;
        sa -= gainS * va;
        aa -= gainA * va;
        sv -= gainS * vv;
        va -= gainA * vv;
        vv -= gainV * vv;
    }

    private void keep(int at) {
        filtered[at] = s;
        filtered[at + 1] = v;
        filtered[at + 2] = a;
        filtered[at + 3] = ss;
        filtered[at + 4] = sv;
        filtered[at + 5] = sa;
        filtered[at + 6] = vv;
        filtered[at + 7] = va;
        filtered[at + 8] = aa;
    }

    /// From the last sample to the first, with what later samples say of each state: λ and Λ, which begin as
    /// nothing.
    private List<Smoother.State> backwards() {
        int n = speed.size();
        var states = new ArrayList<Smoother.State>(n);
        var later = new Later();
        for (int i = n - 1; i >= 0; i--) {
            int at = i * ENTRIES;
            states.add(state(i, later));
            later.see(filtered, at, speed.value(i), variance);
            if (i > 0) {
                later.move(speed.timeS(i) - speed.timeS(i - 1));
            }
        }
        return List.copyOf(states.reversed());
    }

    /// x − P·λ and P − P·Λ·P.
    private Smoother.State state(int i, Later later) {
        int at = i * ENTRIES;
        double pss = filtered[at + 3];
        double psv = filtered[at + 4];
        double psa = filtered[at + 5];
        double pvv = filtered[at + 6];
        double pva = filtered[at + 7];
        double paa = filtered[at + 8];
        return new Smoother.State(
                speed.timeS(i),
                filtered[at] - later.along(pss, psv, psa),
                filtered[at + 1] - later.along(psv, pvv, pva),
                filtered[at + 2] - later.along(psa, pva, paa),
                Math.sqrt(Math.max(0, pss - later.square(pss, psv, psa))),
                Math.sqrt(Math.max(0, pvv - later.square(psv, pvv, pva))));
    }

    /// What the later samples say: λ and Λ of Bryson and Frazier.
    private static final class Later {
        private double s;
        private double v;
        private double a;
        private double ss;
        private double sv;
        private double sa;
        private double vv;
        private double va;
        private double aa;

        double along(double x, double y, double z) {
            return x * s + y * v + z * a;
        }

        double square(double x, double y, double z) {
            return x * (x * ss + 2 * (y * sv + z * sa)) + y * (y * vv + 2 * z * va) + z * z * aa;
        }

        /// (I − K·H)ᵀ·λ − Hᵀ·y/S and (I − K·H)ᵀ·Λ·(I − K·H) + HᵀH/S. The gain K is the filtered
        /// covariance's column of speed over the sample's variance, y/S the filtered residual over it.
        void see(double[] filtered, int at, double sampled, double variance) {
            double keptS = -filtered[at + 4] / variance;
            double keptV = 1 - filtered[at + 6] / variance;
            double keptA = -filtered[at + 7] / variance;
            v = along(keptS, keptV, keptA) - (sampled - filtered[at + 1]) / variance;
            double square = square(keptS, keptV, keptA);
            sv = ss * keptS + sv * keptV + sa * keptA;
            va = sa * keptS + va * keptV + aa * keptA;
            vv = square + keptV / variance;
        }

        /// Fᵀ·λ and Fᵀ·Λ·F over a step.
        void move(double t) {
            double half = t * t / 2;
            a += half * s + t * v;
            v += t * s;
            double svMoved = sv + t * ss;
            double saMoved = sa + t * sv + half * ss;
            double vaMoved = va + t * vv + half * sv;
            aa += half * sa + t * va + half * saMoved + t * vaMoved;
            va = vaMoved + t * saMoved;
            vv += t * (sv + svMoved);
            sv = svMoved;
            sa = saMoved;
        }
    }
}
