package org.measuredmile.desk.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;

/// What is demanded of a figure's intervals, from both sides of each limit.
class DemandTest {
    private static Coverage row(int thisDay, int anyDay, double bias, double width) {
        return new Coverage(
                "study",
                "braking.mfdd",
                Variant.NONE,
                QuantityKind.ACCELERATION,
                1,
                1000,
                1000,
                thisDay,
                anyDay,
                0.001,
                bias,
                new Coverage.HalfWidths(width, 1),
                new Coverage.HalfWidths(1, 1),
                List.of());
    }

    @Test
    void sharesAreHeldTogetherSoThatOneSeedMayStrayByChance() {
        assertThat(Demand.missed(List.of(row(929, 950, 0, 1), row(950, 971, 0, 1), row(955, 950, 0, 1))))
                .isEmpty();
        assertThat(Demand.missed(List.of(row(929, 950, 0, 1), row(930, 950, 0, 1))))
                .containsExactly("held this day");
        assertThat(Demand.missed(List.of(row(950, 971, 0, 1), row(950, 970, 0, 1))))
                .containsExactly("held any day");
    }

    @Test
    void biasAndWidthAreHeldToTheirLimits() {
        assertThat(Demand.missed(List.of(row(950, 950, 0.1, 1.3)))).isEmpty();
        assertThat(Demand.missed(List.of(row(950, 950, -0.11, 1)))).containsExactly("bias");
        assertThat(Demand.missed(List.of(row(950, 950, 0, 1.31)))).containsExactly("width this day");
        assertThat(Demand.missed(List.of(row(950, 950, Double.NaN, 1)))).containsExactly("bias");
    }

    @Test
    void theTableNamesWhatMissesAndPutsSeedsSideBySide() {
        var text = CoverageTable.markdown(List.of(row(950, 950, 0, 1), row(960, 951, 0.3, 1)));
        assertThat(text)
                .contains("### Study")
                .contains("| braking.mfdd | 1000, 1000 | 95.0, 96.0 | 95.0, 95.1 | 0.10, 0.10 | 0.00, 0.30 |")
                .contains("- study, braking.mfdd: bias");
        assertThat(CoverageTable.markdown(List.of(row(950, 950, 0, 1)))).contains("every figure meets the demand");
    }
}
