package org.measuredmile.trial.braking;

import java.util.Locale;

/// How this trial prints numbers inside its reasons and findings: fixed decimals, a point, the unit after a space.
final class BrakingWords {
    /// The source of a speed that two instruments made together.
    static final String BOTH = "satellite speed and accelerometer";

    private BrakingWords() {}

    static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f s", value);
    }

    static String metres(double value) {
        return String.format(Locale.ROOT, "%.2f m", value);
    }

    static String kmh(double mps) {
        return String.format(Locale.ROOT, "%.1f km/h", mps * 3.6);
    }

    static String mps2(double value) {
        return String.format(Locale.ROOT, "%.2f m/s²", value);
    }
}
