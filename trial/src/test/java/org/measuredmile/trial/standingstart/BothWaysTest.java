package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.trial.standingstart.BothWays.Difference;
import org.measuredmile.trial.standingstart.BothWays.Road;

/// The expected numbers are worked by hand for a bike that accelerates alike at every speed.
class BothWaysTest {
    private static final double MPS2 = 0.5;
    private static final double TO_MPS = 8;
    private static final SpeedCurve EVEN = new SpeedCurve(new double[] {0, TO_MPS}, new double[] {MPS2, MPS2});
    /// Two ways that scatter so much that they say nothing of the road.
    private static final Difference SAYS_NOTHING = new Difference(0, 1e6);

    @Test
    void aKnownRoadInStillAirLeavesNothing() {
        var left = BothWays.of(EVEN, TO_MPS, false, new Road(0, 0, 0.0064), SAYS_NOTHING);
        assertThat(left.late()).isCloseTo(0, within(1e-12));
        assertThat(left.standardUncertainty()).isCloseTo(0, within(1e-12));
    }

    /// (v/2)·(1/(a − s) + 1/(a + s)) − v/a = v·s²/(a·(a² − s²)), of which the mean over s is v·σ²/a³ for small
    /// σ, and the standard deviation √2 of that.
    @Test
    void anUnknownSlopeMakesTheMeanOfBothWaysLateByItsVariance() {
        var left = BothWays.of(EVEN, TO_MPS, false, new Road(0.02, 0, 0), SAYS_NOTHING);
        double expected = TO_MPS * 0.02 * 0.02 / (MPS2 * MPS2 * MPS2);
        assertThat(left.late()).isCloseTo(expected, within(0.05 * expected));
        assertThat(left.standardUncertainty()).isCloseTo(Math.sqrt(2) * expected, within(0.15 * expected));
    }

    /// Both ways alike, the wind's square takes c·w²/2 off the acceleration: late by v·c·σ²/(2a²), and by the
    /// second order of c·w·v as well, ∫ (c·σ·v)²/a³ dv.
    @Test
    void theWindsOwnSquareSlowsBothWays() {
        double perM = 0.0064;
        double windSd = 0.7;
        var left = BothWays.of(EVEN, TO_MPS, false, new Road(0, windSd, perM), SAYS_NOTHING);
        double square = TO_MPS * perM * windSd * windSd / (2 * MPS2 * MPS2);
        double second = Math.pow(perM * windSd, 2) * Math.pow(TO_MPS, 3) / (3 * Math.pow(MPS2, 3));
        assertThat(left.late()).isCloseTo(square + second, within(0.05 * (square + second)));
    }

    /// A slope of 0.1 m/s² makes 8 m/s take 20 s up and 13.33 s down, 6.67 s apart; on the level it is 16 s, so
    /// that the mean of both is 0.667 s late.
    @Test
    void waysThatAreClearlyApartTellHowLateTheirMeanIs() {
        var apart = BothWays.of(EVEN, TO_MPS, false, new Road(0.05, 0, 0), new Difference(20 / 3.0, 0.3));
        var turned = BothWays.of(EVEN, TO_MPS, false, new Road(0.05, 0, 0), new Difference(-20 / 3.0, 0.3));
        assertThat(apart.late()).isCloseTo(2 / 3.0, within(0.1));
        assertThat(turned.late()).isCloseTo(apart.late(), within(1e-9));
        var alike = BothWays.of(EVEN, TO_MPS, false, new Road(0.05, 0, 0), new Difference(0, 0.3));
        assertThat(alike.late()).isLessThan(0.01);
    }

    @Test
    void waysFartherApartThanAnyRoadExplainsStillGiveANumber() {
        var left = BothWays.of(EVEN, TO_MPS, true, new Road(0.03, 0.7, 0.0064), new Difference(900, 0.1));
        assertThat(left.late()).isFinite().isPositive();
    }
}
