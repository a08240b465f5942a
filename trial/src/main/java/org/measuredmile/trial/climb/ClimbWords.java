package org.measuredmile.trial.climb;

import java.util.Locale;

/// How this trial prints numbers inside its reasons and findings.
final class ClimbWords {
    private ClimbWords() {}

    static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f s", value);
    }

    static String metres(double value) {
        return String.format(Locale.ROOT, "%.1f m", value);
    }

    static String mps(double value) {
        return String.format(Locale.ROOT, "%.2f m/s", value);
    }

    static String percent(double ratio) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * ratio);
    }

    static String plain(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
