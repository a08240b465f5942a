package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.ChannelKind;

/// Worked examples D1 to D3 of the crew's own study of climbs (computed there with another program in another
/// language),
/// with the tolerances stated there.
class PassesReferenceTest {
    @Test
    void theLineThroughFourFixesCrossesWhereTheStudyHasIt() {
        double[] times = {0, 1, 2, 3};
        double[] along = {-6.2, -1.9, 2.7, 7.1};
        assertThat(GateCrossings.crossingS(times, along, 0, 3)).isCloseTo(1.4045, within(1e-4));
        assertThat(GateCrossings.crossingS(times, along, 1, 2)).isCloseTo(1.4130, within(1e-4));
    }

    @Test
    void fortyMetresBySpeedEndWhereTheStudyHasIt() {
        double[] values = {5.0, 5.0, 4.8, 4.6, 4.5, 4.5, 4.4, 4.4, 4.5, 4.5, 4.6, 4.6, 4.7};
        var way = TravelledWay.of(Simulated.channel(ChannelKind.SPEED, Simulated.times(0, 13, 1), values));
        assertThat(way.atM(12)).isCloseTo(55.25, within(1e-9));
        assertThat(way.atM(1.3)).isCloseTo(6.4700, within(1e-4));
        assertThat(way.reachedS(1.3, 40).orElseThrow()).isCloseTo(10.1022, within(1e-4));
        assertThat(way.reachedS(1.3, 60)).isEmpty();
    }

    @ParameterizedTest(name = "{1} m over {0} s")
    @CsvSource({"80, 2.5, 0.5136", "60, 3, 0.6746", "100, 2, 0.3800"})
    void theUncertaintyBetweenTwoGatesIsThatOfTheStudy(double memoryS, double sigmaM, double u) {
        assertThat(PassTiming.betweenGatesS(5, 5, 60, sigmaM, memoryS)).isCloseTo(u, within(1e-4));
    }

    @Test
    void theUncertaintyBySpeedIsThatOfTheStudy() {
        assertThat(PassTiming.bySpeedS(67, 1, 4.5)).isCloseTo(0.2440, within(1e-4));
    }
}
