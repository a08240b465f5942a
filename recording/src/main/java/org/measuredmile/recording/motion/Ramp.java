package org.measuredmile.recording.motion;

import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// Where a deceleration begins in a raw acceleration, and how long it takes to build up: level, straight ramp, and a
/// level that may drift, felt on a bike that dives.
///
/// Braking by a pitches the bike by p·a, which adds g·p of itself to what is felt; the fork and tyres follow as a
/// damped oscillator does, x″ + 2·ζ·ω·x′ + ω²·x = ω²·a. So the dive comes a little after the brake, and without it in
/// the model the onset would look too late, by up to g·p·2·ζ/ω.
/// Unit: seconds, with standard uncertainties that allow for shaking that lasts; `onsetFromDiveSd` is the part of
/// `onsetSd` that an unknown dive leaves open, alike in all stops of a bike.
/// Source: dive of 0 to 2° at 6 m/s², swinging 2.1 times a second, damped by half: house values.
sealed interface Ramp {
    double BEFORE_S = 1.2;
    double AFTER_S = 0.7;
    double BUILD_UP_S = 0.225;
    double BUILD_UP_SD = 0.06;
    /// A build-up that is no straight ramp moves its corner by so much. House.
    double SHAPE_S = 0.012;

    /// What a dive adds to the braking, as a share of it: of up to g·2°/6 m/s² the middle, and its
    /// spread.
    double DIVE = 0.0285;
    double DIVE_SD = 0.0165;
    double SWING_PER_S = 13.4;
    double DAMPING = 0.52;

    record Known(double onsetS, double onsetSd, double onsetFromDiveSd, double buildUpS, double buildUpSd)
            implements Ramp {}

    record Refused(String reason) implements Ramp {}

    /// Near a rough onset.
    static Ramp of(Channel forward, double roughS, double restS) {
        var near = forward.between(roughS - BEFORE_S, Math.min(restS - 0.2, roughS + AFTER_S));
        if (near.size() < 12) {
            return new Refused("too few readings of acceleration around the onset");
        }
        double deepest = 0;
        for (double value : near.values()) {
            deepest = Math.min(deepest, value);
        }
        double level = Stops.median(forward, roughS + 0.3, Math.max(roughS + 0.5, restS - 0.2));
        double fall = Double.isFinite(level) ? Math.min(level, -1) : deepest / 2;
        double[] times = near.timesS();
        ModelFit.Model model = p -> {
            double[] shown = new double[times.length];
            for (int i = 0; i < shown.length; i++) {
                shown[i] = at(times[i], p);
            }
            return shown;
        };
        var parameters = List.of(
                Parameter.free("level before", 0, -3, 3),
                Parameter.free("onset", crossing(near, fall) - 0.1, roughS - BEFORE_S, roughS + AFTER_S),
                Parameter.known("build-up", BUILD_UP_S, BUILD_UP_SD, 0.02, 0.9),
                Parameter.free("deceleration", fall, -20, -0.5),
                Parameter.known("drift", 0, 2, -20, 20),
                Parameter.known("dive", DIVE, DIVE_SD, 0, 0.2));
        return fitted(near, model, parameters);
    }

    private static Ramp fitted(Channel near, ModelFit.Model model, List<Parameter> parameters) {
        if (!(ModelFit.fit(near.values(), 1, model, parameters) instanceof ModelFit.Outcome.Settled first)) {
            return new Refused("the onset cannot be found in the acceleration: its fit did not settle");
        }
        double sigma = spread(near, model.at(first.values()));
        if (!(ModelFit.fit(near.values(), sigma, model, parameters) instanceof ModelFit.Outcome.Settled settled)) {
            return new Refused("the onset cannot be found in the acceleration: its fit did not settle");
        }
        double wider = lasting(near, model.at(settled.values()));
        double onsetSd = StrictMath.hypot(SHAPE_S, wider * Math.sqrt(settled.covariance()[1][1]));
        if (onsetSd > 0.1) {
            return new Refused(String.format(
                    Locale.ROOT, "the onset would be known to %.2f s only: the mounting shakes too much", onsetSd));
        }
        double[] onset = new double[settled.values().length];
        onset[1] = 1;
        return new Known(
                settled.values()[1],
                onsetSd,
                settled.fromPriorOf(5, onset),
                settled.values()[2],
                wider * Math.sqrt(settled.covariance()[2][2]));
    }

    private static double at(double timeS, double[] p) {
        double u = timeS - p[1];
        if (u <= 0) {
            return p[0];
        }
        double grown = Math.max(0, u - p[2]);
        double braked = Math.min(1, u / p[2]);
        double dived = (swung(u) - swung(grown)) / p[2];
        return p[0] + (p[3] - p[0]) * (braked + p[5] * dived) / (1 + p[5]) + p[4] * grown;
    }

    /// What a damped oscillator makes of an input that grows by 1 a second, after so many seconds.
    ///
    /// Source: Laplace transform of a second-order lag, any text on control.
    private static double swung(double u) {
        if (u <= 0) {
            return 0;
        }
        double free = SWING_PER_S * Math.sqrt(1 - DAMPING * DAMPING);
        double late = 2 * DAMPING / SWING_PER_S;
        double sine = (2 * DAMPING * DAMPING - 1) / free * StrictMath.sin(free * u);
        return u - late + StrictMath.exp(-DAMPING * SWING_PER_S * u) * (late * StrictMath.cos(free * u) + sine);
    }

    /// The first time at which half of the fall is lastingly there.
    private static double crossing(Channel near, double fall) {
        int below = 0;
        for (int i = 0; i < near.size(); i++) {
            below = near.value(i) < fall / 2 ? below + 1 : 0;
            if (below == 4) {
                return near.timeS(i - 3);
            }
        }
        return near.timeS(near.size() / 2);
    }

    private static double spread(Channel near, double[] shown) {
        double sum = 0;
        for (int i = 0; i < shown.length; i++) {
            sum += (near.value(i) - shown[i]) * (near.value(i) - shown[i]);
        }
        return Math.max(1e-3, Math.sqrt(sum / Math.max(1, shown.length - 5)));
    }

    /// How much wider a reading counts because its neighbours err alike: from the correlation of the residuals
    /// up to where it is lost.
    private static double lasting(Channel near, double[] shown) {
        int n = shown.length;
        double[] residuals = new double[n];
        double own = 0;
        for (int i = 0; i < n; i++) {
            residuals[i] = near.value(i) - shown[i];
            own += residuals[i] * residuals[i];
        }
        double factor = 1;
        for (int k = 1; k < n / 4; k++) {
            double product = 0;
            for (int i = k; i < n; i++) {
                product += residuals[i] * residuals[i - k];
            }
            if (product <= 0) {
                break;
            }
            factor += 2 * product / own;
        }
        return Math.sqrt(Math.max(1, factor));
    }
}
