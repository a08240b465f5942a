package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.trial.TrialInput;

/// Wind along the hill of the test days, whose way up bears 63°.
class HillWindReferenceTest {
    private static HillWind wind(ClimbDays day) {
        TrialInput input = day.run("c-1", "throttle").input();
        var run = input.runs().getFirst();
        return HillWind.of(input, run, Hill.of(input, run));
    }

    /// 2 m/s·cos(from − 63°): from ahead all of it, from the side nothing, from behind all of it the other way,
    /// 60° off half. Each within 0.3 of its speed and half a metre a second.
    @ParameterizedTest
    @CsvSource({"63, 2", "153, 0", "333, 0", "243, -2", "123, 1", "3, 1"})
    void aWindOfKnownBearingCountsByTheCosineOfItsAngle(String from, double headMps) {
        var wind =
                wind(ClimbDays.onTheHill().reading("c-1", "wind-speed", "2 m/s").reading("c-1", "wind-from", from));

        assertThat(wind.headMps()).isCloseTo(headMps, within(1e-3));
        assertThat(wind.standardUncertainty()).isCloseTo(Math.hypot(0.5, 0.3 * 2), within(1e-9));
        assertThat(wind.assumed()).isEmpty();
    }

    /// The standard deviation of w·cos φ, all φ alike, is w/√2 (JCGM 101:2008, 6.4.6).
    @Test
    void aWindOfUnknownBearingBlowsNoWayAndBothWays() {
        var wind = wind(ClimbDays.onTheHill().reading("c-1", "wind-speed", "2 m/s"));

        assertThat(wind.headMps()).isZero();
        assertThat(wind.standardUncertainty()).isCloseTo(Math.hypot(0.5, Math.sqrt(2)), within(1e-9));
        assertThat(wind.assumed()).contains("unknown bearing");
    }
}
