package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Outcome;

class ForetoldClimbTest {
    private static final String KEY = "climb.foretold-time course=hill drive=throttle";

    /// What 105 kg need to hold 5 m/s on 18 m up over 300 m with C_rr 0.009, C_dA 0.60 m² and 1.1834 kg/m³.
    ///
    /// Source: by arithmetic from Martin et al., Journal of Applied Biomechanics 14 (1998), equation (1):
    /// 105·9.80665·(0.06 + 0.009·0.9982) + 0.5·1.1834·0.6·25 = 79.91 N, times 5 m/s.
    private static final double WATTS = 399.6;

    private static Outcome ridden(String time) {
        return ClimbDays.onTheHill()
                .rider(80)
                .weighed(25)
                .used("standingstart.launch-force", Variant.of("drive", "throttle"), QuantityKind.FORCE, 250, 4)
                .used("standingstart.power-limit", Variant.of("drive", "throttle"), QuantityKind.POWER, WATTS, 6)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", time)
                .reading("c-1", "climb-entry-speed", "5.0 m/s")
                .reduce();
    }

    @Test
    void aBikeAtTheLimitOfItsPowerHoldsTheSpeedThatArithmeticGives() {
        var figure = ClimbDays.figure(ridden("60.0 s"), KEY);
        assertThat(figure.value()).isCloseTo(300 / 5.0, within(0.15));
        assertThat(figure.thisDay().interval95().contains(60)).isTrue();
        assertThat(figure.assumed()).anyMatch(words -> words.contains("as it does at a start"));
    }

    @Test
    void theWatchOfTheClimbDoesNotEnterIt() {
        assertThat(ClimbDays.figure(ridden("75.0 s"), KEY).value())
                .isEqualTo(ClimbDays.figure(ridden("60.0 s"), KEY).value());
    }

    @Test
    void aClimbFarOffWhatIsForetoldIsSaidToBeAndOneNearByIsNoted() {
        assertThat(ridden("60.5 s").findings())
                .filteredOn(finding -> finding.code().equals("foretold"))
                .singleElement()
                .extracting(Finding::level)
                .isEqualTo(Finding.Level.NOTE);
        assertThat(ridden("80.0 s").findings())
                .filteredOn(finding -> finding.code().equals("foretold-differs"))
                .singleElement()
                .extracting(Finding::message)
                .asString()
                .contains("80.00 s");
    }

    @Test
    void withoutStandingStartsNothingIsForetold() {
        var outcome = ClimbDays.onTheHill()
                .rider(80)
                .weighed(25)
                .run("c-1", "throttle")
                .reading("c-1", "climb-time", "60.0 s")
                .reduce();
        assertThat(outcome.figures()).noneMatch(figure -> figure.key().figure().equals("climb.foretold-time"));
    }
}
