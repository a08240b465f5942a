package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.trial.CompassBearing;

/// The wind's bearing in words and figures.
class HillWindTest {
    @ParameterizedTest
    @CsvSource({
        "north-east, 45",
        "NE, 45",
        "south, 180",
        "WNW, 292.5",
        "45°, 45",
        "271.5, 271.5",
        "east-north-east, 67.5"
    })
    void aBearingIsReadInWordsAndFigures(String written, double degrees) {
        assertThat(CompassBearing.degrees(written).orElseThrow()).isCloseTo(degrees, within(1e-9));
    }

    @Test
    void whatIsNoBearingIsNone() {
        assertThat(CompassBearing.degrees("uphill")).isEmpty();
        assertThat(CompassBearing.degrees("")).isEmpty();
        assertThat(CompassBearing.degrees("361")).isEmpty();
    }
}
