package org.measuredmile.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/// Expected SI values are worked by hand, to fifteen digits, from the exact ratios of NIST Special Publication
/// 811 (2008), appendix B.
class QuantityTextTest {
    @ParameterizedTest(name = "{0} is {2} in SI, to {3}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
        22 ft 4 in      | LENGTH       | 6.8072          | 0.0254
        22'4"           | LENGTH       | 6.8072          | 0.0254
        22′ 4″          | LENGTH       | 6.8072          | 0.0254
        22’ 4”          | LENGTH       | 6.8072          | 0.0254
        22' 4''         | LENGTH       | 6.8072          | 0.0254
        20'-6"          | LENGTH       | 6.2484          | 0.0254
        20'6            | LENGTH       | 6.2484          | 0.0254
        20'5.99"        | LENGTH       | 6.248146        | 0.000254
        21 ft 6½ in     | LENGTH       | 6.5659          | 0.0127
        21 ft 6 1/2 in  | LENGTH       | 6.5659          | 0.0127
        21 ft 6⅛ in     | LENGTH       | 6.556375        | 0.003175
        ¾ in            | LENGTH       | 0.01905         | 0.00635
        21.2 ft         | LENGTH       | 6.46176         | 0.03048
        21.2ft          | LENGTH       | 6.46176         | 0.03048
        6.81 m          | LENGTH       | 6.81            | 0.01
        6,81 m          | LENGTH       | 6.81            | 0.01
        0,125 m         | LENGTH       | 0.125           | 0.001
        1.312,5 m       | LENGTH       | 1312.5          | 0.1
        1,312.5 m       | LENGTH       | 1312.5          | 0.1
        681 cm          | LENGTH       | 6.81            | 0.01
        −3 ft 6 in      | LENGTH       | -1.0668         | 0.0254
        +2 m            | LENGTH       | 2               | 1
        1.2e3 m         | LENGTH       | 1200            | 100
        """)
    void readsTheSpellingsOfLengths(String text, QuantityKind kind, double si, double resolutionSi) {
        assertReads(text, kind, si, resolutionSi);
    }

    @ParameterizedTest(name = "{0} is {2} in SI, to {3}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
        1:08.3          | TIME         | 68.3            | 0.1
        1:08,3          | TIME         | 68.3            | 0.1
        4:38:10         | TIME         | 16690           | 1
        4:38 h          | TIME         | 16680           | 60
        68.3 s          | TIME         | 68.3            | 0.1
        4 h 38 min      | TIME         | 16680           | 60
        4h38            | TIME         | 16680           | 60
        4 h 38 m 10 s   | TIME         | 16690           | 1
        15.2 mph        | SPEED        | 6.795008        | 0.044704
        25 km/h         | SPEED        | 6.94444444444444| 0.277777777777778
        25 kph          | SPEED        | 6.94444444444444| 0.277777777777778
        25 kmh          | SPEED        | 6.94444444444444| 0.277777777777778
        7.2 m/s         | SPEED        | 7.2             | 0.1
        10 knots        | SPEED        | 5.14444444444444| 0.514444444444444
        61.5 lb         | MASS         | 27.895930755    | 0.045359237
        62 lb 6 oz      | MASS         | 28.29282407875  | 0.028349523125
        11 st 6 lb      | MASS         | 72.5747792      | 0.45359237
        250 g           | MASS         | 0.25            | 0.001
        0.5 g           | ACCELERATION | 4.903325        | 0.980665
        9.8 m/s^2       | ACCELERATION | 9.8             | 0.1
        20 psi          | PRESSURE     | 137895.145863367| 6894.75729316836
        18.5 °C         | TEMPERATURE  | 291.65          | 0.1
        18.5 C          | TEMPERATURE  | 291.65          | 0.1
        68 °F           | TEMPERATURE  | 293.15          | 0.555555555555556
        5 %             | RATIO        | 0.05            | 0.01
        48 V            | VOLTAGE      | 48              | 1
        672 Wh          | ENERGY       | 2419200         | 3600
        14.2 Wh/mi      | ENERGY_PER_DISTANCE | 31.7644953471725 | 0.223693629205440
        90 deg/s        | ANGULAR_RATE | 1.5707963267949 | 0.0174532925199433
        48 uT           | MAGNETIC_FLUX_DENSITY | 0.000048 | 0.000001
        68 rpm          | FREQUENCY    | 1.13333333333333| 0.0166666666666667
        62 dB           | SOUND_LEVEL  | 62              | 1
        12              | COUNT        | 12              | 1
        """)
    void readsTheSpellingsOfEverythingElse(String text, QuantityKind kind, double si, double resolutionSi) {
        assertReads(text, kind, si, resolutionSi);
    }

    private static void assertReads(String text, QuantityKind kind, double si, double resolutionSi) {
        var value = value(QuantityText.parse(text, kind));
        assertThat(value.si()).isCloseTo(si, Percentage.withPercentage(1e-10));
        assertThat(value.resolutionSi()).isCloseTo(resolutionSi, Percentage.withPercentage(1e-10));
    }

    @Test
    void noBreakSpacesAreSpaces() {
        assertThat(value(QuantityText.parse("21.2\u00a0ft", QuantityKind.LENGTH))
                        .unit())
                .isEqualTo(Unit.FOOT);
        assertThat(value(QuantityText.parse("\ufeff21.2\u202fft ", QuantityKind.LENGTH))
                        .unit())
                .isEqualTo(Unit.FOOT);
    }

    @Test
    void aBareNumberTakesTheUnitOfItsField() {
        assertThat(value(QuantityText.parse("21.2", QuantityKind.LENGTH, Unit.FOOT))
                        .si())
                .isCloseTo(6.46176, within(1e-12));
        assertThat(value(QuantityText.parse("21.2 m", QuantityKind.LENGTH, Unit.FOOT))
                        .si())
                .isEqualTo(21.2);
        assertThat(fault("21.2", QuantityKind.LENGTH).remedy()).isEqualTo("write the unit: m or ft");
        assertThatThrownBy(() -> QuantityText.parse("1", QuantityKind.LENGTH, Unit.SECOND))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aWrongDimensionNamesBoth() {
        var fault = fault("12 kg", QuantityKind.SPEED);
        assertThat(fault.message()).isEqualTo("\"12 kg\" is a mass; a speed is wanted");
        assertThat(fault.remedy()).isEqualTo("write it in km/h or mph");
        assertThat(fault("3 MPa", QuantityKind.SPEED).message()).contains("a speed is wanted");
    }

    @Test
    void unitsOfTheGeneralLibraryAreRead() {
        assertThat(value(QuantityText.parse("1.2 MPa", QuantityKind.PRESSURE)).si())
                .isCloseTo(1.2e6, within(1e-6));
        assertThat(value(QuantityText.parse("1.2 MPa", QuantityKind.PRESSURE)).resolutionSi())
                .isCloseTo(1e5, within(1e-6));
    }

    @Test
    void aCommaThatCouldMeanTwoThingsIsRefused() {
        assertThat(fault("1,312 ft", QuantityKind.LENGTH).message()).isEqualTo("\"1,312\" may be 1312 or 1.312");
        assertThat(value(QuantityText.parsePrinted("1,312 ft", QuantityKind.LENGTH))
                        .si())
                .isCloseTo(399.8976, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "abc",
                "NaN m",
                "Infinity m",
                "1e400 m",
                "1e999 m",
                "5 ft 13 in",
                "5.5 ft 3 in",
                "4 in 5 ft",
                "1..2 m",
                "1,2,3 m",
                "6.81 m wide",
                "- 5",
                "m",
                "5 zorks",
                "3/2 in",
                "1/0 in",
                "6.81 6.82 m",
                "21.4 ± 0.6 ft",
                "6 m/10",
                "6 m 5",
                "6 m2",
                "1:75",
                "0x10 m",
                "١٢ m"
            })
    void whatIsNoLengthIsAFaultWithARemedy(String text) {
        var fault = fault(text, QuantityKind.LENGTH);
        assertThat(fault.message()).isNotBlank();
        assertThat(fault.remedy()).isNotBlank();
        assertThat(fault.message().length() + fault.remedy().length()).isLessThanOrEqualTo(160);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:75", "1:08:75", "1:2:3:4", "4:38.5 h", "1:08.3 kg", ":30", "1:", "5 min 70 s"})
    void clockTimesKeepToTheClock(String text) {
        assertThat(fault(text, QuantityKind.TIME).remedy()).isNotBlank();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void noTextIsThrownAtThePerson(long seed) {
        String signs = "0123456789.,:'\"-+ eE/½′″ftinmhskgWlbozst°%μ²\u00a0x±";
        var random = new SplittableRandom(seed);
        for (int i = 0; i < 5000; i++) {
            String text = random.ints(random.nextInt(0, 14), 0, signs.length())
                    .mapToObj(at -> signs.substring(at, at + 1))
                    .collect(Collectors.joining());
            for (var kind : new QuantityKind[] {QuantityKind.LENGTH, QuantityKind.TIME, QuantityKind.MASS}) {
                switch (QuantityText.parse(text, kind)) {
                    case Parsed.Value(double si, var unit, double resolutionSi) -> {
                        assertThat(si).as(text).isFinite();
                        assertThat(resolutionSi).as(text).isPositive().isFinite();
                        assertThat(unit.dimension()).isEqualTo(kind.si().dimension());
                    }
                    case Parsed.Fault(String message, String remedy) ->
                        assertThat(message + remedy).as(text).isNotBlank();
                }
            }
        }
    }

    @Test
    void longTextIsRefusedAtOnce() {
        assertThat(fault("9".repeat(100_000) + " m", QuantityKind.LENGTH).message())
                .contains("too long");
    }

    @ParameterizedTest
    @CsvSource({
        "km/h, SPEED, KILOMETRE_PER_HOUR",
        "[m/s], SPEED, METRE_PER_SECOND",
        "m s-1, SPEED, METRE_PER_SECOND",
        "(m/s^2), ACCELERATION, METRE_PER_SECOND_SQUARED",
        "m·s⁻², ACCELERATION, METRE_PER_SECOND_SQUARED",
        "g, ACCELERATION, STANDARD_GRAVITY",
        "g, MASS, GRAM",
        "ms, TIME, MILLISECOND",
        "deg, ANGLE, DEGREE",
        "hPa, PRESSURE, HECTOPASCAL",
        "MPH, SPEED, MILE_PER_HOUR",
        "mV, VOLTAGE, MILLIVOLT",
    })
    void columnHeadsNameTheirUnits(String head, QuantityKind kind, Unit unit) {
        assertThat(UnitText.find(head, kind)).contains(unit);
    }

    @Test
    void anUnknownColumnHeadNamesNone() {
        assertThat(UnitText.find("zorks", QuantityKind.SPEED)).isEmpty();
        assertThat(UnitText.find("", QuantityKind.RATIO)).isEmpty();
    }

    private static Parsed.Value value(Parsed parsed) {
        assertThat(parsed).isInstanceOf(Parsed.Value.class);
        return (Parsed.Value) parsed;
    }

    private static Parsed.Fault fault(String text, QuantityKind kind) {
        var parsed = QuantityText.parse(text, kind);
        assertThat(parsed).as(text).isInstanceOf(Parsed.Fault.class);
        return (Parsed.Fault) parsed;
    }
}
