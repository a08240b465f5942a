package org.measuredmile.demo.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Seed;

class BrakedStopTest {
    private static final BrakedBike PLAIN = new BrakedBike(6, 0, 0.1, 0.25, 0, 0);

    /// 8.9408 m/s, 0.25 s to 6 m/s²: 7.7635 m from onset (worked example A1 of the crew's study of algorithms, by
    /// closed form there); 0.1 s before it adds 0.89408 m.
    @Test
    void steppingAgreesWithTheClosedForm() {
        var stop = BrakedStop.of(PLAIN, new BrakedStop.Entry(8.9408, 0, 0));
        assertThat(stop.fromOnsetM()).isCloseTo(7.7635, within(0.0005));
        assertThat(stop.fromControlM()).isCloseTo(7.7635 + 0.8941, within(0.0005));
        assertThat(stop.meanDevelopedMps2()).isCloseTo(6.0, within(0.002));
    }

    @Test
    void uphillStopsSooner() {
        var level = BrakedStop.of(PLAIN, new BrakedStop.Entry(8.9408, 0, 0));
        var uphill = BrakedStop.of(PLAIN, new BrakedStop.Entry(8.9408, 0, 0.01));
        assertThat(uphill.fromOnsetM()).isLessThan(level.fromOnsetM());
    }

    @Test
    void theSameSeedGivesTheSameDay() {
        var once = new SimulatedBraking("trace").day(new Seed(5), 7);
        var again = new SimulatedBraking("trace").day(new Seed(5), 7);
        assertThat(again.recordings().get("stops.csv"))
                .isEqualTo(once.recordings().get("stops.csv"));
        assertThat(again.truths()).isEqualTo(once.truths());
        assertThat(new SimulatedBraking("trace").day(new Seed(5), 8).truths()).isNotEqualTo(once.truths());
    }
}
