package org.measuredmile.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.trial.Correlation;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.UsedLoad;

class KeptLoadTest {
    private static final Figure ROLLING = TestFigures.figure(UsedLoad.ROLLING, "", 0.008, 0.0006);
    private static final Figure AREA = TestFigures.figure(UsedLoad.DRAG_AREA, "", 0.6, 0.03);
    private static final Correlation SAID = new Correlation(ROLLING.key(), AREA.key(), -0.3);

    private static Result of(Figure figure, String day, Correlation... correlations) {
        return new Result(figure, TestFigures.DAY, day, "", true, List.of(correlations));
    }

    @Test
    void itLeansAsTheDaysReductionSaidWhicheverWayRoundThatWasWritten() {
        var turned = new Correlation(AREA.key(), ROLLING.key(), -0.3);

        assertThat(KeptLoad.of(of(ROLLING, "one", SAID), of(AREA, "one", turned))
                        .correlation())
                .isEqualTo(-0.3);
        assertThat(KeptLoad.of(of(ROLLING, "one", turned), of(AREA, "one")).correlation())
                .isEqualTo(-0.3);
    }

    @Test
    void resultsOfTwoDaysDoNotLeanOnEachOther() {
        assertThat(KeptLoad.of(of(ROLLING, "one", SAID), of(AREA, "another", SAID))
                        .correlation())
                .isZero();
    }

    @Test
    void whatNobodyKeptLeansAsCoastDownsUsuallyDo() {
        assertThat(KeptLoad.of(of(ROLLING, "one"), of(AREA, "one")).correlation())
                .isEqualTo(UsedLoad.USUAL_LEANING);
    }

    @Test
    void valuesAndUncertaintiesAreTheResultsOnAnyDay() {
        var load = KeptLoad.of(of(ROLLING, "one"), of(AREA, "one"));

        assertThat(load.mean().rollingCoefficient()).isEqualTo(0.008);
        assertThat(load.mean().dragAreaM2()).isEqualTo(0.6);
        assertThat(load.rollingSd()).isEqualTo(ROLLING.anyDay().standard());
        assertThat(load.dragAreaSdM2()).isEqualTo(AREA.anyDay().standard());
        assertThat(load.assumed()).isFalse();
    }
}
