package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.Finding;

class LedgerReaderTest {
    private static final Map<String, QuantityKind> FIGURES = Map.of(
            "braking.stopping-distance", QuantityKind.LENGTH,
            "weighin.mass", QuantityKind.MASS,
            "assistspeed.cut-off", QuantityKind.SPEED);

    private static LedgerRead read(String text) {
        return LedgerReader.read(
                "ledger.csv",
                text.getBytes(StandardCharsets.UTF_8),
                figure -> Optional.ofNullable(FIGURES.get(figure)));
    }

    @Test
    void threeSpellingsOfALengthAreReadAndABlankIsCounted() {
        var ledger = read("""
                # measured-mile ledger 1
                bike,category,trial,figure,variant,value,unit,date,runs,source,note
                a,cargo,braking,braking.stopping-distance,method=tape,20'5.99",,2029-05-01,3,sheet,
                b,cargo,braking,braking.stopping-distance,method=tape,6.24,m,2029-05-01,3,sheet,
                c,cargo,braking,stopping-distance,method=tape,20 ft 6 in,ft,2029,,sheet,old
                d,cargo,braking,braking.stopping-distance,method=tape,,m,2029-05-01,3,sheet,
                """);

        // 20 ft 5.99 in = 245.99 × 0.0254 m and 20 ft 6 in = 246 × 0.0254 m (NIST SP 811, appendix B).
        assertThat(ledger.results()).extracting(LedgerResult::bike).containsExactly("a", "b", "c");
        assertThat(ledger.results().get(0).si()).isCloseTo(6.248146, within(1e-9));
        assertThat(ledger.results().get(1).si()).isEqualTo(6.24);
        assertThat(ledger.results().get(2).si()).isCloseTo(6.2484, within(1e-9));
        assertThat(ledger.results().get(2).figureId()).isEqualTo("braking.stopping-distance");
        assertThat(ledger.results().get(2).date()).contains(LocalDate.of(2029, 7, 1));
        assertThat(ledger.results().get(0).runs()).hasValue(3);
        assertThat(ledger.blanks()).isEqualTo(1);
        assertThat(ledger.findings())
                .extracting(Finding::code)
                .containsExactly("ledger-blank", "ledger-date-incomplete");
        assertThat(ledger.findings().getFirst().message()).contains("left out: 1 (line 6)");
    }

    @Test
    void columnsAreMappedByTheirUsualNamesAndTheMappingIsShown() {
        var ledger = read("Model;Test;Measure;Result;Units;Tested;N;Colour;Name\n"
                + "a;weighin;mass;24,6;kg;2029-05-01;3;red;x\n");

        assertThat(ledger.mapping().lines())
                .contains(
                        "Model → bike (another name of the field)",
                        "Result → value (another name of the field)",
                        "Colour → not read (no field is called so)",
                        "Name → not read (bike is taken from another column)");
        assertThat(ledger.results().getFirst().si()).isEqualTo(24.6);
        assertThat(ledger.findings()).extracting(Finding::code).contains("cells-by", "column-unknown");
    }

    @Test
    void everyFaultOfALedgerComesAtOnceAndGoodLinesAreKept() {
        var ledger = read("""
                bike,figure,variant,value,unit,date,runs
                ,weighin.mass,,24,kg,,
                a,weighin.height,,24,kg,,
                a,weighin.mass,in,24,kg,,
                a,weighin.mass,,24,mph,2029-02-30,many
                a,weighin.mass,,24,,,
                a,weighin.mass,,24 kg,,,
                """);

        assertThat(ledger.findings())
                .extracting(one -> one.code() + " @ " + one.place().text())
                .containsExactly(
                        "bike-without-name @ ledger.csv: line 2, bike",
                        "figure-unknown @ ledger.csv: line 3, figure",
                        "not-a-variant @ ledger.csv: line 4, variant",
                        "not-a-date @ ledger.csv: line 5, date",
                        "not-a-whole-number @ ledger.csv: line 5, runs",
                        "not-a-quantity @ ledger.csv: line 5, value",
                        "not-a-quantity @ ledger.csv: line 6, value");
        assertThat(ledger.results()).hasSize(1);
    }

    @Test
    void aLedgerWithoutItsColumnsSaysWhichAreMissing() {
        assertThat(read("a,b\n1,2\n").findings())
                .extracting(Finding::message)
                .anyMatch(message -> message.contains("\"bike\""))
                .anyMatch(message -> message.contains("\"figure\""))
                .anyMatch(message -> message.contains("\"value\""));
        assertThat(read("").findings()).extracting(Finding::code).containsExactly("file-empty");
    }
}
