package org.measuredmile.comparison.expected;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.random.RandomGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

class BandPropertyTest {
    private static final int TIMES = 4000;
    private static final Seed SEED = new Seed(20_310_303).child("band");

    /// Bikes that scatter by 1 about their line: `measured` by how well each was measured, the rest by how
    /// they are.
    private record World(double measured, double unevenness) {
        Bike draw(RandomGenerator random, double from, double to) {
            double x = Draw.rectangular(random, from, to);
            double standard = measured * StrictMath.exp(unevenness * Draw.normal(random));
            double own = Math.sqrt(1 - measured * measured) * Draw.normal(random);
            return new Bike(x, 3 + 2 * x + own + standard * Draw.normal(random), standard);
        }
    }

    private record Bike(double x, double y, double standard) {}

    private static Band through(Bike[] bikes) {
        double[] x = new double[bikes.length];
        double[] y = new double[bikes.length];
        double[] standards = new double[bikes.length];
        for (int i = 0; i < bikes.length; i++) {
            x[i] = bikes[i].x();
            y[i] = bikes[i].y();
            standards[i] = bikes[i].standard();
        }
        return Band.around(TheilSen.through(x, y), x, y, standards);
    }

    /// 4,000 further bikes tell a coverage of 95 % to 0.7 % (two standard deviations). The band may be
    /// wide, not narrow, where bikes are few, and where they are mostly told apart by how they were
    /// measured, which bounds it from below.
    @ParameterizedTest
    @CsvSource({
        "8, 0.1, 0, 0.98", "9, 0.1, 0, 0.97", "12, 0.1, 0, 0.97", "24, 0.1, 0, 0.965", "60, 0.1, 0, 0.96",
        "8, 0.6, 0, 0.995", "12, 0.6, 0, 0.98", "24, 0.6, 0, 0.97", "12, 0.6, 0.4, 0.985", "24, 0.6, 0.4, 0.975"
    })
    void the_band_holds_95_of_100_further_bikes_and_misses_as_many_above_as_below(
            int n, double measured, double unevenness, double most) {
        var world = new World(measured, unevenness);
        int above = 0;
        int below = 0;
        for (int i = 0; i < TIMES; i++) {
            var random = SEED.child(n + " " + world).stream(i);
            Bike[] bikes = new Bike[n];
            double low = 1;
            double high = 0;
            for (int k = 0; k < n; k++) {
                bikes[k] = world.draw(random, 0, 1);
                low = Math.min(low, bikes[k].x());
                high = Math.max(high, bikes[k].x());
            }
            Bike further = world.draw(random, low, high);
            var interval = through(bikes).at(further.x(), further.standard());
            above += further.y() > interval.high() ? 1 : 0;
            below += further.y() < interval.low() ? 1 : 0;
        }
        double coverage = 1 - (above + below) / (double) TIMES;
        assertThat(coverage).as("coverage of " + n + " bikes").isBetween(0.937, most);
        assertThat(above / (double) TIMES).as("beyond its upper side").isBetween(0.002, 0.034);
        assertThat(below / (double) TIMES).as("beyond its lower side").isBetween(0.002, 0.034);
    }

    @ParameterizedTest
    @CsvSource({"12, 2", "24, 6"})
    void wild_bikes_do_not_double_the_band(int n, int wild) {
        double with = 0;
        double without = 0;
        for (int i = 0; i < 300; i++) {
            var random = SEED.child("wild " + n).stream(i);
            Bike[] bikes = new Bike[n];
            for (int k = 0; k < n; k++) {
                bikes[k] = new World(0.6, 0).draw(random, 0, 1);
            }
            without += through(bikes).at(0.5).halfWidth();
            for (int k = 0; k < wild; k++) {
                bikes[k] = new Bike(bikes[k].x(), 100 * (k % 2 == 0 ? 1 : -1), 0.6);
            }
            with += through(bikes).at(0.5).halfWidth();
        }
        assertThat(with / without).isBetween(1.0, 2.0);
    }
}
