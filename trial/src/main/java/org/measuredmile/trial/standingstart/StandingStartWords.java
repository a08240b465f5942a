package org.measuredmile.trial.standingstart;

import java.util.Locale;
import org.measuredmile.quantity.Unit;

/// How this trial prints numbers inside its reasons and findings: fixed decimals, a point, the unit
/// after a space.
final class StandingStartWords {
    private StandingStartWords() {}

    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f s", value);
    }

    static String metres(double value) {
        return String.format(Locale.ROOT, "%.1f m", value);
    }

    static String mps(double value) {
        return String.format(Locale.ROOT, "%.2f m/s", value);
    }

    static String mph(double mps) {
        return String.format(Locale.ROOT, "%.1f mph", Unit.MILE_PER_HOUR.fromSi(mps));
    }

    static String mps2(double value) {
        return String.format(Locale.ROOT, "%.2f m/s²", value);
    }
}
