package org.measuredmile.demo.ride;

/// A hill as it really is: a slope that swells and eases along its length.
///
/// Unit: metres; slope as the sine of its angle; `swell` relative to the mean slope.
public record RoadUp(double lengthM, double meanSine, double swell, double waveM, double phase) {
    /// The sine of the slope's angle at a place, measured from the first gate; even before and after the gates.
    public double sineAt(double alongM) {
        double inside = Math.clamp(alongM, 0, lengthM);
        return meanSine * (1 + swell * StrictMath.sin(2 * Math.PI * inside / waveM + phase));
    }

    /// The height above the first gate.
    public double heightM(double alongM) {
        double inside = Math.clamp(alongM, 0, lengthM);
        double wave = waveM / (2 * Math.PI);
        double swollen = wave * (StrictMath.cos(phase) - StrictMath.cos(inside / wave + phase));
        return meanSine * (inside + swell * swollen) + (alongM - inside) * sineAt(inside);
    }

    public double riseM() {
        return heightM(lengthM);
    }
}
