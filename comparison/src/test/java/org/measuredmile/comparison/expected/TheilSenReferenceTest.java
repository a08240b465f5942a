package org.measuredmile.comparison.expected;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.quantity.statistics.Sample;

class TheilSenReferenceTest {
    /// The example of Sen, Journal of the American Statistical Association 63 (1968) 1379–1389, section 6.
    private static final double[] SEN_X = {1, 2, 3, 4, 10, 12, 18};

    private static final double[] SEN_Y = {9, 15, 19, 20, 45, 55, 78};

    @Test
    void sens_example_has_slope_4() {
        // Sen (1968), section 6: slope 4, interval from 26/7 to 35/8; also a test of SciPy (stats.theilslopes).
        var line = TheilSen.through(SEN_X, SEN_Y);
        assertThat(line.pairSlopes()).hasSize(21);
        assertThat(line.slope()).isEqualTo(4, within(1e-12));
        Interval interval = line.slopeInterval(0.93);
        assertThat(interval.low()).isEqualTo(26.0 / 7, within(1e-12));
        assertThat(interval.high()).isEqualTo(35.0 / 8, within(1e-12));
    }

    @Test
    void both_intercepts_in_use_are_known() {
        // Median residual 6, as the package deming for R has it; 4 from the two medians, as a test of SciPy has it.
        var line = TheilSen.through(SEN_X, SEN_Y);
        assertThat(line.intercept()).isEqualTo(6, within(1e-12));
        assertThat(line.interceptOfMedians()).isEqualTo(4, within(1e-12));
    }

    @Test
    void five_points_of_a_textbook() {
        // Data of Hollander, Wolfe and Chicken as in the package NSM3 for R (theil); values computed for the
        // references.
        double[] x = {1, 2, 3, 4, 5};
        double[] y = {1.26, 1.27, 1.12, 1.16, 1.03};
        var line = TheilSen.through(x, y);
        assertThat(line.slope()).isEqualTo(-0.05625, within(1e-12));
        assertThat(line.intercept()).isEqualTo(1.31625, within(1e-12));
        assertThat(line.interceptOfMedians()).isEqualTo(1.32875, within(1e-12));
        var squares = LineFit.through(x, y);
        assertThat(squares.intercept()).isEqualTo(1.339, within(1e-12));
        assertThat(squares.slope()).isEqualTo(-0.057, within(1e-12));
    }

    @Test
    void one_wild_point_moves_least_squares_and_not_this_line() {
        // Computed for the references: y = 2 + 0.5·x with its last point at 20; least squares 0.036364 + 1.236364·x.
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
        double[] y = new double[10];
        for (int i = 0; i < 10; i++) {
            y[i] = i == 9 ? 20 : 2 + 0.5 * i;
        }
        assertThat(TheilSen.through(x, y).slope()).isEqualTo(0.5, within(1e-12));
        assertThat(LineFit.through(x, y).intercept()).isEqualTo(0.036364, within(1e-6));
        assertThat(LineFit.through(x, y).slope()).isEqualTo(1.236364, within(1e-6));
    }

    @Test
    void the_robust_scale_of_a_known_data_set() {
        // Brownlee's stack loss data (1965): loss, water temperature, acid. Without factors for small samples R's
        // robustbase gives 8.87656, 2.21914 and 4.43828, as a test of statsmodels (robust.scale.qn_scale) holds; the
        // three values from memory.
        double[] loss = {42, 37, 37, 28, 18, 18, 19, 20, 15, 14, 14, 13, 11, 12, 8, 7, 8, 8, 9, 15, 15};
        double[] water = {27, 27, 25, 24, 22, 23, 24, 24, 23, 18, 18, 17, 18, 19, 18, 18, 19, 19, 20, 20, 20};
        double[] acid = {89, 88, 90, 87, 87, 87, 93, 93, 87, 80, 89, 88, 82, 93, 89, 86, 72, 79, 80, 82, 91};
        assertThat(unfactored(loss)).isEqualTo(8.87656, within(1e-9));
        assertThat(unfactored(water)).isEqualTo(2.21914, within(1e-9));
        assertThat(unfactored(acid)).isEqualTo(4.43828, within(1e-9));
    }

    private static double unfactored(double[] values) {
        return RobustScale.distance(Sample.of(values)) * RobustScale.NORMAL_CONSISTENCY;
    }
}
