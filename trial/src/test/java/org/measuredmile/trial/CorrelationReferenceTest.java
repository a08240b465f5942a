package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;

/// Figures that have inputs in common, by hand.
class CorrelationReferenceTest {
    private static final FigureKey FORCE = new FigureKey("standingstart.launch-force", Variant.NONE);
    private static final FigureKey POWER = new FigureKey("standingstart.power-limit", Variant.NONE);
    private static final FigureKey TIME = new FigureKey("climb.time", Variant.NONE);

    private static Figure figure(FigureKey key, Contribution... parts) {
        var budget = Budget.of(parts);
        return new Figure(
                key,
                QuantityKind.FORCE,
                "standingstart",
                1,
                100,
                budget.around(100),
                budget.around(100),
                List.of(),
                budget.contributions(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /// r = Σ uᵢ(x)·uᵢ(y) / (u(x)·u(y)) over the common inputs (JCGM 100:2008, F.1.2.3): 3·6/(5·10) = 0.36.
    @Test
    void figuresOfOneInputLeanByWhatItIsOfBoth() {
        var one = figure(FORCE, Contribution.typeB("mass", 3), Contribution.typeB("onset", 4));
        var other = figure(POWER, Contribution.typeB("mass", 6), Contribution.typeB("speed", 8));

        assertThat(Correlation.byInputs(one, other, input -> 1)).isCloseTo(0.36, within(1e-12));
        assertThat(Correlation.byInputs(other, one, input -> 1)).isCloseTo(0.36, within(1e-12));
        assertThat(Correlation.byInputs(one, other, input -> -0.5)).isCloseTo(-0.18, within(1e-12));
    }

    @Test
    void figuresOfTheSameInputsAreNeverTakenForOneAndThoseWithoutAnyStandAlone() {
        var one = figure(FORCE, Contribution.typeB("mass", 3));
        var other = figure(POWER, Contribution.typeB("air", 3));

        assertThat(Correlation.byInputs(one, one, input -> 1)).isEqualTo(0.99);
        assertThat(Correlation.byInputs(one, one, input -> -1)).isEqualTo(-0.99);
        assertThat(Correlation.byInputs(one, other, input -> 1)).isZero();
        assertThat(Correlation.byInputs(figure(FORCE), figure(POWER), input -> 1))
                .isZero();
    }

    /// What a fit trades says nothing across figures; scatter of runs and days moves a drive's figures mostly
    /// alike; all else wholly.
    @ParameterizedTest
    @CsvSource({
        "scatter of 5 runs, 0.7",
        "between days, 0.7",
        "speed noise, 0",
        "build-up of thrust (assumed), 0",
        "mass of the rider, 1",
        "days, 1"
    })
    void anInputsNameSaysHowFarItMovesADrivesFiguresAlike(String input, double alike) {
        assertThat(Correlation.ofScatter(input)).isEqualTo(alike);
    }

    @Test
    void itIsBetweenItsTwoEitherWayRoundAndNoOthers() {
        var correlation = new Correlation(FORCE, POWER, 0.6);

        assertThat(correlation.isBetween(FORCE, POWER)).isTrue();
        assertThat(correlation.isBetween(POWER, FORCE)).isTrue();
        assertThat(correlation.isBetween(FORCE, TIME)).isFalse();
        assertThat(correlation.isBetween(TIME, POWER)).isFalse();
        assertThat(correlation.isBetween(FORCE, FORCE)).isFalse();
        assertThat(correlation.isOf(TIME)).isFalse();
        assertThat(correlation.besides(FORCE)).isEqualTo(POWER);
        assertThat(correlation.besides(POWER)).isEqualTo(FORCE);
        assertThatThrownBy(() -> correlation.besides(TIME)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.01, -1.01, Double.NaN})
    void aCoefficientBeyondOneIsNone(double coefficient) {
        assertThatThrownBy(() -> new Correlation(FORCE, POWER, coefficient))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Correlation(FORCE, FORCE, 0.5)).isInstanceOf(IllegalArgumentException.class);
    }
}
