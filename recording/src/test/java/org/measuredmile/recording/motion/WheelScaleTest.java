package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;

/// Simulated rides whose wheel is set to the wrong size by a known share.
class WheelScaleTest {
    private static Channel receiver(double seconds, Random random) {
        var times = Simulated.times(0, seconds, 1);
        return Simulated.noisy(Simulated.channel(ChannelKind.SPEED, times, Simulated::townMps), 0.1, random);
    }

    private static Channel wheel(double seconds, double share) {
        var times = Simulated.times(0.35, seconds, 0.5);
        return Simulated.channel(ChannelKind.WHEEL_SPEED, times, t -> share * Simulated.townMps(t));
    }

    @ParameterizedTest(name = "the wheel says {0} of the truth")
    @ValueSource(doubles = {0.92, 0.98, 1.0, 1.04, 1.1})
    void theFactorIsFoundWithinItsUncertainty(double share) {
        var random = new Random(5);
        var scale = (WheelScale.Known) WheelScale.of(wheel(600, share), receiver(600, random));
        assertThat(scale.factor() * share).isCloseTo(1, within(2 * scale.standardUncertainty()));
        assertThat(scale.standardUncertainty()).isBetween(0.002, 0.006);
        assertThat(scale.isOff()).isEqualTo(Math.abs(share - 1) > 0.035);
    }

    @Test
    void aWheelOfTheWrongSizeIsAFindingThatNamesTheRatioAndWhatToDo() {
        var recording = Simulated.recording(wheel(600, 0.92), receiver(600, new Random(1)));
        var source = SpeedSource.best(recording).orElseThrow();
        assertThat(source.kind()).isEqualTo(SpeedSource.Kind.WHEEL);
        var finding = source.wheelScale().orElseThrow().finding("ride.csv").orElseThrow();
        assertThat(finding.code()).isEqualTo("wheel-size");
        assertThat(finding.message()).contains("1.08");
        assertThat(finding.remedy()).contains("roll-out");
        assertThat(source.scaled().channel().value(10)).isCloseTo(Simulated.townMps(5.35), within(0.05));
        assertThat(source.scaled().reason()).contains("its size by satellite over");
    }

    @Test
    void aShortWayGivesNoFactorAndSaysHowLongItWas() {
        var scale = (WheelScale.Unknown) WheelScale.of(wheel(100, 1), receiver(100, new Random(2)));
        assertThat(scale.reason()).contains("1500 m").containsPattern("for [0-9]{3} m");
    }

    @Test
    void aWheelThatDropsOutHalfOfTheTimeKeepsNoRatio() {
        var times = Simulated.times(0, 900, 1);
        var dropping = Simulated.channel(
                ChannelKind.WHEEL_SPEED, times, t -> Simulated.townMps(t) * (t % 97 < 40 ? 0.6 : 1.0));
        var scale = (WheelScale.Unknown) WheelScale.of(dropping, receiver(900, new Random(3)));
        assertThat(scale.reason()).contains("do not keep one ratio");
    }

    @Test
    void aWheelThatIsRecordedRarelyStandsBehindAFastReceiverAndTheReasonSaysSo() {
        var fast = Simulated.channel(ChannelKind.SPEED, Simulated.times(0, 60, 0.1), Simulated::townMps);
        var slow = Simulated.channel(ChannelKind.WHEEL_SPEED, Simulated.times(0, 60, 1), Simulated::townMps);
        var source = SpeedSource.best(Simulated.recording(fast, slow)).orElseThrow();
        assertThat(source.kind()).isEqualTo(SpeedSource.Kind.RECEIVER);
        assertThat(source.reason()).contains("0.10 s").contains("1.00 s");
        var half = Simulated.channel(ChannelKind.WHEEL_SPEED, Simulated.times(0, 30, 0.1), Simulated::townMps);
        assertThat(SpeedSource.best(Simulated.recording(fast, half))
                        .orElseThrow()
                        .reason())
                .contains("50 %");
    }
}
