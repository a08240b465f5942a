package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.comparison.TestFigures.described;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Configuration;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;

class MarkingsOnSheetTest {
    private static TestDay day(Reading... readings) {
        return new TestDay(
                "2031-05-14-heron",
                LocalDate.of(2031, 5, 14),
                ZoneOffset.UTC,
                "",
                "heron",
                Configuration.UNKNOWN,
                List.of(),
                List.of(),
                Optional.empty(),
                Conditions.UNKNOWN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Arrays.asList(readings),
                List.of());
    }

    private static Reading reading(String name, String value, String note) {
        return new Reading("", name, value, "", "", Optional.empty(), "T1", note, Place.atLine("readings.csv", 2));
    }

    @Test
    void aMarkStandsUnderItsItemWithItsPhoto() {
        var markings = Markings.of(day(
                reading("top-speed", "20 mph", "speed.jpg"),
                reading("class-label", "Class 2", "scratched"),
                reading("photo", "label.jpg", "")));
        assertThat(markings.lines().keySet()).containsExactly("class-label", "top-assisted-speed");
        assertThat(markings.line("top-assisted-speed").orElseThrow().photo()).isEqualTo("speed.jpg");
        assertThat(markings.line("class-label").orElseThrow().photo()).isEqualTo("label.jpg");
        assertThat(markings.line("class-label").orElseThrow().note()).isEqualTo("scratched");
    }

    @Test
    void pressuresAndCertificatesAreJoined() {
        var markings = Markings.of(day(
                reading("tyre-pressure-low", "30 psi", ""),
                reading("tyre-pressure-high", "50 psi", ""),
                reading("certification-mark", "ring on the battery", ""),
                reading("certification-number", "Q-1207", "")));
        assertThat(markings.line("tyre-pressure").orElseThrow().seen()).isEqualTo("30 psi to 50 psi");
        assertThat(markings.line("certification-mark").orElseThrow().seen())
                .isEqualTo("ring on the battery, number Q-1207");
    }

    @Test
    void nothingThatStandsInTheSpecificationIsLost() {
        var own = new SpecLine(
                "motor-power", "750", "W", "", "page", "", "500 W, on the hub", "hub.jpg", "", SpecLines.place());
        var claimed = SpecLines.line("class-label", "Class 2", "");
        var bike = described("Heron", 1890, own, claimed);
        var marked = Markings.of(day(reading("motor-power", "750 W", ""), reading("class-label", "Class 3", "")))
                .onto(bike);
        assertThat(marked.spec()).hasSize(3);
        assertThat(marked.spec().get(0)).isEqualTo(own);
        assertThat(marked.spec().get(1).seen()).isEqualTo("Class 3");
        assertThat(marked.spec().get(2).seen()).isEqualTo("750 W");
        assertThat(marked.spec().get(2).claimed()).isEmpty();
    }

    @Test
    void aDayWithoutMarksLeavesTheBikeAsItIs() {
        var bike = described("Heron", 1890, SpecLines.line("mass", "61", "lb"));
        assertThat(Markings.of(day()).isEmpty()).isTrue();
        assertThat(Markings.of(day()).onto(bike)).isEqualTo(bike);
    }
}
