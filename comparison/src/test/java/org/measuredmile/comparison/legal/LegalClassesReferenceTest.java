package org.measuredmile.comparison.legal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.comparison.legal.LegalOutcome.CANNOT_TELL;
import static org.measuredmile.comparison.legal.LegalOutcome.NOT_MEASURED;
import static org.measuredmile.comparison.legal.LegalOutcome.OUTSIDE;
import static org.measuredmile.comparison.legal.LegalOutcome.WITHIN;
import static org.measuredmile.quantity.Unit.KILOMETRE_PER_HOUR;
import static org.measuredmile.quantity.Unit.METRE;
import static org.measuredmile.quantity.Unit.MILE_PER_HOUR;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.legal.ClassOutcome.Basis;
import org.measuredmile.comparison.legal.LegalRule.Measured;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;

class LegalClassesReferenceTest {
    /// Source: 15 USC 2085(b), "less than 750 watts"; California Vehicle Code 312.5(a) as amended by SB 1271,
    /// "no more than 750 watts".
    @Test
    void sevenHundredAndFiftyRatedWattsPassInCaliforniaAndNotInTheFederalText() {
        var bike = Tested.driven("both").claiming("motor-power", "750 W", "rating=rated");
        assertThat(bike.in("us-low-speed", Measured.MOTOR_POWER).outcome()).isEqualTo(OUTSIDE);
        assertThat(bike.in("us-ca-class-2", Measured.MOTOR_POWER).outcome()).isEqualTo(WITHIN);
        assertThat(bike.in("us-low-speed", Measured.MOTOR_POWER).basis()).isEqualTo(Basis.CLAIMED);
        assertThat(bike.in("us-low-speed", Measured.MOTOR_POWER).said()).contains("never measured on the road");
    }

    /// Source: Regulation (EU) 168/2013, Art. 3(35): rated power is the thirty-minute power, not a peak.
    @ParameterizedTest
    @CsvSource({"750 W, rating=peak", "up to 750 W, ''", "750 W, ''"})
    void aPeakOrAnUnnamedPowerOverTheLimitAccusesNobody(String claimed, String conditions) {
        var bike = Tested.driven("both").claiming("motor-power", claimed, conditions);
        var power = bike.in("eu-outside-type-approval", Measured.MOTOR_POWER);
        assertThat(power.outcome()).isEqualTo(CANNOT_TELL);
        assertThat(power.wouldDecide()).isNotEmpty();
        // A peak within the limit has its rated power within it too.
        assertThat(bike.in("eu-l1e-a", Measured.MOTOR_POWER).outcome()).isEqualTo(WITHIN);
    }

    /// Source: 15 USC 2085(b), "less than 20 mph" when powered solely by the motor; the verdict rule of JCGM
    /// 106:2012, 8.3, on 19.6 and 19.3 mph with an interval of ± 0.5 mph.
    @ParameterizedTest
    @CsvSource({"20.0, 0, OUTSIDE", "19.6, 0.5, CANNOT_TELL", "19.3, 0.5, WITHIN", "20.6, 0.5, OUTSIDE"})
    void theFederalTextWantsTheMotorAloneBelowTwentyMiles(double mph, double half, LegalOutcome outcome) {
        var bike = Tested.driven("both").motorAlone(mph, half, MILE_PER_HOUR);
        assertThat(bike.in("us-low-speed", Measured.MOTOR_ALONE).outcome()).isEqualTo(outcome);
    }

    /// Source: TBIS 15194:2019, 4.2.11.1 (10 % above the marked speed); Regulation (EU) 168/2013, Art. 2(2)(h),
    /// before 25 km/h.
    @Test
    void aStandardsToleranceAndALawsLimitAreTwoVerdicts() {
        var bike = Tested.driven("pedal").cutOff(26.9, 0.5, KILOMETRE_PER_HOUR);
        assertThat(bike.in("en-15194", Measured.CUT_OFF).outcome()).isEqualTo(WITHIN);
        assertThat(bike.in("eu-outside-type-approval", Measured.CUT_OFF).outcome())
                .isEqualTo(OUTSIDE);
        assertThat(bike.in("gb-eapc", Measured.CUT_OFF).outcome()).isEqualTo(OUTSIDE);
        assertThat(bike.in("en-15194").legalClass().basis()).isEqualTo(LegalClass.Basis.STANDARD);
    }

    /// Source: TBIS 15194:2019, 4.2.11.1: 1.10 times the marked maximum; 1.10 × 20 km/h by hand.
    @Test
    void aLowerMarkLowersTheStandardsLimit() {
        var bike =
                Tested.driven("pedal").marked("top-assisted-speed", "20 km/h").cutOff(23, 0.5, KILOMETRE_PER_HOUR);
        var cutOff = bike.in("en-15194", Measured.CUT_OFF);
        assertThat(cutOff.limit().orElseThrow().value()).isEqualByComparingTo("22");
        assertThat(cutOff.outcome()).isEqualTo(OUTSIDE);
    }

    /// Source: California Vehicle Code 312.5(a)(3) as amended by SB 1271 (motor alone to 3.7 mph), and as added by
    /// AB 1096 in 2015, which rules no motor-alone capability out.
    @Test
    void aClassThreeBikeWithAThrottleIsNoneInCaliforniaNowAndWasNotExcludedBefore() {
        var bike = Tested.driven("both")
                .cutOff(27.5, 0.2, MILE_PER_HOUR)
                .motorAlone(20, 0.2, MILE_PER_HOUR)
                .claiming("motor-power", "500 W", "rating=rated");
        assertThat(bike.in("us-ca-class-3").outcome()).isEqualTo(OUTSIDE);
        assertThat(bike.in("us-ca-class-3").decidedBy().rule().measured()).isEqualTo(Measured.MOTOR_ALONE);
        assertThat(bike.in("us-ca-2016-class-3").outcome()).isEqualTo(CANNOT_TELL);
    }

    /// Source: Regulation (EU) 168/2013, Annex I, 45 km/h; 28.0 mph are 45.061632 km/h.
    @Test
    void twentyEightMilesAreMoreThanFortyFiveKilometres() {
        var bike = Tested.driven("pedal").cutOff(28.0, 0, MILE_PER_HOUR);
        assertThat(bike.in("eu-l1e-b", Measured.CUT_OFF).outcome()).isEqualTo(OUTSIDE);
        assertThat(bike.in("us-class-3", Measured.CUT_OFF).outcome()).isEqualTo(WITHIN);
    }

    /// Source: 15 USC 2085(b), below 20 mph; the former Canadian text, 32 km/h (summary); 19.95 mph = 32.1064 km/h.
    @Test
    void thirtyTwoKilometresAndTwentyMilesAreTwoLimits() {
        var bike = Tested.driven("both").motorAlone(19.95, 0, MILE_PER_HOUR).cutOff(19.95, 0, MILE_PER_HOUR);
        assertThat(bike.in("us-low-speed", Measured.MOTOR_ALONE).outcome()).isEqualTo(WITHIN);
        assertThat(bike.in("ca-former-federal", Measured.CUT_OFF).outcome()).isEqualTo(OUTSIDE);
    }

    /// Source: TBIS 15194:2019, 4.2.13: 2 m, or 5 m where every brake carries a cut-off switch; 0.288 and 0.720
    /// s at 25 km/h, computed.
    @ParameterizedTest
    @CsvSource({"1.5, WITHIN", "3.5, CANNOT_TELL", "5.6, OUTSIDE"})
    void aRunOnBetweenTwoAndFiveMetresHangsOnSwitchesNobodyWroteDown(double metres, LegalOutcome outcome) {
        var bike = Tested.driven("pedal")
                .measured("engagement.overrun-distance", Variant.of("level", "3"), metres, 0.3, METRE);
        var runOn = bike.in("en-15194", Measured.RUN_ON);
        assertThat(runOn.outcome()).isEqualTo(outcome);
        double speed = KILOMETRE_PER_HOUR.toSi(25);
        assertThat(2 / speed).isCloseTo(0.288, within(0.0005));
        assertThat(5 / speed).isCloseTo(0.720, within(0.0005));
    }

    /// Source: the power equation of Martin et al. (1998) solved at the power of 20 mph in air of 1.225 kg/m³ with
    /// C_dA 0.60 m², C_rr 0.0080 and 110 kg: 120 kg gives 8.8690 m/s, 100 kg 9.0127 m/s, air of 1.0466 kg/m³ 9.3763
    /// m/s; with wheel and bearing terms, which this road load leaves out, hence 0.3 % of the change allowed.
    @Test
    void airMovesAMotorAloneSpeedMoreThanTheRiderDoes() {
        var load = new RoadLoad(0.0080, 0.60 + 0.0044);
        var setting = new Setting(110, 0, 1.225, 9.80665);
        double v = MILE_PER_HOUR.toSi(20);
        double heavier =
                MotorAlone.atSamePower(load, setting, setting.withMass(120), v).orElseThrow() * v;
        double lighter =
                MotorAlone.atSamePower(load, setting, setting.withMass(100), v).orElseThrow() * v;
        double thinner =
                MotorAlone.atSamePower(load, setting, setting.inAir(1.0466), v).orElseThrow() * v;
        assertThat(heavier).isCloseTo(8.8690, within(0.002));
        assertThat(lighter).isCloseTo(9.0127, within(0.002));
        assertThat(thinner).isCloseTo(9.3763, within(0.002));
        assertThat(thinner - v).isGreaterThan(4 * (v - heavier));
    }

    @Test
    void aPowerLimitedSpeedIsBroughtToTheTextsRiderAndBothAreTold() {
        var bike = Tested.driven("both")
                .motorAlone(19.7, 0.2, MILE_PER_HOUR)
                .motorAloneAtReference(19.8, 0.2, MILE_PER_HOUR);
        var alone = bike.in("us-low-speed", Measured.MOTOR_ALONE);
        // From 80 kg in air of 1.18 kg/m³ to 77.1 kg in 1.225: lighter is faster, denser slower, and the air wins.
        double mph = alone.beside().orElseThrow().value().doubleValue();
        assertThat(mph).isBetween(19.5, 19.78);
        assertThat(alone.said()).contains("as ridden 19.70 ± 0.20 mph");
        assertThat(alone.also()).hasSize(1);
    }

    @Test
    void noCorrectionIsMadeWhereTheControllerHoldsTheSpeed() {
        var bike = Tested.driven("both")
                .motorAlone(19.8, 0.1, MILE_PER_HOUR)
                .motorAloneAtReference(
                        19.8, 0.1, MILE_PER_HOUR, Finding.note(MotorAlone.GOVERNED, Place.NOWHERE, "held"));
        var alone = bike.in("us-low-speed", Measured.MOTOR_ALONE);
        assertThat(alone.beside().orElseThrow().value()).isEqualByComparingTo("19.80");
        assertThat(alone.said()).contains("held by its controller");
    }

    @Test
    void aPedalledTopSpeedIsNoCutOff() {
        var bike = Tested.driven("pedal")
                .measured("assistspeed.speed", Variant.of("drive", "pedal").with("level", "5"), 22, 0.2, MILE_PER_HOUR);
        var cutOff = bike.in("us-class-1", Measured.CUT_OFF);
        assertThat(cutOff.outcome()).isEqualTo(NOT_MEASURED);
        assertThat(cutOff.said()).contains("pedalled is none");
    }

    @Test
    void aSpeedByTheMotorAloneBoundsTheCutOffFromBelowOnly() {
        var slow = Tested.driven("both").motorAlone(18, 0.2, MILE_PER_HOUR);
        assertThat(slow.in("us-class-2", Measured.CUT_OFF).outcome()).isEqualTo(NOT_MEASURED);
        var fast = Tested.driven("both").motorAlone(21, 0.2, MILE_PER_HOUR);
        assertThat(fast.in("us-class-2", Measured.CUT_OFF).outcome()).isEqualTo(OUTSIDE);
    }

    @Test
    void anOpenOutcomeSaysWhatWouldDecideIt() {
        var near = Tested.driven("pedal").cutOff(19.8, 0.3, MILE_PER_HOUR).in("us-class-1", Measured.CUT_OFF);
        assertThat(near.outcome()).isEqualTo(CANNOT_TELL);
        assertThat(near.wouldDecide()).containsExactly("twice as many passages");
        assertThat(near.said()).contains("accuse nobody and clear nobody");
        var nearer = Tested.driven("pedal").cutOff(19.95, 0.3, MILE_PER_HOUR).in("us-class-1", Measured.CUT_OFF);
        assertThat(nearer.wouldDecide().getFirst()).contains("less than ± 0.05 mph");
    }

    @Test
    void everyClassOfABikeOfWhichNothingIsKnownIsNotMeasured() {
        var outcomes = LegalClasses.of(Tested.driven("").bike()).outcomes();
        assertThat(outcomes)
                .hasSize(LegalRules.inForce().size())
                .allSatisfy(one -> assertThat(one.outcome()).isEqualTo(NOT_MEASURED));
    }

    @Test
    void aLabelThatTheMeasurementContradictsIsAFindingWithBoth() {
        var bike = Tested.driven("both")
                .marked("class-label", "Class 2")
                .cutOff(20.7, 0.3, MILE_PER_HOUR)
                .motorAlone(20.6, 0.3, MILE_PER_HOUR);
        var findings = LegalClasses.of(bike.bike()).findings();
        assertThat(findings).allSatisfy(one -> {
            assertThat(one.code()).isEqualTo("label-contradicts");
            assertThat(one.message()).contains("“Class 2”", "23 USC 217(j)(2)", "California");
            assertThat(one.remedy()).contains(LegalClasses.CAUTION);
        });
        assertThat(findings).anySatisfy(one -> assertThat(one.message()).contains("20.70 ± 0.30 mph"));
        assertThat(findings).anySatisfy(one -> assertThat(one.message()).contains("20.60 ± 0.30 mph"));
    }

    @Test
    void aLabelInsideTheGuardBandIsNoFinding() {
        var bike = Tested.driven("both")
                .marked("class-label", "Class 2")
                .cutOff(20.2, 0.3, MILE_PER_HOUR)
                .motorAlone(20.1, 0.3, MILE_PER_HOUR);
        assertThat(LegalClasses.of(bike.bike()).findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "Class 3 e-bike, us-class-3, true",
        "Class 3 e-bike, us-class-1, false",
        "CLASS III, us-class-1, false",
        "S-Pedelec, eu-l1e-b, true",
        "Speed pedelec L1e-B, eu-outside-type-approval, false",
        "EPAC 250 W 25 km/h, eu-outside-type-approval, true",
        "EN 15194, en-15194, true",
        "class 13, us-class-1, false"
    })
    void aLabelNamesAClassByWholeWords(String label, String id, boolean names) {
        assertThat(LabelFindings.names(label, LegalRules.find(id).orElseThrow()))
                .isEqualTo(names);
    }

    @Test
    void everyRuleInTheDataCanBeHeldBesideABike() {
        var bike = Tested.driven("both")
                .cutOff(19.8, 0.3, MILE_PER_HOUR)
                .motorAlone(19.5, 0.3, MILE_PER_HOUR)
                .claiming("motor-power", "250 W", "rating=rated");
        for (var one : LegalRules.ALL) {
            var outcome = LegalClasses.outcome(bike.bike(), one);
            assertThat(outcome.rules()).hasSameSizeAs(one.rules());
            assertThat(one.section()).isNotBlank();
            assertThat(one.source()).isNotBlank();
        }
        assertThat(Unit.POUND.toSi(170)).isCloseTo(77.1107029, within(1e-12));
    }
}
