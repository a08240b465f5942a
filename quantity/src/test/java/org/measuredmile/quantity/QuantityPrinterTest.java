package org.measuredmile.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/// The house's rules for printing numbers; expected texts are worked by hand, spaces stand for no-break spaces.
class QuantityPrinterTest {
    private static final double FOOT_M = 0.3048;
    private static final double MPH_MPS = 0.44704;
    private static final QuantityPrinter DESK = QuantityPrinter.desk(UnitSystem.IMPERIAL);
    private static final QuantityPrinter PROSE = QuantityPrinter.prose(UnitSystem.IMPERIAL);

    @Test
    void figuresOfTheDeskCarryTwoDigitsOfHalfWidth() {
        assertThat(plain(DESK.figure(21.4 * FOOT_M, 0.61 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("21.40 ± 0.61 ft");
        assertThat(plain(DESK.figure(20.31 * MPH_MPS, 0.083 * MPH_MPS, QuantityKind.SPEED)))
                .isEqualTo("20.310 ± 0.083 mph");
        assertThat(plain(DESK.other().figure(21.4 * FOOT_M, 0.61 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("6.52 ± 0.19 m");
        assertThat(plain(DESK.figure(1312 * FOOT_M, 12 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("1,312 ± 12 ft");
        assertThat(plain(DESK.figure(-0.314 * FOOT_M, 0.84 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("−0.31 ± 0.84 ft");
        assertThat(plain(DESK.figure(0.091, 0.0012, QuantityKind.RATIO))).isEqualTo("9.10 ± 0.12 %");
        assertThat(plain(DESK.figure(0.1, 0.01, QuantityKind.ANGLE))).isEqualTo("5.73 ± 0.57°");
        assertThat(plain(DESK.figure(12.3, 0.45, QuantityKind.COUNT))).isEqualTo("12.30 ± 0.45");
    }

    @Test
    void whatIsKnownExactlyStandsAlone() {
        assertThat(plain(DESK.figure(6.5, 0, QuantityKind.LENGTH))).isEqualTo("21.3255 ft");
        assertThat(plain(DESK.figure(50, 0, QuantityKind.COUNT))).isEqualTo("50");
        assertThat(plain(DESK.figure(90, 0, QuantityKind.TIME))).isEqualTo("1:30");
        assertThat(plain(DESK.interval(new Interval(6.5, 6.5), QuantityKind.LENGTH)))
                .isEqualTo("21.3255 ft");
    }

    @Test
    void figuresForReadersCarryOneDigitOrTwo() {
        assertThat(plain(PROSE.figure(21.4 * FOOT_M, 0.61 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("21.4 ± 0.6 ft");
        assertThat(plain(PROSE.figure(27.8 * 1609.344, 1.29 * 1609.344, QuantityKind.DISTANCE)))
                .isEqualTo("27.8 ± 1.3 mi");
    }

    @Test
    void bothSystemsAreRoundedByTheirOwnHalfWidth() {
        var both = DESK.figureInBoth(21.4 * FOOT_M, 0.61 * FOOT_M, QuantityKind.LENGTH);
        assertThat(plain(both.first())).isEqualTo("21.40 ± 0.61 ft");
        assertThat(plain(both.other())).isEqualTo("6.52 ± 0.19 m");
    }

    @ParameterizedTest(name = "{0} s ± {1} s is {2}")
    @CsvSource({
        "6.41, 0.28, 6.41 ± 0.28 s",
        "79.4, 1.8, 1:19.4 ± 1.8 s",
        "65.04, 1.8, 1:05.0 ± 1.8 s",
        "59.96, 1.2, 1:00.0 ± 1.2 s",
        "16680, 720, 4 h 38 ± 12 min",
        "3599.97, 1.2, 1 h 00.000 ± 0.020 min",
        "14700, 720, 4 h 05 ± 12 min",
        "-79.4, 1.8, −1:19.4 ± 1.8 s",
    })
    void timesByTheirLength(double seconds, double halfWidthS, String expected) {
        assertThat(plain(DESK.figure(seconds, halfWidthS, QuantityKind.TIME))).isEqualTo(expected);
    }

    @Test
    void differencesCarryTheirSign() {
        assertThat(plain(DESK.difference(0.82 * FOOT_M, 0.63 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("+0.82 ± 0.63 ft");
        assertThat(plain(DESK.difference(-0.31 * FOOT_M, 0.84 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("−0.31 ± 0.84 ft");
        assertThat(plain(DESK.difference(0.001 * FOOT_M, 0.84 * FOOT_M, QuantityKind.LENGTH)))
                .isEqualTo("0.00 ± 0.84 ft");
        assertThat(plain(DESK.difference(5, 1.8, QuantityKind.TEMPERATURE))).isEqualTo("+9.0 ± 3.2 °F");
        assertThat(plain(DESK.difference(79.4, 1.8, QuantityKind.TIME))).isEqualTo("+1:19.4 ± 1.8 s");
    }

    @Test
    void intervalsAndBoundsInWords() {
        assertThat(plain(DESK.interval(new Interval(20.79 * FOOT_M, 22.01 * FOOT_M), QuantityKind.LENGTH)))
                .isEqualTo("from 20.8 to 22.0 ft");
        assertThat(plain(DESK.interval(new Interval(281.15, 284.15), QuantityKind.TEMPERATURE)))
                .isEqualTo("from 46 to 52 °F");
        assertThat(plain(DESK.interval(new Interval(77.6, 81.2), QuantityKind.TIME)))
                .isEqualTo("from 1:17.6 to 1:21.2");
        assertThat(plain(DESK.interval(new Interval(6.1, 6.7), QuantityKind.TIME)))
                .isEqualTo("from 6.1 to 6.7 s");
        assertThat(plain(DESK.atLeast(25 * 1609.344, QuantityKind.DISTANCE, 1))).isEqualTo("at least 25.0 mi");
        assertThat(plain(DESK.atMost(25 * 1609.344, QuantityKind.DISTANCE, 1))).isEqualTo("at most 25.0 mi");
    }

    @Test
    void valuesWithoutAnIntervalTakeAStatedNumberOfDigits() {
        assertThat(plain(DESK.value(400, QuantityKind.LENGTH, 0))).isEqualTo("1,312 ft");
        assertThat(plain(DESK.value(0.0912, QuantityKind.RATIO, 1))).isEqualTo("9.1 %");
        assertThat(plain(DESK.value(293.15, QuantityKind.TEMPERATURE, 1))).isEqualTo("68.0 °F");
        assertThat(plain(DESK.value(79.44, QuantityKind.TIME, 1))).isEqualTo("1:19.4");
        assertThat(plain(DESK.value(6.44, QuantityKind.TIME, 1))).isEqualTo("6.4 s");
        assertThat(plain(DESK.value(16680, QuantityKind.TIME, 0))).isEqualTo("4:38:00");
    }

    @ParameterizedTest(name = "a chance of {0} is {1}")
    @CsvSource({
        "0.72, 72 %",
        "0.995, over 99 %",
        "1, over 99 %",
        "0.99, 99 %",
        "0.005, under 1 %",
        "0, under 1 %",
        "0.01, 1 %",
        "0.9899, 99 %",
        "0.145, 15 %"
    })
    void chancesInWholePerCent(double chance, String expected) {
        assertThat(plain(QuantityPrinter.chance(chance))).isEqualTo(expected);
    }

    @ParameterizedTest(name = "{0} in is {1} or {2}")
    @CsvSource({
        "258.5, 21 ft 6½ in, 21 ft 7 in",
        "245.99, 20 ft 6 in, 20 ft 6 in",
        "251.99, 21 ft 0 in, 21 ft 0 in",
        "251.74, 20 ft 11½ in, 21 ft 0 in",
        "6.5, 6½ in, 7 in",
        "0.5, ½ in, 1 in",
        "252.5, 21 ft ½ in, 21 ft 1 in",
        "0, 0 in, 0 in",
        "-42, −3 ft 6 in, −3 ft 6 in",
    })
    void readingsInFeetAndInchesNeverShowTwelve(double inches, String toHalf, String toWhole) {
        double metres = Unit.INCH.toSi(inches);
        assertThat(plain(ReadingPrinter.feetAndHalfInches(metres))).isEqualTo(toHalf);
        assertThat(plain(ReadingPrinter.feetAndInches(metres))).isEqualTo(toWhole);
    }

    @ParameterizedTest(name = "{0} reads {2}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
        20'5.99"        | LENGTH      | 20 ft 6 in
        21 ft 6½ in     | LENGTH      | 21 ft 6½ in
        21.20 ft        | LENGTH      | 21.20 ft
        6.24 m          | LENGTH      | 6.24 m
        62 lb 6 oz      | MASS        | 62 lb 6 oz
        61 lb 15.9 oz   | MASS        | 62 lb 0 oz
        61.5 lb         | MASS        | 61.5 lb
        44 psi          | PRESSURE    | 44 psi
        1:08.3          | TIME        | 1:08.3
        4:08:03         | TIME        | 4:08:03
        4 h 38 min      | TIME        | 4 h 38 min
        68.3 s          | TIME        | 68.3 s
        18.5 C          | TEMPERATURE | 18.5 °C
        12              | COUNT       | 12
        """)
    void readingsAsTheyWereRead(String text, QuantityKind kind, String expected) {
        var reading = (Parsed.Value) QuantityText.parse(text, kind);
        assertThat(plain(ReadingPrinter.asRead(reading))).isEqualTo(expected);
    }

    @ParameterizedTest
    @EnumSource(QuantityKind.class)
    void whatIsPrintedCanBeReadAgain(QuantityKind kind) {
        if (kind == QuantityKind.WORD) {
            return;
        }
        var random = new SplittableRandom(kind.ordinal());
        for (int i = 0; i < 300; i++) {
            double si = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(-2, 6));
            for (var system : UnitSystem.values()) {
                String printed = QuantityPrinter.desk(system).value(si, kind, 2).text();
                var parsed = (Parsed.Value) QuantityText.parsePrinted(printed, kind);
                double halfAStep = kind.shown(system).differenceToSi(0.005);
                assertThat(parsed.si()).as(printed).isCloseTo(si, within(halfAStep * 1.0001));
            }
        }
    }

    @Test
    void feetAndInchesCanBeReadAgainWithinAQuarterInch() {
        var random = new SplittableRandom(5);
        for (int i = 0; i < 2000; i++) {
            double metres = random.nextDouble(-10, 100);
            String printed = ReadingPrinter.feetAndHalfInches(metres);
            assertThat(plain(printed)).doesNotContain("12 in", "12½");
            var parsed = (Parsed.Value) QuantityText.parse(printed, QuantityKind.LENGTH);
            assertThat(parsed.si()).as(printed).isCloseTo(metres, within(0.25 * 0.0254 + 1e-9));
            double kilograms = random.nextDouble(0, 150);
            var mass = (Parsed.Value) QuantityText.parse(ReadingPrinter.poundsAndOunces(kilograms), QuantityKind.MASS);
            assertThat(mass.si()).isCloseTo(kilograms, within(Unit.OUNCE.toSi(0.5) + 1e-9));
        }
    }

    @Test
    void theLocaleOfTheMachineChangesNothing() {
        var before = Locale.getDefault();
        String english = sampler();
        try {
            for (var locale : new Locale[] {Locale.GERMANY, Locale.of("ar", "EG"), Locale.of("tr", "TR")}) {
                Locale.setDefault(locale);
                assertThat(sampler()).isEqualTo(english);
            }
        } finally {
            Locale.setDefault(before);
        }
        assertThat(english).isNotBlank();
    }

    private static String sampler() {
        return DESK.figure(1312.5 * FOOT_M, 2.1 * FOOT_M, QuantityKind.LENGTH).text()
                + DESK.figure(79.4, 1.8, QuantityKind.TIME).text()
                + ReadingPrinter.feetAndHalfInches(6.5659)
                + QuantityPrinter.chance(0.72)
                + QuantityText.parse("6.81 M", QuantityKind.LENGTH)
                + QuantityText.parse("12 INCH", QuantityKind.LENGTH)
                + QuantityText.parse("1,312 ft", QuantityKind.LENGTH);
    }

    @Test
    void refusesWhatIsNoNumber() {
        assertThatThrownBy(() -> DESK.figure(Double.NaN, 1, QuantityKind.LENGTH))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> QuantityPrinter.chance(1.2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReadingPrinter.feetAndInches(Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static String plain(Printed printed) {
        return plain(printed.text());
    }

    /// The text with plain spaces, after checking that no plain space stands between a number and its unit.
    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }
}
