package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/// Every fault's words stand in a file that is read by people, so that a change of wording shows in review.
class DayFaultApprovedTest {
    @Test
    void everyFaultSaysWhatTheApprovedListingSays() throws IOException {
        String listing = Stream.of(DayFault.values())
                .map(fault -> fault.code() + " | " + fault.level().name().toLowerCase(java.util.Locale.ROOT) + " | "
                        + fault.message() + (fault.remedy().isEmpty() ? "" : " | " + fault.remedy()))
                .collect(Collectors.joining("\n", "", "\n"));

        try (var approved = getClass().getResourceAsStream("day-faults.approved.txt")) {
            assertThat(listing).isEqualTo(new String(approved.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void everyWarningAndRefusalSaysWhatToDo() {
        assertThat(DayFault.values())
                .filteredOn(fault -> fault.level() != org.measuredmile.recording.Finding.Level.NOTE)
                .allSatisfy(fault -> assertThat(fault.remedy()).isNotEmpty());
    }

    @Test
    void everyFaultIsFilledCompletely() {
        for (DayFault fault : DayFault.values()) {
            Object[] found = {"A", "B", "C", "D"};
            var finding = fault.at(org.measuredmile.recording.Place.NOWHERE, found);
            assertThat(finding.message() + finding.remedy()).doesNotContain("%s");
        }
    }
}
