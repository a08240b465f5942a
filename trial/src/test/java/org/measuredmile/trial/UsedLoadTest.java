package org.measuredmile.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UsedLoadTest {
    /// ISO 5775-1: width and bead seat diameter in millimetres; the older markings are common practice, no source.
    @ParameterizedTest
    @CsvSource({"27.5 x 2.4, 0.06096", "20×4.0, 0.1016", "700x45C, 0.045", "50-622, 0.050", "57 - 584, 0.057"})
    void widthIsReadFromATyresMarking(String marking, double metres) {
        assertThat(UsedLoad.tyreWidthM(marking)).hasValueCloseTo(metres, within(1e-12));
    }

    @Test
    void aMarkingWithoutAWidthGivesNone() {
        assertThat(UsedLoad.tyreWidthM("26 inch")).isEmpty();
        assertThat(UsedLoad.tyreWidthM("")).isEmpty();
    }
}
