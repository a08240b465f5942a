package org.measuredmile.trial.engagement;

import java.util.Locale;
import org.measuredmile.recording.Channel;

/// When a motor's thrust came or went, fitted to raw acceleration: constant before, a step where the rider's own push
/// begins or ends, and a ramp where the motor's does.
///
/// Formula: a(t) = a₀ + B·min(1, (t − t_c)/p)₊ + A·min(1, (t − τ)/r)₊, least squares in a₀, B, A for every τ on a grid
/// of 10 ms and every r of a list. The uncertainty of τ and of τ + r is that of their posterior with flat priors over
/// the grid.
/// Unit: seconds of the recording; `changeMps2` is A, negative where the thrust went.
/// Source: profile of a broken line (Seber and Wild, Nonlinear Regression, 1989, chapter 9, from memory).
sealed interface ThrustChange {
    /// A change that stands out.
    record Found(double beginS, double beginSdS, double endS, double endSdS, double changeMps2)
            implements ThrustChange {}

    /// None, and why not.
    record Refused(String reason) implements ThrustChange {}

    /// Looks for the change of thrust around the moment when the cranks began or stopped turning.
    ///
    /// @param comes whether the thrust is to come, else to go
    static ThrustChange find(Channel acceleration, double cranksS, double untilS, boolean comes) {
        return new ThrustSearch(acceleration, cranksS, untilS, comes).found();
    }

    static Refused weak(double changeMps2, double limitMps2) {
        return new Refused(String.format(
                Locale.ROOT,
                "no change of thrust stands out: %.2f m/s², at least %.2f m/s² needed",
                changeMps2,
                limitMps2));
    }

    static Refused unclear(double times, double limit) {
        return new Refused(String.format(
                Locale.ROOT,
                "no change of thrust stands out of the shaking: %.1f times, at least %.1f needed",
                times,
                limit));
    }
}
