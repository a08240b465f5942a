package org.measuredmile.trial.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.trial.ResolvedReadings.Value;

/// Check values of the crew's page of braking physics and standards, section 1, by their row ids, and worked
/// examples A3 and A4 of its study of reduction algorithms; each with the tolerance stated there.
class BrakingReferenceTest {
    private static double mph(double value) {
        return Unit.MILE_PER_HOUR.toSi(value);
    }

    private static double kmh(double value) {
        return Unit.KILOMETRE_PER_HOUR.toSi(value);
    }

    private static double feet(double value) {
        return Unit.FOOT.toSi(value);
    }

    /// B01 to B11: v²/(2 d). B04 and B05 restate 16 CFR 1512.5; B07 and B08 the limits of ISO 4210-2 (published
    /// as "3.4" and "4" m/s²); B10 and B11 distances read in a 2020 press text of a road-safety report.
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            B01 | 8.9408   | 6.096  | 6.5566
            B02 | 8.9408   | 6.4008 | 6.2444
            B03 | 8.9408   | 6.7056 | 5.9605
            B04 | 6.7056   | 4.572  | 4.9174
            B05 | 6.666667 | 4.57   | 4.8626
            B06 | 4.4704   | 4.572  | 2.1855
            B07 | 6.944444 | 7      | 3.4447
            B08 | 6.944444 | 6      | 4.0188
            B09 | 6.666667 | 5.5    | 4.0404
            B10 | 6.944444 | 3.66   | 6.5882
            B11 | 6.944444 | 5.53   | 4.3603
            """)
    void meanDeceleration(String row, double entryMps, double distanceM, double expectedMps2) {
        assertThat(BrakingCorrection.meanDeceleration(entryMps, distanceM)).isCloseTo(expectedMps2, within(0.0001));
    }

    /// B12: EN 14766:2005, 4.6.7.5.1.9. B13: the same law in feet.
    @Test
    void correctionToTheNominalSpeed() {
        assertThat(BrakingCorrection.atNominal(6.80, kmh(26.2), kmh(25.0))).isCloseTo(6.1914, within(0.0001));
        assertThat(Unit.FOOT.fromSi(BrakingCorrection.atNominal(feet(21.3), mph(20.6), mph(20))))
                .isCloseTo(20.0773, within(0.0001));
    }

    /// B14: EN 14766:2005, 4.6.7.5.1.10, II and III: the window's half-width is 1.5 km/h. That standard voids a
    /// run on the side that would have helped it; here every run outside the window is shown and not counted.
    @Test
    void theWindowIsThatOfTheStandard() {
        var window = BrakingRules.Nominal.TWENTY_FIVE_KMH.window();
        assertThat(window.contains(kmh(26.6))).isFalse();
        assertThat(window.contains(kmh(23.4))).isFalse();
        assertThat(window.contains(kmh(26.5))).isTrue();
        assertThat(BrakingCorrection.atNominal(8.00, kmh(26.6), kmh(25))).isCloseTo(7.0665, within(0.0001));
        assertThat(BrakingCorrection.atNominal(6.00, kmh(23.4), kmh(25))).isCloseTo(6.8486, within(0.0001));
    }

    /// B17: a constant 5.0 m/s² from 32 km/h; Directive 93/14/EEC, annex, 1.1.2.
    @Test
    void meanFullyDevelopedDecelerationOfAConstantStop() {
        var stop = new StopCurve(kmh(32), 0, 0, 5.0, 0);
        assertThat(stop.positionM(stop.reachesS(kmh(25.6)))).isCloseTo(2.8444, within(0.0001));
        assertThat(stop.positionM(stop.reachesS(kmh(3.2)))).isCloseTo(7.8222, within(0.0001));
        assertThat(stop.distanceM()).isCloseTo(7.9012, within(0.0001));
        assertThat(stop.meanFullyDevelopedMps2()).isCloseTo(5.0, within(0.0001));
    }

    /// B21: 0.71 g, the most of eight bicycles in SAE 2020-01-0876 (abstract), is 18.83 ft from 20 mph: the
    /// finding begins just below that deceleration.
    @Test
    void thePitchOverFindingBeginsAtNineteenFeet() {
        double most = 0.71 * BrakingRules.GRAVITY_MPS2;
        assertThat(Unit.FOOT.fromSi(mph(20) * mph(20) / (2 * most))).isCloseTo(18.83, within(0.01));
        assertThat(BrakingRules.PITCH_OVER_MPS2).isLessThan(most);
        assertThat(BrakingCorrection.meanDeceleration(mph(20), feet(19)))
                .isCloseTo(BrakingRules.PITCH_OVER_MPS2, within(1e-12));
    }

    /// B25: half a mile an hour of entry speed.
    @Test
    void halfAMileAnHourIsFivePerCent() {
        double longer = BrakingCorrection.atNominal(1, mph(20), mph(20.5));
        assertThat((longer - 1) * 100).isCloseTo(5.0625, within(0.0001));
    }

    /// B27: 4.900 m/s² measured on a fall of 1 %.
    @Test
    void levelRoad() {
        assertThat(BrakingCorrection.levelDeceleration(4.900, -0.010)).isCloseTo(4.9981, within(0.0001));
        double measuredM = mph(20) * mph(20) / (2 * 4.900);
        assertThat(BrakingCorrection.levelDistance(measuredM, mph(20), -0.010)).isCloseTo(7.9969, within(0.0001));
    }

    /// B31: 20 mph to rest in 21 ft takes 2 d / v.
    @Test
    void stoppingTime() {
        double deceleration = BrakingCorrection.meanDeceleration(mph(20), feet(21));
        assertThat(new StopCurve(mph(20), 0, 0, deceleration, 0).durationS()).isCloseTo(1.4318, within(0.0001));
    }

    /// A3: what is common is not divided by √n.
    @Test
    void intervalOfAMeanOfThreeRuns() {
        var budget =
                Budget.of(Contribution.typeA("scatter", 0.30 / Math.sqrt(3), 12), Contribution.typeB("common", 0.20));
        var around = budget.around((7.70 + 7.95 + 7.86) / 3);
        assertThat(around.standard()).isCloseTo(0.2646, within(0.0005));
        assertThat(around.degreesOfFreedom()).isCloseTo(65.3, within(0.05));
        assertThat(around.interval95().halfWidth()).isCloseTo(0.5283, within(0.0005));
    }

    /// A4: tape 0.02 m, mark 0.02 s, entry speed 0.06 m/s. Twenty miles an hour is 8.9408 m/s.
    @Test
    void oneTapedRun() {
        var tape = new BrakingRun.Tape(value(8.80), value(7.55));
        assertThat(BrakingCorrection.atNominal(tape.distanceM(), tape.entryMps(), mph(20)))
                .isCloseTo(7.7935, within(0.0005));
        assertThat(tape.standardUncertaintyM(mph(20))).isCloseTo(0.2115, within(0.0005));
    }

    private static Value value(double si) {
        var reading = new Reading("r", "n", "", "", "", Optional.empty(), "", "", Place.NOWHERE);
        return new Value(si, 0, "", Optional.empty(), reading);
    }
}
