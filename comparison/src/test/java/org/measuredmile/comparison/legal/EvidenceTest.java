package org.measuredmile.comparison.legal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.quantity.Unit.METRE_PER_SECOND;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.recording.day.Variant;

/// What a bike is, from what was written down of it and from what was measured on it.
class EvidenceTest {
    private static Evidence of(Tested tested) {
        return new Evidence(tested.bike());
    }

    @ParameterizedTest
    @CsvSource({"both, true, true", "pedal, true, false", "throttle, false, true", "'', false, false"})
    void theDriveThatIsWrittenDownSaysWhatItHas(String drive, boolean hasPedals, boolean hasThrottle) {
        var evidence = of(Tested.driven(drive));

        assertThat(evidence.hasPedals()).isEqualTo(hasPedals);
        assertThat(evidence.hasThrottle()).isEqualTo(hasThrottle);
        assertThat(evidence.isDriveKnown()).isEqualTo(!drive.isEmpty());
    }

    @Test
    void aCutOffThatWasRiddenTellsOfPedalsWhateverIsWrittenDown() {
        for (String drive : List.of("", "throttle")) {
            assertThat(of(Tested.driven(drive).cutOff(7, 0.1, METRE_PER_SECOND)).hasPedals())
                    .isTrue();
        }
    }

    @Test
    void aSpeedByTheMotorAloneTellsOfAThrottleWhateverIsWrittenDown() {
        for (String drive : List.of("", "pedal")) {
            var evidence = of(Tested.driven(drive).motorAlone(7, 0.1, METRE_PER_SECOND));
            assertThat(evidence.hasThrottle()).isTrue();
            assertThat(evidence.isDriveKnown()).isTrue();
        }
        assertThat(of(Tested.driven("").motorAlone(7, 0.1, METRE_PER_SECOND)).hasPedals())
                .isFalse();
    }

    @Test
    void aSpeedWithTheCranksTurningIsNoCutOffAndIsToldApart() {
        var pedalled = Variant.of("drive", "pedal").with("level", "3");
        var evidence = of(Tested.driven("").measured("assistspeed.speed", pedalled, 7, 0.1, METRE_PER_SECOND));

        assertThat(evidence.hasPedalledSpeed()).isTrue();
        assertThat(evidence.cutOffs()).isEmpty();
        assertThat(evidence.hasPedals()).isFalse();
        assertThat(of(Tested.driven("both")).hasPedalledSpeed()).isFalse();
    }

    @Test
    void aResultAtReferenceConditionsBelongsToTheOneOfItsOwnDay() {
        var tested = Tested.driven("both")
                .motorAlone(7, 0.1, METRE_PER_SECOND)
                .motorAloneAtReference(7.2, 0.1, METRE_PER_SECOND)
                .bike();
        var evidence = new Evidence(tested);
        var asRidden = evidence.motorAlone().getFirst();
        assertThat(evidence.atReference(asRidden))
                .hasValueSatisfying(one -> assertThat(one.figure().value()).isEqualTo(7.2));

        var otherDays = new ArrayList<Result>();
        for (var one : tested.results()) {
            boolean isAtReference = one.figure().key().variant().get("at").isPresent();
            otherDays.add(new Result(
                    one.figure(), LocalDate.of(2031, 5, 6), isAtReference ? "another" : one.day(), "", true));
        }
        var apart = new Evidence(new TestedBike(tested.bike(), otherDays));
        assertThat(apart.atReference(apart.motorAlone().getFirst())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "250 W, rating=rated, true, false",
        "250 W, rating=continuous, true, false",
        "250 W, rating=peak, false, true",
        "up to 250 W, rating=rated, false, true",
        "250 W, '', false, false"
    })
    void aClaimedPowerIsRatedOnlyWhereItSaysSo(String claimed, String conditions, boolean isRated, boolean isPeak) {
        assertThat(of(Tested.driven("both").claiming("motor-power", claimed, conditions))
                        .power())
                .hasValueSatisfying(said -> {
                    assertThat(said.si()).isEqualTo(250);
                    assertThat(said.isRated()).isEqualTo(isRated);
                    assertThat(said.isPeak()).isEqualTo(isPeak);
                    assertThat(said.isMarked()).isFalse();
                });
    }

    @Test
    void aMarkStandsBeforeAClaimAndIsARatedPower() {
        assertThat(of(Tested.driven("both").marked("motor-power", "250 W")).power())
                .hasValueSatisfying(said -> {
                    assertThat(said.isMarked()).isTrue();
                    assertThat(said.isRated()).isTrue();
                });
        assertThat(of(Tested.driven("both").marked("motor-power", "brushless")).power())
                .isEmpty();
    }
}
