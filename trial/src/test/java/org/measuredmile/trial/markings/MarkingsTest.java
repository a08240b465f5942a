package org.measuredmile.trial.markings;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.trial.GivenDay;
import org.measuredmile.trial.Outcome;

class MarkingsTest {
    private final Markings markings = new Markings();

    @Test
    void marksAreReadAndNothingIsCertified() {
        var outcome = reduce(GivenDay.of(markings)
                .reading("", "class-label", "Class 2, 20 mph, 750 W")
                .reading("", "photo", "label.jpg"));
        assertThat(outcome.figures()).isEmpty();
        assertThat(outcome.runs()).isEmpty();
        assertThat(outcome.findings()).singleElement().satisfies(one -> {
            assertThat(one.code()).isEqualTo("nothing-certified");
            assertThat(one.level()).isEqualTo(Finding.Level.NOTE);
        });
    }

    @Test
    void aTextReadingKeepsWhatStandsThere() {
        var day = GivenDay.of(markings)
                .reading("", "class-label", "Class 2; \"20 mph\", 750 W")
                .input();
        var read = day.readings();
        assertThat(read.ofDay("class-label").orElseThrow().word()).isEqualTo("Class 2; \"20 mph\", 750 W");
    }

    @Test
    void aQuantityOnAPlateIsReadInItsOwnUnit() {
        var day = GivenDay.of(markings).reading("", "battery-charge", "14 Ah").input();
        var read = day.readings();
        assertThat(read.ofDay("battery-charge").orElseThrow().si()).isEqualTo(Unit.AMPERE_HOUR.toSi(14));
    }

    @Test
    void whatWasReadWithoutAPhotoIsTold() {
        var outcome = reduce(GivenDay.of(markings).reading("", "tyres", "57-584"));
        assertThat(outcome.findings()).extracting(Finding::code).contains("marks-without-photo");
    }

    @Test
    void pressuresThatAreReversedAreTold() {
        var outcome = reduce(GivenDay.of(markings)
                .reading("", "tyre-pressure-low", "60 psi")
                .reading("", "tyre-pressure-high", "2.5 bar")
                .reading("", "photo", "sidewall.jpg"));
        assertThat(outcome.findings()).anySatisfy(one -> {
            assertThat(one.code()).isEqualTo("pressures-reversed");
            assertThat(one.message()).contains("60 psi").contains("2.5 bar");
        });
    }

    @Test
    void anAmpereHourUnderVoltsIsNotUnderstood() {
        var outcome = reduce(GivenDay.of(markings).reading("", "battery-voltage", "14 Ah"));
        assertThat(outcome.findings()).extracting(Finding::code).contains("reading-not-understood");
    }

    @Test
    void thePlateOfTheHandbookAgreesWithItself() {
        // docs/handbook/markings.md, worked example; 48 V × 14 Ah = 672 Wh, the definition of nominal energy
        var day = GivenDay.of(markings)
                .reading("", "battery-voltage", "48 V")
                .reading("", "battery-charge", "14 Ah")
                .reading("", "battery-energy", "672 Wh")
                .input();
        var read = day.readings();
        double volts = read.ofDay("battery-voltage").orElseThrow().si();
        double coulombs = read.ofDay("battery-charge").orElseThrow().si();
        assertThat(volts * coulombs)
                .isEqualTo(read.ofDay("battery-energy").orElseThrow().si());
    }

    private Outcome reduce(GivenDay day) {
        return day.reduced();
    }
}
