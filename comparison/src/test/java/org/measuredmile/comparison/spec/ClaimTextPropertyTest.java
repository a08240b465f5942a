package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;

class ClaimTextPropertyTest {
    private static final String[] PIECES = {
        "up to ",
        "at least ",
        "max. ",
        "about ",
        "from ",
        "between ",
        " and ",
        " to ",
        "-",
        "–",
        "...",
        "+",
        "(",
        ")",
        " / ",
        "12",
        "0.5",
        "1,312",
        "27,5",
        "kg",
        " lb",
        " mi",
        "'",
        "\"",
        "½",
        " ",
        ";",
        "=",
        "level=",
        "\u0000",
        "😀"
    };

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whateverIsWrittenIsReadOrRefusedWithItsPlace(int seed) {
        var random = new Random(seed);
        for (int i = 0; i < 50; i++) {
            var line = SpecLines.line("mass", pieces(random), random.nextBoolean() ? "lb" : "", pieces(random));
            switch (ClaimText.read(line, QuantityKind.MASS)) {
                case ClaimText.Claimed read -> {
                    assertThat(java.util.Arrays.stream(read.wanted().named()).boxed())
                            .allMatch(Double::isFinite);
                    assertThat(read.stepSi()).isPositive();
                    assertThat(read.conditions().values()).noneMatch(String::isBlank);
                }
                case ClaimText.Unreadable(var item, var finding) -> {
                    assertThat(finding.place().text()).startsWith("spec.csv: line 4, ");
                    assertThat(finding.message()).isNotBlank();
                    assertThat(finding.remedy()).isNotBlank();
                }
                case ClaimText.Unsaid _ -> assertThat(line.claimed()).isBlank();
            }
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = QuantityKind.class,
            names = {"WORD", "COUNT", "RATIO"},
            mode = EnumSource.Mode.EXCLUDE)
    void everyUnitOfAKindReadsTheSameInTheCellAndInTheColumn(QuantityKind kind) {
        for (Unit unit : kind.units()) {
            var inCell = ClaimText.read(SpecLines.line("x", "12.5 to 14 " + unit.symbol(), ""), kind);
            var inColumn = ClaimText.read(SpecLines.line("x", "12.5 to 14", unit.symbol()), kind);
            assertThat(((ClaimText.Claimed) inCell).wanted())
                    .isEqualTo(new Wanted.Between(unit.toSi(12.5), unit.toSi(14)))
                    .isEqualTo(((ClaimText.Claimed) inColumn).wanted());
        }
    }

    private static String pieces(Random random) {
        var text = new StringBuilder();
        int count = random.nextInt(8);
        for (int i = 0; i < count; i++) {
            text.append(PIECES[random.nextInt(PIECES.length)]);
        }
        return text.toString();
    }
}
