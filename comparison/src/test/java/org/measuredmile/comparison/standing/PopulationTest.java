package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Finding;

class PopulationTest {
    private static Population stated(String expression) {
        return switch (Population.parse(expression)) {
            case Population.Read.Stated(var population) -> population;
            case Population.Read.Unclear(var faults) -> throw new AssertionError(faults.toString());
        };
    }

    private static java.util.List<Finding> faults(String expression) {
        return switch (Population.parse(expression)) {
            case Population.Read.Stated(var population) -> throw new AssertionError(population.toString());
            case Population.Read.Unclear(var faults) -> faults;
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "category=cargo",
                "category=cargo drive=throttle until=2031-06-30 ledger=yes",
                "category=cargo maker=Ostervald drive=pedal from=2030-01-01 until=2031-06-30 ledger=yes"
            })
    void anExpressionIsPrintedAsItWasWritten(String expression) {
        assertThat(stated(expression).expression()).isEqualTo(expression);
        assertThat(stated(stated(expression).expression())).isEqualTo(stated(expression));
    }

    @ParameterizedTest
    @CsvSource({
        "colour=red, no population is stated by",
        "category, is not key=value",
        "category=, is not key=value",
        "until=30.6.2031, is no date",
        "until=2031-02-31, is no date",
        "ledger=maybe, neither yes nor no",
        "drive=steam, is no drive",
        "category=a category=b, stands twice"
    })
    void aFaultyTermIsNamedWithWhatToWrite(String expression, String message) {
        assertThat(faults(expression)).singleElement().satisfies(fault -> {
            assertThat(fault.message()).contains(message);
            assertThat(fault.remedy()).isNotEmpty();
        });
    }

    @Test
    void allFaultsAreNamedAtOnce() {
        assertThat(faults("colour=red until=soon ledger=maybe")).hasSize(3);
    }

    @Test
    void aBikeWithBothDrivesBelongsToEither() {
        assertThat(stated("drive=throttle").excludes(Entrants.exactly("a", 1))).isEmpty();
        assertThat(stated("drive=throttle ledger=yes").excludes(Entrants.fromLedger("a", 1, 1)))
                .contains("no drive is written down");
    }

    @Test
    void bothBoundsBelongToThePeriod() {
        var entrant = Entrants.onDay(Entrants.exactly("a", 1), LocalDate.of(2031, 6, 30));
        assertThat(stated("until=2031-06-30").excludes(entrant)).isEmpty();
        assertThat(stated("from=2031-06-30").excludes(entrant)).isEmpty();
        assertThat(stated("until=2031-06-29").excludes(entrant)).isPresent();
        assertThat(stated("from=2031-07-01").excludes(entrant)).isPresent();
    }
}
