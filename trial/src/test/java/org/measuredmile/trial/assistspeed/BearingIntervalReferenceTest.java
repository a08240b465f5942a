package org.measuredmile.trial.assistspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

/// A wind of unknown bearing beside everything else, where either is all there is and where both are.
class BearingIntervalReferenceTest {
    private static final double NORMAL = Double.POSITIVE_INFINITY;

    /// Student's t at 97.5 %: 1.960 for no end of degrees of freedom, 2.228 for 10, 4.303 for 2 (any printed
    /// table).
    @ParameterizedTest
    @CsvSource({"Infinity, 1.960", "10, 2.228", "2, 4.303"})
    void withoutWindItIsStudentsT(double degrees, double quantile) {
        assertThat(BearingInterval.halfWidth(0, 0.3, degrees) / 0.3).isCloseTo(quantile, within(0.0005));
    }

    /// |A·cos φ| stays below A·sin(0.95·π/2) for 95 % of all bearings: 0.9969·A (JCGM 101:2008, 6.4.6).
    @Test
    void withWindAloneItIsNearlyAllOfTheWind() {
        assertThat(BearingInterval.halfWidth(1, 0.03, NORMAL)).isCloseTo(Math.sin(0.95 * Math.PI / 2), within(0.02));
    }

    @ParameterizedTest
    @CsvSource({"1, 0.2, Infinity", "1, 0.5, 8", "0.4, 0.5, Infinity", "2, 1, 4"})
    void itHolds95OfAHundredDraws(double amplitude, double scale, double degrees) {
        var random = new Seed(20_310_612).child("bearings").stream(0);
        double halfWidth = BearingInterval.halfWidth(amplitude, scale, degrees);
        int held = 0;
        int draws = 40_000;
        for (int i = 0; i < draws; i++) {
            double wind = amplitude * Math.cos(2 * Math.PI * random.nextDouble());
            double rest = degrees == NORMAL ? Draw.normal(random) : Draw.studentT(random, degrees);
            held += Math.abs(wind + scale * rest) <= halfWidth ? 1 : 0;
        }

        // Four standard deviations of a share of 95 %.
        assertThat((double) held / draws).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / draws)));
    }

    @Test
    void ofABudgetOnlyTheWindAlongTheRoadIsTakenForABearing() {
        var along = Contribution.typeB(WindPart.ALONG, 0.2);
        var rest = Contribution.typeB("calibration", 0.05);
        var with = BearingInterval.around(Budget.of(rest, along), 7);
        var without = BearingInterval.around(Budget.of(rest, Contribution.typeB("something else", 0.2)), 7);

        // The amplitude of a cosine is √2 of its standard deviation.
        assertThat(with.interval95().halfWidth())
                .isCloseTo(BearingInterval.halfWidth(0.2 * Math.sqrt(2), 0.05, NORMAL), withinPercentage(0.01));
        assertThat(with.standard()).isCloseTo(Math.hypot(0.2, 0.05), within(1e-12));
        assertThat(without.interval95().halfWidth())
                .isCloseTo(1.959964 * Math.hypot(0.2, 0.05), withinPercentage(0.01));
        assertThat(with.interval95().halfWidth())
                .isLessThan(without.interval95().halfWidth());
    }
}
