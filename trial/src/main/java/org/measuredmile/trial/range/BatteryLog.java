package org.measuredmile.trial.range;

import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

/// The power that a battery gave, from a record of its voltage and current.
///
/// Shape: `power` holds a value at each sample of the current, positive where the battery gives; `turned` says that the
/// log counts a current out of the battery as negative; `gapLimitS` is the longest step of its own rhythm.
/// Unit: watts, seconds.
record BatteryLog(Recording recording, Channel power, boolean turned, double gapLimitS) {
    private static final double GAP_STEPS = 2.5;
    private static final double GAP_S = 5;

    static Optional<BatteryLog> of(Recording recording) {
        var voltage = recording.channel(ChannelKind.VOLTAGE);
        var current = recording.channel(ChannelKind.CURRENT);
        if (voltage.isEmpty() || current.isEmpty() || current.get().size() < 2) {
            return Optional.empty();
        }
        double[] watts = new double[current.get().size()];
        double sum = 0;
        for (int i = 0; i < watts.length; i++) {
            watts[i] =
                    near(voltage.get(), current.get().timeS(i)) * current.get().value(i);
            sum += watts[i];
        }
        boolean turned = sum < 0;
        for (int i = 0; i < watts.length && turned; i++) {
            watts[i] = -watts[i];
        }
        var power = new Channel(
                ChannelKind.OTHER,
                "battery power",
                "W",
                new Channel.Series(current.get().timesS(), watts));
        return Optional.of(new BatteryLog(recording, power, turned, Math.max(GAP_S, GAP_STEPS * power.medianStepS())));
    }

    /// Voltage changes slowly: the nearest line between two samples, the first or last beyond them.
    private static double near(Channel voltage, double timeS) {
        int next = voltage.indexAtOrAfter(timeS);
        if (next == 0 || next >= voltage.size()) {
            return voltage.value(Math.min(next, voltage.size() - 1));
        }
        double share = (timeS - voltage.timeS(next - 1)) / (voltage.timeS(next) - voltage.timeS(next - 1));
        return (1 - share) * voltage.value(next - 1) + share * voltage.value(next);
    }

    /// What it gave within its rhythm between two times, in joules, and how long that was.
    Given between(double fromS, double toS) {
        double joules = 0;
        double seconds = 0;
        for (int i = Math.max(1, power.indexAtOrAfter(fromS)); i < power.size() && power.timeS(i - 1) < toS; i++) {
            double begin = Math.max(fromS, power.timeS(i - 1));
            double end = Math.min(toS, power.timeS(i));
            if (power.timeS(i) - power.timeS(i - 1) <= gapLimitS && end > begin) {
                joules += (end - begin) * (power.value(i) + power.value(i - 1)) / 2;
                seconds += end - begin;
            }
        }
        return new Given(joules, seconds);
    }

    /// Energy and the time it was logged over.
    record Given(double joules, double seconds) {}

    BatteryLog on(Channel shifted) {
        return new BatteryLog(recording, shifted, turned, gapLimitS);
    }
}
