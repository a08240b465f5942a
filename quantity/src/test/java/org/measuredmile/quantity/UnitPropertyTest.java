package org.measuredmile.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class UnitPropertyTest {
    private static final long SEED = 811;

    @ParameterizedTest
    @EnumSource(Unit.class)
    void aValueComesBackFromSi(Unit unit) {
        var random = new SplittableRandom(SEED);
        for (int exponent = -9; exponent <= 9; exponent++) {
            double value = (random.nextDouble() + 0.1) * Math.pow(10, exponent);
            // an offset of a temperature scale costs digits of small values
            double tolerance = 4e-16 * (value + Math.abs(unit.fromSi(0)));
            assertThat(unit.fromSi(unit.toSi(value))).isCloseTo(value, Offset.offset(4 * tolerance));
            assertThat(unit.differenceFromSi(unit.differenceToSi(value)))
                    .isCloseTo(value, Percentage.withPercentage(1e-13));
        }
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void largerStaysLarger(Unit unit) {
        var random = new SplittableRandom(SEED);
        for (int i = 0; i < 200; i++) {
            double one = random.nextDouble(-1000, 1000);
            double more = one + random.nextDouble(1e-6, 10);
            assertThat(unit.toSi(more)).isGreaterThan(unit.toSi(one));
        }
    }

    @ParameterizedTest
    @EnumSource(QuantityKind.class)
    void everyKindIsShownInUnitsOfItsOwnDimension(QuantityKind kind) {
        assertThat(kind.units()).contains(kind.si());
        for (var system : UnitSystem.values()) {
            assertThat(kind.shown(system).dimension()).isEqualTo(kind.si().dimension());
        }
        assertThat(kind.si().toSi(1)).isEqualTo(1);
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everyUnitIsFoundByTheSymbolItIsPrintedWith(Unit unit) {
        for (var kind : QuantityKind.values()) {
            if (kind.si().dimension() == unit.dimension() && !unit.symbol().isEmpty()) {
                assertThat(UnitText.find(unit.symbol(), kind)).contains(unit);
                assertThat(UnitText.find("(" + unit.symbol() + ")", kind)).contains(unit);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void agreesWithTheGeneralLibraryWhereThatKnowsTheUnit(Unit unit) {
        if (UnitLibrary.find(unit.symbol(), unit.dimension()) instanceof UnitLibrary.Found.Fitting(var toSi)) {
            assertThat(unit.toSi(7)).isCloseTo(toSi.applyAsDouble(7), Percentage.withPercentage(1e-12));
        }
    }

    @Test
    void theGeneralLibraryKnowsEnoughUnitsForThatComparison() {
        long known = Arrays.stream(Unit.values())
                .filter(unit -> UnitLibrary.find(unit.symbol(), unit.dimension()) instanceof UnitLibrary.Found.Fitting)
                .count();
        assertThat(known).isGreaterThanOrEqualTo(30);
    }
}
