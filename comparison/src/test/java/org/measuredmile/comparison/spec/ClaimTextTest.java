package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;

/// The forms of docs/formats/bike.md; conversions by the definitions of NIST Special Publication 811, appendix B.
class ClaimTextTest {
    @ParameterizedTest(name = "{0} {1} is {3} {4}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            27.5                    | lb   | MASS     | Exactly | 27.5
            61 lb                   |      | MASS     | Exactly | 61
            61 lb 8 oz              |      | MASS     | Exactly | 61.5
            27,5                    | lb   | MASS     | Exactly | 27.5
            20-25                   | lb   | MASS     | Between | 20 25
            20 – 25 lb              |      | MASS     | Between | 20 25
            20 to 25                | lb   | MASS     | Between | 20 25
            20 lb to 25 lb          |      | MASS     | Between | 20 25
            20 lb - 25              |      | MASS     | Between | 20 25
            from 20 to 25 lb        |      | MASS     | Between | 20 25
            between 20 and 25       | lb   | MASS     | Between | 20 25
            20...25                 | lb   | MASS     | Between | 20 25
            25-25                   | lb   | MASS     | Exactly | 25
            up to 65                | lb   | MASS     | UpTo    | 65
            Up to 65 lb             |      | MASS     | UpTo    | 65
            at least 40             | lb   | MASS     | AtLeast | 40
            >= 40 lb                |      | MASS     | AtLeast | 40
            from 40 lb              |      | MASS     | AtLeast | 40
            40+                     | lb   | MASS     | AtLeast | 40
            40 lb or more           |      | MASS     | AtLeast | 40
            at most 25              | lb   | MASS     | AtMost  | 25
            max. 25 lb              |      | MASS     | AtMost  | 25
            25 lb max               |      | MASS     | AtMost  | 25
            ≤25                     | lb   | MASS     | AtMost  | 25
            about 61                | lb   | MASS     | Exactly | 61
            61 lb (27.7 kg)         |      | MASS     | Exactly | 61
            61 lb / 27.7 kg         |      | MASS     | Exactly | 61
            61 (27.7 kg)            | lb   | MASS     | Exactly | 61
            up to 61 lb (27.7 kg)   |      | MASS     | UpTo    | 61
            """)
    void readsTheUsualForms(String claimed, String unit, QuantityKind kind, String form, String values) {
        var read = claimed(claimed, unit == null ? "" : unit, kind);
        assertThat(read.wanted().getClass().getSimpleName()).isEqualTo(form);
        double[] expected = Arrays.stream(values.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        assertThat(pounds(read.wanted())).containsExactly(expected, within(1e-9));
    }

    @Test
    void feetAndInchesMakeARangeAcrossAHyphen() {
        var read = claimed("5'2\"-6'3\"", "", QuantityKind.LENGTH);
        // 62 in and 75 in of 25.4 mm, NIST SP 811, appendix B
        assertThat(read.wanted()).isEqualTo(new Wanted.Between(Unit.INCH.toSi(62), Unit.INCH.toSi(75)));
    }

    @Test
    void aHyphenBetweenFeetAndInchesIsNoRange() {
        assertThat(claimed("5'-6\"", "", QuantityKind.LENGTH).wanted())
                .isEqualTo(new Wanted.Exactly(Unit.INCH.toSi(66)));
    }

    @Test
    void keepsConditionsWordsUnitAndStep() {
        var line = SpecLines.line("range", "up to 65", "mi", "rider-mass=75 kg level=lowest; temperature = 20 °C");
        var read = (ClaimText.Claimed) ClaimText.read(line, QuantityKind.DISTANCE);
        assertThat(read.conditions().toString()).isEqualTo("{rider-mass=75 kg, level=lowest, temperature=20 °C}");
        assertThat(read.words()).isEqualTo("up to 65 mi");
        assertThat(read.unit()).isEqualTo(Unit.MILE);
        assertThat(read.stepSi()).isEqualTo(1609.344);
        assertThat(read.notes()).isEmpty();
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            25-20                 | lb  | claim-range-reversed | the range "25 to 20" runs from more to less; no claim can be read | write 20 to 25
            61                    |     | claim-not-read       | "61" has no unit; no claim can be read | write the unit: kg or lb
            61                    | Wh  | claim-not-read       | "Wh" is no unit of a mass; no claim can be read | write kg or lb
            light                 | lb  | claim-not-read       | "light" does not begin with a number; no claim can be read | write a number and its unit, such as 12 kg
            up to 20-25           | lb  | claim-not-read       | up to 20-25 names a range and one side; no claim can be read | write the range alone, or up to and its larger end
            61 lb (29 kg)         |     | claim-two-values     | "61 lb (29 kg)" says two things: 61 lb is not 63.93 lb; no claim can be read | write the one that stands in the source
            61 lb (no battery)    |     | claim-not-read       | "lb (no battery)" is no unit known here; no claim can be read | write it in kg or lb
            1,312                 | lb  | claim-not-read       | "1,312" may be 1312 or 1.312; no claim can be read | write 1312 or 1.312
            """)
    void saysWhatIsWrongAndWhatToWrite(String claimed, String unit, String code, String message, String remedy) {
        var read = ClaimText.read(SpecLines.line("mass", claimed, unit == null ? "" : unit), QuantityKind.MASS);
        assertThat(read).isInstanceOf(ClaimText.Unreadable.class);
        Finding finding = ((ClaimText.Unreadable) read).finding();
        assertThat(finding.code()).isEqualTo(code);
        assertThat(finding.message()).isEqualTo(message);
        assertThat(finding.remedy()).isEqualTo(remedy);
        assertThat(finding.place().text()).startsWith("spec.csv: line 4, ");
    }

    @Test
    void tellsWhatItTookForWhat() {
        assertThat(codes(claimed("about 27,5", "lb", QuantityKind.MASS)))
                .isEqualTo("claim-rounded-word claim-decimal-comma");
        assertThat(codes(claimed("27.5 kg", "lb", QuantityKind.MASS))).isEqualTo("claim-unit-twice");
        assertThat(codes(claimed("27.5 lb", "lb", QuantityKind.MASS))).isEmpty();
    }

    @Test
    void aLineThatClaimsNothingIsUnsaid() {
        assertThat(ClaimText.read(SpecLines.line("mass", " ", "lb"), QuantityKind.MASS))
                .isEqualTo(new ClaimText.Unsaid("mass"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            level=lowest rider-mass=75 kg   | {level=lowest, rider-mass=75 kg} | ''
            level=lowest, rider-mass=75,5 kg| {level=lowest, rider-mass=75,5 kg} | ''
            light rider; level=lowest       | {level=lowest}                   | condition-not-read
            level=lowest level=highest      | {level=lowest}                   | condition-twice
            level=                          | {}                               | condition-not-read
            level=lowest; on a flat road    | {level=lowest}                   | condition-not-read
            """)
    void readsConditions(String text, String values, String codes) {
        var read = ClaimConditions.read(text, SpecLines.place());
        assertThat(read.values().toString()).isEqualTo(values);
        assertThat(read.findings().stream().map(Finding::code).collect(Collectors.joining(" ")))
                .isEqualTo(codes);
    }

    private static ClaimText.Claimed claimed(String claimed, String unit, QuantityKind kind) {
        var read = ClaimText.read(SpecLines.line("mass", claimed, unit), kind);
        assertThat(read).isInstanceOf(ClaimText.Claimed.class);
        return (ClaimText.Claimed) read;
    }

    private static double[] pounds(Wanted wanted) {
        return Arrays.stream(wanted.named()).map(Unit.POUND::fromSi).toArray();
    }

    private static String codes(ClaimText.Claimed read) {
        return read.notes().stream().map(Finding::code).collect(Collectors.joining(" "));
    }
}
