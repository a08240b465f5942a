package org.measuredmile.trial.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// Batteries whose voltage falls in a line at an even current, so that the energy is known.
class BatteryLogReferenceTest {
    /// 5 A once a second over 100 s; voltage falls from 52 V at 0 s to 47 V at 100 s, written twice only.
    private static BatteryLog log(double sign, double[] voltageTimes, double[] volts) {
        double[] times = new double[101];
        double[] amperes = new double[101];
        for (int i = 0; i < times.length; i++) {
            times[i] = i;
            amperes[i] = sign * 5;
        }
        var recording = new Recording(
                "battery.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                times.length,
                times,
                List.of(new Segment(0, 100)),
                List.of(
                        new Channel(ChannelKind.VOLTAGE, "u", "V", new Channel.Series(voltageTimes, volts)),
                        new Channel(ChannelKind.CURRENT, "i", "A", new Channel.Series(times, amperes))),
                new TreeMap<>(),
                List.of());
        return BatteryLog.of(recording).orElseThrow();
    }

    private static BatteryLog falling(double sign) {
        return log(sign, new double[] {0, 100}, new double[] {52, 47});
    }

    /// ∫ 5 A·(52 V − 0.05 V/s·t) dt.
    @ParameterizedTest
    @CsvSource({"0, 100", "10, 35", "20.5, 21.25", "-50, 150"})
    void theEnergyIsTheVoltageBetweenItsSamplesTimesTheCurrent(double fromS, double toS) {
        double from = Math.max(0, fromS);
        double to = Math.min(100, toS);
        var given = falling(1).between(fromS, toS);

        // A trapezoid from sample to sample is exact for a line; a piece of one step has that step's mean power.
        assertThat(given.joules()).isCloseTo(5 * (52 * (to - from) - 0.025 * (to * to - from * from)), within(0.11));
        assertThat(given.seconds()).isCloseTo(to - from, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, -1})
    void aCurrentCountedEitherWayGivesWhatTheBatteryGave(double sign) {
        var log = falling(sign);

        assertThat(log.turned()).isEqualTo(sign < 0);
        assertThat(log.power().value(0)).isCloseTo(260, within(1e-9));
        assertThat(log.power().value(30)).isCloseTo(5 * (52 - 1.5), within(1e-9));
        assertThat(log.power().value(100)).isCloseTo(235, within(1e-9));
        assertThat(log.between(0, 100).joules()).isCloseTo(24_750, within(1e-6));
    }

    @Test
    void beforeTheFirstVoltageAndAfterTheLastTheyStay() {
        var log = log(1, new double[] {40, 60}, new double[] {50, 48});

        assertThat(log.power().value(0)).isCloseTo(250, within(1e-9));
        assertThat(log.power().value(50)).isCloseTo(245, within(1e-9));
        assertThat(log.power().value(100)).isCloseTo(240, within(1e-9));
    }

    @Test
    void itsOwnRhythmAllowsTwoAndAHalfStepsButNeverLessThanFiveSeconds() {
        assertThat(falling(1).gapLimitS()).isEqualTo(5);
    }
}
