package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;

class GustsTest {
    private static final Setting BIKE = new Setting(105, 3, 1.2, 9.80665);
    private static final double AREA_M2 = 0.6;

    private static CoastDown.Run atOneSpeed(double mps, double stepS, int samples) {
        double[] times = new double[samples];
        double[] speeds = new double[samples];
        for (int i = 0; i < samples; i++) {
            times[i] = i * stepS;
            speeds[i] = mps;
        }
        return new CoastDown.Run(true, times, speeds);
    }

    /// A wind that stays h all along and a speed that stays v: u(t) = −h·(1 − exp(−d·t)), d = ρ·C_dA·(v + w)/m_eff
    /// = 1.2·0.6·8/108, in closed form.
    @Test
    void aWindThatStaysMovesTheSpeedAsTheClosedFormSays() {
        var gusts = new Gusts(0, 8, 0.5);
        double[][] covariance = gusts.covariance(atOneSpeed(6, 0.5, 41), BIKE, AREA_M2, 2);
        double rate = 1.2 * 0.6 * 8 / 108;
        double at10 = 0.5 * (1 - Math.exp(-rate * 10));
        double at20 = 0.5 * (1 - Math.exp(-rate * 20));
        assertThat(covariance[20][20]).isCloseTo(at10 * at10, within(1e-9));
        assertThat(covariance[20][40]).isCloseTo(at10 * at20, within(1e-9));
        assertThat(covariance[40][20]).isEqualTo(covariance[20][40]);
        assertThat(covariance[0][0]).isZero();
    }

    /// Two thousand gusty stretches in steps of a hundredth of a second: their mean products.
    @Test
    void gustsMoveTheSpeedAsOftenRepeatedOnesDo() {
        var gusts = new Gusts(0.4, 8, 0);
        double rate = 1.2 * 0.6 * 6 / 108;
        double kept = Math.exp(-0.01 / 8);
        double[] sums = new double[3];
        int times = 2000;
        for (int i = 0; i < times; i++) {
            var random = new Seed(5).child("gusts").stream(i);
            double gust = 0.4 * Draw.normal(random);
            double moved = 0;
            double early = 0;
            for (int k = 1; k <= 2000; k++) {
                moved -= rate * (moved + gust) * 0.01;
                gust = kept * gust + 0.4 * Math.sqrt(1 - kept * kept) * Draw.normal(random);
                early = k == 1000 ? moved : early;
            }
            sums[0] += early * early / times;
            sums[1] += early * moved / times;
            sums[2] += moved * moved / times;
        }
        double[][] covariance = gusts.covariance(atOneSpeed(6, 1, 21), BIKE, AREA_M2, 0);
        assertThat(covariance[10][10]).isCloseTo(sums[0], Percentage.withPercentage(10));
        assertThat(covariance[10][20]).isCloseTo(sums[1], Percentage.withPercentage(10));
        assertThat(covariance[20][20]).isCloseTo(sums[2], Percentage.withPercentage(10));
    }

    @Test
    void fineStepsAndCoarseOnesAgree() {
        var gusts = new Gusts(0.4, 8, 0.4);
        double[][] coarse = gusts.covariance(atOneSpeed(6, 2, 11), BIKE, AREA_M2, 0);
        double[][] fine = gusts.covariance(atOneSpeed(6, 0.1, 201), BIKE, AREA_M2, 0);
        assertThat(coarse[10][10]).isCloseTo(fine[200][200], Percentage.withPercentage(0.5));
        assertThat(coarse[5][10]).isCloseTo(fine[100][200], Percentage.withPercentage(0.5));
    }

    /// Independent errors of one size are the plain fit's.
    @Test
    void aDiagonalCovarianceIsThePlainFit() {
        double[] times = {0, 5, 10, 15, 20, 25, 30, 35, 40};
        var runs = List.of(
                new CoastDown.Run(
                        true, times, new double[] {9.72, 7.77, 6.311, 5.163, 4.225, 3.432, 2.744, 2.134, 1.581}),
                new CoastDown.Run(
                        false, times, new double[] {9.70, 8.249, 7.12, 6.208, 5.447, 4.797, 4.228, 3.721, 3.262}));
        double[][] independent = new double[9][9];
        for (int i = 0; i < 9; i++) {
            independent[i][i] = 0.05 * 0.05;
        }
        var plain = found(CoastDown.fit(runs, BIKE, CoastDown.Before.USUAL, 0.05));
        var whole = found(CoastDown.fit(runs, BIKE, CoastDown.Before.USUAL, List.of(independent, independent)));
        assertThat(whole.load().rollingCoefficient()).isCloseTo(plain.load().rollingCoefficient(), within(1e-9));
        assertThat(whole.load().dragAreaM2()).isCloseTo(plain.load().dragAreaM2(), within(1e-7));
        assertThat(whole.reducedChiSquare()).isCloseTo(plain.reducedChiSquare(), within(1e-9));
    }

    private static CoastDown.Found found(CoastDown.Outcome outcome) {
        assertThat(outcome).isInstanceOf(CoastDown.Outcome.Settled.class);
        return ((CoastDown.Outcome.Settled) outcome).found();
    }
}
