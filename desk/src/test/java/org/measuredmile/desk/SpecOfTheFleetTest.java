package org.measuredmile.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.Markings;
import org.measuredmile.comparison.spec.SpecEntry;
import org.measuredmile.comparison.spec.SpecSheet;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;

/// The spec sheets of the invented fleet, before any figure: rich, and wrong where the makers are meant to be.
class SpecOfTheFleetTest {
    private static Map<String, SpecSheet> sheets() {
        var sheets = new LinkedHashMap<String, SpecSheet>();
        for (DayFolder folder : DemoFleet.days(DemoFleet.SEED)) {
            var words = new DayFolder(folder.name(), folder.texts(), new TreeMap<>());
            if (DayReader.read(words) instanceof DayRead.Read read) {
                var bike = Markings.of(read.day()).onto(read.bike());
                sheets.put(bike.id(), SpecSheet.of(new TestedBike(bike, List.of())));
            }
        }
        return sheets;
    }

    @Test
    void everyBikeHasTwentyLinesOrMoreWithConditionsAndSource() {
        assertThat(sheets()).hasSize(24).allSatisfy((id, sheet) -> {
            assertThat(sheet.entries()).hasSizeGreaterThanOrEqualTo(20);
            assertThat(sheet.entries())
                    .anyMatch(entry -> entry.line().conditions().contains("rider-mass=75 kg"));
            assertThat(sheet.entries())
                    .filteredOn(SpecEntry::isClaimed)
                    .noneMatch(entry -> entry.line().source().isBlank());
        });
    }

    @Test
    void onlyTheMakersThatAreMeantToBeWrongAreWrong() {
        var wrong = new TreeMap<String, String>();
        sheets().forEach((id, sheet) -> {
            var codes = sheet.findings().stream()
                    .filter(one -> one.level() != Finding.Level.NOTE)
                    .map(Finding::code)
                    .collect(Collectors.toCollection(TreeSet::new));
            if (!codes.isEmpty()) {
                wrong.put(id, String.join(" ", codes));
            }
        });
        assertThat(wrong)
                .containsExactly(
                        Map.entry("hobbarn-wainscot", "battery-product seen-differs"),
                        Map.entry("hobbarn-withy", "seen-differs"),
                        Map.entry("pellowick-sloe", "claim-range-reversed"),
                        Map.entry("skelloway-marram", "not-plausible"),
                        Map.entry("vessenby-halfpenny", "payload-product"));
    }
}
