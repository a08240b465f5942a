package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/// Encodings, line ends, separators, first lines and unknown columns of the files that people write.
class DayFileTextTest {
    private static final String READINGS = "run,reading,value\n,airTemperature,18.5 °C\n";

    @Test
    void byteOrderMarksAndUtf16AreReadAndNamed() {
        var marked = FolderOf.day().with("readings.csv", "\uFEFF" + READINGS);
        var wide = FolderOf.day().with("readings.csv", ("\uFEFF" + READINGS).getBytes(StandardCharsets.UTF_16LE));

        assertThat(marked.notes()).contains("byte-order-mark @ readings.csv");
        assertThat(wide.notes()).contains("read-as-utf-16 @ readings.csv");
        assertThat(marked.readable().day().readings()).hasSize(1);
        assertThat(wide.readable().day().readings())
                .isEqualTo(marked.readable().day().readings());
    }

    @Test
    void bytesThatAreNoUtf8AreNamedByTheirPlace() {
        var folder = FolderOf.day().with("readings.csv", READINGS.getBytes(StandardCharsets.ISO_8859_1));

        // "run,reading,value\n" is 18 bytes, ",airTemperature,18.5 " is 21: the degree sign is byte 39.
        assertThat(folder.faults()).containsExactly("not-utf-8 @ readings.csv: byte 39");
        assertThat(folder.readable().day().readings()).isEmpty();
    }

    @Test
    void lineEndsOfAnySystemGiveTheSameReadings() {
        var expected =
                FolderOf.day().with("readings.csv", READINGS).readable().day().readings();

        for (String end : new String[] {"\r\n", "\r"}) {
            assertThat(FolderOf.day()
                            .with("readings.csv", READINGS.replace("\n", end))
                            .readable()
                            .day()
                            .readings())
                    .isEqualTo(expected);
        }
    }

    @Test
    void semicolonsAndDecimalCommasAreAcceptedAndSaid() {
        var folder = FolderOf.day().with("readings.csv", "run;reading;value\n;mass;24,6 kg\n;mass;24,7 kg\n");

        assertThat(folder.faults()).isEmpty();
        assertThat(folder.notes()).contains("cells-by @ readings.csv", "decimal-comma @ readings.csv: line 2, value");
        assertThat(folder.readable().day().readings().getFirst().value()).isEqualTo("24,6 kg");
    }

    @Test
    void firstLinesOfAnotherKindOrANewerVersionAreNamed() {
        assertThat(FolderOf.day()
                        .with("readings.csv", "# measured-mile readings 1\n" + READINGS)
                        .faults())
                .isEmpty();
        assertThat(FolderOf.day()
                        .with("readings.csv", "# measured-mile runs 2\n" + READINGS)
                        .faults())
                .containsExactly("format-other @ readings.csv: line 1", "format-newer @ readings.csv: line 1");
    }

    @Test
    void unknownColumnsKeysAndFilesAreNamed() {
        var folder = FolderOf.day()
                .with("day.yaml", FolderOf.DAY + "mood: fine\n")
                .with("notes.txt", "rain later")
                .with("readings.csv", "run,reading,value,colour,Value\n,mass,24 kg,blue,25 kg\n");

        assertThat(folder.notes())
                .contains(
                        "key-unknown @ day.yaml: line 11, mood",
                        "column-unknown @ readings.csv: line 1",
                        "file-unknown @ notes.txt");
        assertThat(folder.faults()).containsExactly("column-twice @ readings.csv: line 1");
    }

    @Test
    void aFileWithoutItsColumnsOrWithoutAnythingIsNamed() {
        assertThat(FolderOf.day().with("readings.csv", "run,value\n,7\n").faults())
                .containsExactly("column-missing @ readings.csv: line 1");
        assertThat(FolderOf.day()
                        .with("readings.csv", "")
                        .with("runs.csv", "# measured-mile runs 1\n")
                        .faults())
                .containsExactly("file-empty @ runs.csv", "file-empty @ readings.csv");
    }

    @Test
    void anEmptyValueIsNoReadingAndNeverAZero() {
        var folder = FolderOf.day().with("readings.csv", "run,reading,value\n,mass,\n,mass,0 kg\n");

        assertThat(folder.notes()).contains("no-value @ readings.csv: line 2, value");
        assertThat(folder.readable().day().readings())
                .extracting(Reading::value)
                .containsExactly("0 kg");
    }

    @Test
    void aQuotedCellMayHoldLineEndsAndLaterLinesKeepTheirNumbers() {
        var folder = FolderOf.day()
                .with(
                        "readings.csv",
                        "run,reading,value,note\n,mass,24 kg,\"two\nlines\"\n,,7,\n,mass,\"open,\n,,8,\n");

        assertThat(folder.faults())
                .containsExactly(
                        "cell-missing @ readings.csv: line 4, reading",
                        "quote-broken @ readings.csv: line 5",
                        "cell-missing @ readings.csv: line 6, reading");
    }
}
