package org.measuredmile.comparison.standing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.Variant;

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
                "category=cargo maker=Ostervald drive=pedal from=2030-01-01 until=2031-06-30 ledger=yes",
                "maker=\"Two Words\" sensor=torque wheel=20 battery=400-600 price=1000-2000 currency=EUR",
                "battery=-600 price=1000- currency=USD model-year=2031 version=2 at=reference",
                "category=cargo model-year=2030-2031 at=measured"
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
        "category=a category=b, stands twice",
        "battery=big, is no band",
        "battery=600-400, is no band",
        "price=1000-2000, needs its currency",
        "version=latest, is no version",
        "at=home, is no at",
        "sensor=speed, is no sensor"
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

    private static Entrant described(Traits traits) {
        var one = Entrants.exactly("a", 1);
        return new Entrant(
                one.bike(),
                one.title(),
                one.category(),
                one.maker(),
                one.drive(),
                one.date(),
                one.variant(),
                2,
                one.value(),
                one.anyDay(),
                one.budget(),
                Entrant.Origin.UNKNOWN,
                traits);
    }

    /// 500 Wh, 1,999 EUR, of 2031, on wheels of 20 inches, with a torque sensor.
    private static final Traits DESCRIBED =
            new Traits("torque", "20 in", OptionalDouble.of(500), OptionalDouble.of(1999), "EUR", OptionalInt.of(2031));

    @ParameterizedTest
    @CsvSource({
        "battery=400-600,",
        "battery=500,",
        "battery=500Wh,",
        "battery=500.01-, another battery energy",
        "battery=-499, another battery energy",
        "price=1000-2000 currency=EUR,",
        "price=1000-2000 currency=USD, another currency",
        "price=2000- currency=EUR, another price",
        "model-year=2030-2031,",
        "model-year=2030, another model year",
        "sensor=torque,",
        "sensor=cadence, another sensor",
        "wheel=20,",
        "wheel=24, another wheel size",
        "version=2,",
        "version=1, version 2 of the trial"
    })
    void aBikeIsHeldAgainstWhatItsFolderSays(String expression, String reason) {
        assertThat(stated(expression).excludes(described(DESCRIBED))).isEqualTo(Optional.ofNullable(reason));
    }

    @ParameterizedTest
    @CsvSource({
        "battery=400-600, no battery energy is written down",
        "price=1000-2000 currency=EUR, no currency is written down",
        "model-year=2031, no model year is written down",
        "sensor=torque, no sensor is written down",
        "wheel=20, no wheel size is written down"
    })
    void aBikeWithoutTheFactIsLeftOutWithTheReason(String expression, String reason) {
        assertThat(stated(expression).excludes(described(Traits.UNKNOWN))).contains(reason);
    }

    @Test
    void conditionsChooseTheVariant() {
        var reference = stated("at=reference");
        var measured = stated("at=measured");
        var asked = Variant.of("drive", "throttle");
        assertThat(reference.asking(asked)).isEqualTo(asked.with("at", "reference"));
        assertThat(measured.asking(asked)).isEqualTo(asked);
        assertThat(measured.admits(asked)).isTrue();
        assertThat(measured.admits(asked.with("at", "reference"))).isFalse();
        assertThat(reference.excludes(Entrants.exactly("a", 1))).contains("as measured, not at reference");
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
