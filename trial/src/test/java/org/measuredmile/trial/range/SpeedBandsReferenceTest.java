package org.measuredmile.trial.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;
import org.measuredmile.recording.motion.Journey;

/// A ride at two even speeds and two even powers: what a metre costs is power over speed.
class SpeedBandsReferenceTest {
    private static final int SECONDS = 1200;

    private static SpeedBands bands(DoubleUnaryOperator speedMps, DoubleUnaryOperator watts) {
        double[] times = new double[SECONDS + 1];
        double[] speeds = new double[SECONDS + 1];
        double[] amperes = new double[SECONDS + 1];
        double[] volts = new double[SECONDS + 1];
        for (int i = 0; i <= SECONDS; i++) {
            times[i] = i;
            speeds[i] = speedMps.applyAsDouble(i);
            volts[i] = 50;
            amperes[i] = watts.applyAsDouble(i) / 50;
        }
        var recording = new Recording(
                "ride.csv",
                Format.DELIMITED,
                "",
                Optional.empty(),
                true,
                times.length,
                times,
                List.of(new Segment(0, SECONDS)),
                List.of(
                        new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, speeds)),
                        new Channel(ChannelKind.VOLTAGE, "u", "V", new Channel.Series(times, volts)),
                        new Channel(ChannelKind.CURRENT, "i", "A", new Channel.Series(times, amperes))),
                new TreeMap<>(),
                List.of());
        var journey = Journey.of(List.of(new Journey.Part(recording, 0))).orElseThrow();
        return SpeedBands.of(journey, BatteryLog.of(recording).orElseThrow());
    }

    /// 6 m/s (21.6 km/h) at 150 W for 600 s, then 9 m/s (32.4 km/h) at 360 W: 25 and 40 J/m. The ten seconds
    /// with the change in them lie in a band of their own, too short to count.
    @Test
    void eachBandCostsItsPowerOverItsSpeed() {
        var bands = bands(t -> t < 600 ? 6 : 9, t -> t < 600 ? 150 : 360).bands();

        assertThat(bands).extracting(SpeedBands.Band::value).containsExactly("20-25-kmh", "30-35-kmh");
        assertThat(bands.get(0).joulesPerMetre()).isCloseTo(25, within(0.1));
        assertThat(bands.get(0).wayM()).isCloseTo(6 * 600, within(61.0));
        assertThat(bands.get(0).pieces()).isBetween(59, 60);
        assertThat(bands.get(1).joulesPerMetre()).isCloseTo(40, within(0.1));
        assertThat(bands.get(1).wayM()).isCloseTo(9 * 600, within(91.0));
    }

    /// Pieces of 10 s at 6 m/s that cost 20 and 30 J/m by turns: 60 pieces, each 5·60 J off their mean, make
    /// √(60·300²·60/59)/3600 J/m.
    @Test
    void theScatterOfItsPiecesTellsHowWellABandIsKnown() {
        var band = bands(t -> t < 600 ? 6 : 0.2, t -> ((int) ((t - 0.5) / 10)) % 2 == 0 ? 120 : 180)
                .bands()
                .getFirst();

        assertThat(band.joulesPerMetre()).isCloseTo(25, within(0.2));
        // Half a second of the wrong power at each change makes the pieces a tenth more alike.
        assertThat(band.standardUncertainty()).isCloseTo(Math.sqrt(60 * 300.0 * 300 * 60 / 59) / 3600, within(0.08));
    }

    @Test
    void aBandWithLessThanHalfAKilometreIsNotTold() {
        assertThat(bands(t -> t < 80 ? 6 : 0.2, t -> 150).bands()).isEmpty();
        assertThat(bands(t -> t < 100 ? 6 : 0.2, t -> 150).bands()).hasSize(1);
    }
}
