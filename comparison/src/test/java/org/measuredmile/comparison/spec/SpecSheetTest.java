package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.tested;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.comparison.spec.SpecEntry.Status;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.trial.Figure;

/// Expected sums are worked out by hand beside them.
class SpecSheetTest {
    private static SpecSheet sheet(SpecLine[] lines, Figure... figures) {
        return SpecSheet.of(tested(described("Heron", 1890, lines), figures));
    }

    private static SpecLine[] lines(String... rows) {
        return Arrays.stream(rows)
                .map(row -> row.split("\\|", -1))
                .map(cells ->
                        seen(cells[0], cells[1], cells.length > 2 ? cells[2] : "", cells.length > 3 ? cells[3] : ""))
                .toArray(SpecLine[]::new);
    }

    private static SpecLine seen(String item, String claimed, String conditions, String seen) {
        return new SpecLine(
                item, claimed, "", conditions, "the maker's page", "2031-01-15", seen, "", "", SpecLines.place());
    }

    private static Figure mass(String battery, double pounds) {
        return figure("weighin.mass", "battery=" + battery, Unit.POUND.toSi(pounds), 0.02);
    }

    private static SpecEntry only(SpecSheet sheet, String item) {
        assertThat(sheet.entries().stream().filter(entry -> entry.item().id().equals(item)))
                .hasSize(1);
        return sheet.entries().stream()
                .filter(entry -> entry.item().id().equals(item))
                .findFirst()
                .orElseThrow();
    }

    private static Finding finding(SpecSheet sheet, String code) {
        return sheet.findings().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " not among " + sheet.findings()));
    }

    @Test
    void linesStandFrontToBackAndNothingIsDropped() {
        var sheet = sheet(lines("horn|loud", "mass|61 lb", "tyres|57-584", "range|up to 65 mi"));
        assertThat(sheet.entries())
                .extracting(entry -> entry.item().id())
                .containsExactly("tyres", "mass", "range", "horn");
        assertThat(sheet.missing()).extracting(SpecItem::id).contains("brakes").doesNotContain("mass");
    }

    @Test
    void aHeavierBikeContradictsItsClaimAndALighterOneDoesNot() {
        assertThat(only(sheet(lines("mass|61.0 lb"), mass("in", 68.3)), "mass").status())
                .isEqualTo(Status.CONTRADICTED);
        assertThat(only(sheet(lines("mass|61.0 lb"), mass("in", 60.1)), "mass").status())
                .isEqualTo(Status.MEASURED);
    }

    @Test
    void aClaimWithoutBatteryIsHeldAgainstTheBikeWithoutIt() {
        var sheet = sheet(lines("mass|61.2 lb|battery=removed"), mass("in", 68.3), mass("out", 61.2));
        assertThat(only(sheet, "mass").status()).isEqualTo(Status.MEASURED);
    }

    @ParameterizedTest(name = "{0} against {1} mi is {2}")
    @CsvSource({
        "40 mi, 30, CONTRADICTED",
        "40 mi, 45, MEASURED",
        "40-60 mi, 30, CONTRADICTED",
        "40-60 mi, 45, MEASURED",
        "at least 40 mi, 30, CONTRADICTED",
        "up to 40 mi, 30, MEASURED",
    })
    void aRangeThatIsNotReachedIsContradictedUnlessItIsUpTo(String claimed, double miles, Status status) {
        var ridden = figure("range.distance", "level=1 levelRole=lowest", Unit.MILE.toSi(miles), 500);
        assertThat(only(sheet(lines("range|" + claimed), ridden), "range").status())
                .isEqualTo(status);
    }

    @Test
    void theLevelOfTheClaimChoosesTheRide() {
        var low = figure("range.distance", "level=1 levelRole=lowest", Unit.MILE.toSi(45), 500);
        var high = figure("range.distance", "level=5 levelRole=highest", Unit.MILE.toSi(20), 500);
        var sheet = sheet(lines("range|40 mi|level=lowest rider-mass=75 kg"), high, low);
        assertThat(only(sheet, "range").measured().orElseThrow().figure().value())
                .isEqualTo(Unit.MILE.toSi(45));
    }

    @Test
    void aSpeedIsContradictedEitherWayBeyondItsRounding() {
        var fast = figure("assistspeed.cut-off", "drive=pedal", Unit.MILE_PER_HOUR.toSi(21.2), 0.05);
        var near = figure("assistspeed.cut-off", "drive=pedal", Unit.MILE_PER_HOUR.toSi(20.3), 0.05);
        assertThat(only(sheet(lines("top-assisted-speed|20 mph"), fast), "top-assisted-speed")
                        .status())
                .isEqualTo(Status.CONTRADICTED);
        assertThat(only(sheet(lines("top-assisted-speed|20 mph"), near), "top-assisted-speed")
                        .status())
                .isEqualTo(Status.MEASURED);
    }

    @Test
    void whatNobodyCanHoldAgainstItIsClaimedAndWhatNobodyLookedAtIsNotChecked() {
        var sheet = sheet(lines("warranty|2 years", "mass|61 lb", "class-label|Class 2||Class 2"));
        assertThat(only(sheet, "warranty").status()).isEqualTo(Status.CLAIMED);
        assertThat(only(sheet, "mass").status()).isEqualTo(Status.NOT_CHECKED);
        assertThat(only(sheet, "class-label").status()).isEqualTo(Status.SEEN);
    }

    @Test
    void aFigureOfWhichNothingIsClaimedHasItsLine() {
        assertThat(only(sheet(lines(), mass("in", 60)), "mass").isClaimed()).isFalse();
    }

    @Test
    void voltsTimesAmpereHoursAreWattHours() {
        // 48 V × 14 Ah = 672 Wh; 36 V × 10.4 Ah = 374.4 Wh, printed as 374: the definition of nominal energy
        var sheet = sheet(lines("battery-voltage|48 V", "battery-charge|14 Ah", "battery-energy|672 Wh"));
        assertThat(sheet.sums()).contains("48 V × 14 Ah = 672 Wh, as the claim says");
        var rounded = sheet(lines("battery-voltage|36 V", "battery-charge|10.4 Ah", "battery-energy|374 Wh"));
        assertThat(rounded.findings()).isEmpty();
    }

    @Test
    void aProductThatDoesNotMultiplyIsNamedAndContradictsTheEnergy() {
        var sheet = sheet(lines("battery-voltage|48.0 V", "battery-charge|14.0 Ah", "battery-energy|614 Wh"));
        // 614 / 672 − 1 = −8.6 %
        assertThat(finding(sheet, "battery-product").message())
                .isEqualTo("48 V × 14 Ah = 672 Wh, but the claim says 614 Wh (−8.6 %)");
        assertThat(only(sheet, "battery-energy").status()).isEqualTo(Status.CONTRADICTED);
    }

    @Test
    void ampereHoursUnderWattHoursAreNamed() {
        var sheet = sheet(lines("battery-voltage|48 V", "battery-charge|14 Ah", "battery-energy|14 Wh"));
        assertThat(finding(sheet, "battery-product").message()).endsWith("; ampere-hours stand under watt-hours");
        var other = sheet(lines("battery-voltage|48 V", "battery-charge|672 Ah", "battery-energy|672 Wh"));
        assertThat(finding(other, "battery-product").message()).endsWith("; watt-hours stand under ampere-hours");
    }

    @Test
    void thirteenCellsUnderARoundedLabelAreToldAndAreNoSlip() {
        // 13 × 3.6 V = 46.8 V; × 14.0 Ah = 655.2 Wh, 2.5 % less than the label's product: cell voltage from memory
        var sheet = sheet(lines("battery-voltage|48.0 V", "battery-charge|14.0 Ah", "battery-energy|655 Wh"));
        assertThat(finding(sheet, "battery-cells").message())
                .isEqualTo("655 Wh fits 13 cells in series of 3.6 V, not the 48 V that the voltage is rounded to");
        assertThat(only(sheet, "battery-energy").status()).isEqualTo(Status.NOT_CHECKED);
    }

    @Test
    void thePlateIsMultipliedByItself() {
        var sheet = sheet(lines("battery-voltage|||48 V", "battery-charge|||14 Ah", "battery-energy|720 Wh||600 Wh"));
        assertThat(finding(sheet, "battery-product").message()).contains("but the bike says 600 Wh");
        assertThat(finding(sheet, "seen-differs").message())
                .isEqualTo("battery energy: the bike says 600 Wh, the maker 720 Wh");
    }

    @Test
    void thePermittedTotalLeavesAPayloadWithAndWithoutTheBattery() {
        // 140 − 27.5 − 80 = 32.5 kg; 140 − 24.5 − 80 = 35.5 kg
        var in = figure("weighin.mass", "battery=in", 27.5, 0.02);
        var out = figure("weighin.mass", "battery=out", 24.5, 0.02);
        var sheet = sheet(lines("permitted-total|140 kg", "payload|60 kg"), in, out);
        assertThat(sheet.sums())
                .contains("140 kg permitted − 27.5 kg bike − 80 kg rider = 32.5 kg; without the battery 35.5 kg");
        assertThat(finding(sheet, "payload-product").message()).endsWith("= 32.5 kg; 60 kg is claimed");
        // With the rider in it: 140 − 27.5 = 112.5 kg
        var included = sheet(lines("permitted-total|140 kg", "payload|112 kg|rider=included"), in, out);
        assertThat(included.findings()).isEmpty();
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource(delimiter = '|', textBlock = """
            fork-travel   | 80 in   | fork travel 80 in lies outside 30 mm to 200 mm (common practice, no source); with mm for in it would be 80 mm, which can be
            rotor-front   | 7.1 mm  | front rotor 7.1 mm lies outside 140 mm to 223 mm (common practice, no source); with in for mm it would be 7.1 in, which can be
            top-assisted-speed | 32 mph | top assisted speed 32 mph lies outside 9 mph to 31 mph (common practice, no source); with km/h for mph it would be 32 km/h, which can be
            rider-height  | 64 cm   | rider height 64 cm lies outside 130 cm to 215 cm (common practice, no source); with in for cm it would be 64 in, which can be
            battery-energy| 0.05 Wh | battery energy 0.05 Wh lies outside 100 Wh to 3,000 Wh (common practice, no source)
            """)
    void aSlipOfTheUnitIsNamed(String item, String claimed, String message) {
        assertThat(finding(sheet(lines(item + "|" + claimed)), "not-plausible").message())
                .isEqualTo(message);
    }

    @Test
    void aMassInTheWrongUnitIsNamedByWhatWasWeighed() {
        var sheet = sheet(lines("mass|61 kg"), mass("in", 61.2));
        assertThat(finding(sheet, "unit-slip").message())
                .isEqualTo(
                        "mass 61 kg is claimed, 27.76 kg was measured; with lb for kg it would be 61 lb, which can be");
    }

    @Test
    void aBatteryOfUnusualMassIsNamed() {
        // 672 Wh / 8.4 = 80 Wh/kg is in the band; 672 / 9.3 = 72.26 is not, 72.26 × 2.2046 = 159.3 is
        var sheet = sheet(lines("battery-energy|672 Wh", "battery-mass|9.3 kg"));
        assertThat(finding(sheet, "battery-density").message())
                .isEqualTo("672 Wh in 9.3 kg is 72.26 Wh/kg, outside 80 to 230 (common practice, no source)"
                        + "; with lb for kg it would fit");
    }

    @Test
    void riderHeightsThatAreReversedAndPowersToo() {
        var sheet = sheet(lines("rider-height|6 ft 3 in to 5 ft 2 in", "motor-power|750 W", "peak-power|500 W"));
        assertThat(finding(sheet, "claim-range-reversed").remedy()).isEqualTo("write 5 ft 2 in to 6 ft 3 in");
        assertThat(finding(sheet, "power-reversed").message())
                .isEqualTo("the nominal power, 750 W, is above the peak power, 500 W");
    }

    @Test
    void aTyreHasACircumferenceAndAnotherRimContradictsIt() {
        // π · (584 + 2 · 57) = 2192.8 mm
        var sheet = sheet(lines("tyres|57-584"));
        assertThat(only(sheet, "tyres").derived()).isEqualTo("57-584: about 2,193 mm a turn, unloaded");
        assertThat(only(sheet(lines("tyres|57-584||57-622")), "tyres").status()).isEqualTo(Status.CONTRADICTED);
        assertThat(finding(sheet(lines("tyres|26 in")), "tyre-not-read").level())
                .isEqualTo(Finding.Level.NOTE);
    }
}
