package org.measuredmile.desk.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import org.junit.jupiter.api.Test;

class ScatterDecilesTest {
    @Test
    void tenths_go_from_the_quietest_days_to_the_ones_that_scatter_most() {
        var days = new ArrayList<ScatterDeciles.Day>();
        for (int i = 0; i < 200; i++) {
            // Out of order on purpose: 7 and 200 share no divisor.
            int scatter = i * 7 % 200;
            days.add(new ScatterDeciles.Day(scatter, scatter >= 20));
        }

        assertThat(ScatterDeciles.of(days)).containsExactly(0.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0);
    }

    @Test
    void too_few_days_say_nothing() {
        assertThat(ScatterDeciles.of(java.util.Collections.nCopies(99, new ScatterDeciles.Day(1, true))))
                .isEmpty();
    }
}
