package org.measuredmile.trial.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.ModeratedScatter;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.LoadPrior;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

/// The crew's own worked values of range, computed by hand in its study of algorithms (F1 to F3), and half-widths that
/// the study found by simulation.
class RangeReferenceTest {
    private static final double JOULES_PER_METRE_OF_WH_PER_KM = 3.6;
    private static final RoadLoad LOAD = new RoadLoad(0.009, 0.6);
    private static final Setting RIDDEN = new Setting(110, 0, 1.2, 9.80665);
    private static final Setting REFERENCE = new Setting(105, 0, 1.188, 9.80665);

    private static RideConditions ridden(double riderW) {
        return new RideConditions(RIDDEN, 6.5 * 6.5, 1 / 6.5, 1.5, 0.002, 0.0003, riderW);
    }

    private static double wattHoursPerKm(RideConditions ride) {
        return EnergyModel.joulesPerMetre(ride, LOAD, 0.75) / JOULES_PER_METRE_OF_WH_PER_KM;
    }

    /// F1.
    @Test
    void theHandbooksRideByThrottleCostsWhatItSays() {
        double ride = wattHoursPerKm(ridden(0));
        double reference = wattHoursPerKm(ridden(0).atReference(REFERENCE, 0));
        assertThat(ride).isCloseTo(7.67745, within(1e-5));
        assertThat(reference).isCloseTo(6.75700, within(1e-5));
        assertThat(ride / reference).isCloseTo(1.13622, within(1e-5));
        assertThat(42 * ride / reference).isCloseTo(47.7213, within(1e-4));
        assertThat(new Range().declaration().handbook().example()).contains("7.67745", "6.75700", "1.13622", "47.721");
    }

    /// F2.
    @Test
    void theRidersPowerMovesTheRatioStrongly() {
        double ride = wattHoursPerKm(ridden(75));
        double reference = wattHoursPerKm(ridden(75).atReference(REFERENCE, 75));
        assertThat(ride).isCloseTo(4.47232, within(1e-5));
        assertThat(reference).isCloseTo(3.55187, within(1e-5));
        assertThat(ride / reference).isCloseTo(1.25915, within(1e-5));
        assertThat(wattHoursPerKm(ridden(90)) / reference).isCloseTo(1.07867, within(1e-5));
    }

    /// F3.
    @Test
    void aRideThatStoppedEarlyIsPredictedFromItsLaps() {
        double[] laps = {9.8, 10.4, 10.1, 9.6, 10.3, 10.0};
        var sample = Sample.of(laps);
        var scatter = new ModeratedScatter(sample.standardDeviation() / sample.mean(), 5);
        var stop = new EarlyStop(30_000, sample.mean() * 6 / 100, 6, 0.015, scatter);
        assertThat(stop.used()).isCloseTo(0.602, within(1e-12));
        assertThat(stop.predictedM()).isCloseTo(49_833.9, within(0.1));
        assertThat(stop.lapsLeft()).isCloseTo(3.9668, within(1e-4));
        assertThat(stop.lapSd()).isCloseTo(0.00773, within(1e-5));
        var known = stop.uncertainty();
        assertThat(known.standard() / stop.predictedM()).isCloseTo(0.01687, within(1e-5));
        assertThat(known.degreesOfFreedom()).isCloseTo(113.6, within(0.5));
        assertThat(known.interval95().halfWidth()).isCloseTo(1665.9, within(1.5));
    }

    /// The study's half-widths of a small correction by throttle: 3.9 % of the range with priors only, 3.3 % with a
    /// coast-down; of 75 W known to 20 % without one 35 %, of 75 W known to 5 % with one 9 %.
    @Test
    void theCorrectionByThrottleIsAsWideAsTheStudyFound() {
        var prior = LoadPrior.of(LoadPrior.Tyre.WIDE, LoadPrior.Posture.UNKNOWN);
        var coasted = new KnownLoad(
                prior.mean(),
                0.08 * prior.mean().rollingCoefficient(),
                0.06 * prior.mean().dragAreaM2(),
                -0.94,
                Double.POSITIVE_INFINITY,
                false,
                "");
        assertThat(relativeHalfWidth(0, 0, prior)).isBetween(0.033, 0.046);
        assertThat(relativeHalfWidth(0, 0, coasted)).isBetween(0.026, 0.040);
        assertThat(relativeHalfWidth(75, 0.2, prior)).isBetween(0.25, 0.45);
        assertThat(relativeHalfWidth(75, 0.05, coasted)).isBetween(0.06, 0.13);
    }

    private static double relativeHalfWidth(double riderW, double riderSd, KnownLoad load) {
        var spreads = new ReferenceRatio.Spreads(0.2, 0.5, 0.005, 0.3, 0.0002, riderSd);
        var ride = ridden(riderW);
        var ratio = ReferenceRatio.of(ride, ride.atReference(REFERENCE, riderW), load, spreads, RangeRules.V1);
        assertThat(ratio.reasonAgainst(RangeRules.V1)).isEmpty();
        var exact = new org.measuredmile.quantity.budget.Uncertainty(
                0, Double.POSITIVE_INFINITY, new org.measuredmile.quantity.Interval(42, 42));
        return ratio.times(42, exact, false).interval95().halfWidth() / (42 * ratio.best());
    }

    @Test
    void aRiderWhoNearlySufficesGivesNoFigureAtReference() {
        var prior = LoadPrior.of(LoadPrior.Tyre.WIDE, LoadPrior.Posture.UNKNOWN);
        var spreads = new ReferenceRatio.Spreads(0.2, 0.5, 0.005, 0.3, 0.0002, 0.05);
        var slow = new RideConditions(RIDDEN, 4.5 * 4.5, 1 / 4.5, 1.5, 0.002, 0.0003, 75);
        var ratio = ReferenceRatio.of(slow, slow.atReference(REFERENCE, 75), prior, spreads, RangeRules.V1);
        assertThat(ratio.reasonAgainst(RangeRules.V1)).contains("nearly suffices");
    }

    @Test
    void aRideFarFromTheReferenceGivesNoFigureThere() {
        var prior = LoadPrior.of(LoadPrior.Tyre.WIDE, LoadPrior.Posture.UNKNOWN);
        var spreads = new ReferenceRatio.Spreads(0.2, 0.5, 0.005, 0.3, 0.0002, 0);
        var hilly = new RideConditions(RIDDEN, 4.5 * 4.5, 1 / 4.5, 3, 0.03, 0.0003, 0);
        var ratio = ReferenceRatio.of(hilly, hilly.atReference(REFERENCE, 0), prior, spreads, RangeRules.V1);
        assertThat(ratio.reasonAgainst(RangeRules.V1)).contains("too far from the reference");
    }
}
