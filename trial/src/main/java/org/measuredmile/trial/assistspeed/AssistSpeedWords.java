package org.measuredmile.trial.assistspeed;

import java.util.Locale;

/// Numbers as the trial's findings and reasons say them: speeds in both units, rounded for reading.
final class AssistSpeedWords {
    private static final double KMH_PER_MPS = 3.6;

    private AssistSpeedWords() {}

    static String speed(double mps) {
        return String.format(Locale.ROOT, "%.2f m/s (%.1f km/h)", mps, mps * KMH_PER_MPS);
    }

    static String seconds(double seconds) {
        return String.format(Locale.ROOT, seconds == Math.rint(seconds) ? "%.0f s" : "%.1f s", seconds);
    }

    static String slope(double mps2) {
        return String.format(Locale.ROOT, "%.3f m/s²", mps2);
    }

    static String percent(double ratio) {
        return String.format(Locale.ROOT, "%.1f %%", ratio * 100).replace(".0 %", " %");
    }
}
