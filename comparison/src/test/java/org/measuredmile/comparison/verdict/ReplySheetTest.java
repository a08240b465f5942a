package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.line;
import static org.measuredmile.comparison.TestFigures.tested;

import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.UnitSystem;

class ReplySheetTest {
    @ParameterizedTest
    @CsvSource({"2031-05-05, 2031-05-12", "2031-05-09, 2031-05-16", "2031-05-10, 2031-05-16", "2031-05-11, 2031-05-16"})
    void anAnswerIsDueAfterFiveWorkingDaysCountedFromTheDayAfter(LocalDate sent, LocalDate due) {
        // By the calendar: 5 May 2031 is a Monday, the 10th a Saturday, the 11th a Sunday.
        assertThat(ReplySheet.Dates.from(sent).due()).isEqualTo(due);
    }

    @Test
    void aSheetHoldsFactsAndNoVerdict() {
        var bike = tested(
                described("Lantern", 1890, line("mass", "27.5", "kg"), line("range", "65", "km")),
                figure("weighin.mass", "battery=in", 31, 0.05),
                figure("weighin.mass", "battery=out", 27.6, 0.05));
        var verdicts = Claims.of(bike, Map.of());
        assertThat(verdicts.getFirst().verdict()).isEqualTo(Verdict.FALLS_SHORT);

        var dates = ReplySheet.Dates.from(LocalDate.of(2031, 5, 5));
        String text = ReplySheet.of(bike, verdicts, Map.of(), dates, UnitSystem.METRIC)
                .text();

        assertThat(text)
                .contains("Brindle Lantern: what we measured")
                .contains("Claimed: “27.5 kg”")
                .contains("Source: the maker's page (invented), seen 2031-01-15")
                .contains("Measured: 31.000 ± 0.098 kg (68.34 ± 0.22 lb), with its battery, on 4 May 2031")
                .contains("Measured too: 27.600 ± 0.098 kg (60.85 ± 0.22 lb), without its battery, on 4 May 2031")
                .contains("Measured: not measured")
                .contains("Please answer by 12 May 2031")
                .doesNotContain("falls short", "meets", "can’t tell", "chance", "agrees");
    }
}
