package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.Decode.finding;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ColumnSetting;
import org.measuredmile.recording.ColumnSettings;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;

/// What a person set a column to mean goes before its name, and is held against its values.
class ColumnSettingsTest {
    private static final String LOG = """
            t,spd,brk
            0,36,0
            1,18,1
            2,9,1
            """;

    @Test
    void whatWasSetIsReadWhateverTheNamesSay() {
        Recording log = read(LOG, "t=time:s", "spd=wheel-speed:km/h", "brk=lever");
        assertThat(log.channel(ChannelKind.WHEEL_SPEED).orElseThrow().values()).containsExactly(10, 5, 2.5);
        assertThat(log.channel(ChannelKind.LEVER).orElseThrow().values()).containsExactly(0, 1, 1);
        assertThat(log.timesS()).containsExactly(0, 1, 2);
        assertThat(finding(log, "columns-set").message()).contains("spd → wheel-speed in km/h");
        assertThat(log.findings()).noneMatch(one -> one.code().equals("column-contradicted"));
    }

    @Test
    void aColumnThatIsToMeanNothingBecomesNoChannel() {
        Recording log = read("time (s),speed (m/s),note\n0,1,7\n1,2,8\n", "note=none");
        assertThat(log.channels()).extracting(channel -> channel.name()).containsExactly("speed (m/s)");
    }

    @Test
    void theChosenColumnOfTimesIsTheClock() {
        Recording log = read("time_ms,tick,speed (m/s)\n0,100,1\n10,102,2\n20,104,3\n", "tick=time:s");
        assertThat(log.timesS()).containsExactly(0, 2, 4);
    }

    @Test
    void aTableWithoutAHeadIsReadOnceItsColumnsAreSet() {
        String bare = "0.0,12.5,7\n0.5,13.0,8\n1.0,13.5,9\n";
        assertThat(Decode.refusal(Decode.bytes("l.csv", bare.getBytes(UTF_8))).code())
                .isEqualTo("no-head");
        Recording log = read(bare, "column 1=time:s", "column 2=speed:mph");
        assertThat(log.timesS()).containsExactly(0, 0.5, 1);
        // 1 mph = 0.44704 m/s exactly: NIST SP 811, appendix B.
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(0)).isCloseTo(12.5 * 0.44704, within(1e-12));
    }

    @Test
    void aRefusedTableStillSaysWhatItsColumnsAre() {
        Decoding refused = Decode.bytes("l.csv", "a,b\n5,1\n4,2\n5,3\n".getBytes(UTF_8));
        assertThat(refused).isInstanceOf(Decoding.Refused.class);
        assertThat(refused.columns()).extracting(one -> one.name()).containsExactly("a", "b");
        assertThat(refused.columns().getFirst().first()).containsExactly("5", "4", "5");
    }

    @Test
    void aColumnThatIsMissingIsNamed() {
        Finding missing = finding(read(LOG, "t=time:s", "spd=speed:km/h", "gone=power:W"), "column-missing");
        assertThat(missing.level()).isEqualTo(Finding.Level.WARNING);
        assertThat(missing.message()).contains("\"gone\"");
        assertThat(missing.place().source()).isEqualTo("l.csv");
    }

    @Test
    void anEmptyColumnThatWasSetIsNamed() {
        Recording log = read("time (s),speed (m/s),p\n0,1,\n1,2,\n", "p=power:W");
        assertThat(finding(log, "column-empty").place().text()).isEqualTo("l.csv: p");
    }

    @Test
    void wordsContradictANumber() {
        Recording log = read("time (s),speed (m/s),p\n0,1,low\n1,2,high\n2,3,4\n", "p=power:W");
        Finding against = finding(log, "column-contradicted");
        assertThat(against.message()).contains("2 of its first 3 values, the first \"low\"");
        assertThat(against.place().text()).isEqualTo("l.csv: p");
        assertThat(log.channel(ChannelKind.POWER).orElseThrow().values()).containsExactly(4);
    }

    @Test
    void anotherUnitInTheHeadContradicts() {
        Recording log = read("time (s),v (km/h)\n0,30\n1,31\n", "v (km/h)=speed:mph");
        assertThat(finding(log, "column-contradicted").message()).contains("its head says km/h");
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(0)).isCloseTo(30 * 0.44704, within(1e-12));
        assertThat(finding(read("time (s),F [N]\n0,30\n1,31\n", "F [N]=speed:mph"), "column-contradicted")
                        .message())
                .contains("which is no unit of it");
    }

    @Test
    void aSizeThatNothingOnABicycleHasContradicts() {
        Recording log = read("time (s),spd\n0,5210\n1,5220\n2,5230\n", "spd=speed:m/s");
        assertThat(finding(log, "column-contradicted").message()).contains("5220 m/s");
        assertThat(finding(read("time (s),c\n0,21\n1,22\n", "c=temperature:K"), "column-contradicted")
                        .message())
                .contains("22 K");
    }

    @Test
    void positionsBeyondTheGlobeContradict() {
        Recording log = read("time (s),n,e\n0,120.5,8\n1,120.6,8\n", "n=latitude:°", "e=longitude:°");
        assertThat(finding(log, "column-contradicted").message())
                .contains("\"n\"")
                .contains("\"120.5\"");
    }

    @Test
    void aDistanceThatGoesBackContradicts() {
        Recording log = read("time (s),d\n0,10\n1,5\n2,12\n3,3\n", "d=distance:m");
        assertThat(finding(log, "column-contradicted").message()).contains("goes back in 2");
    }

    @Test
    void timesThatAreNoneContradict() {
        Decoding refused = decode("at,speed (m/s)\nnoon,1\nlater,2\n", "at=time");
        assertThat(refused.findings())
                .anyMatch(one -> one.code().equals("no-times"))
                .anyMatch(one -> one.code().equals("column-contradicted")
                        && one.message().contains("\"noon\", are no times"));
    }

    @Test
    void aSpeedInAnotherUnitThanTheWayBetweenPositionsContradicts() {
        StringBuilder log = new StringBuilder("time (s),lat,lon,spd\n");
        for (int i = 0; i < 60; i++) {
            // A tenth of a thousandth of a degree of the meridian at the equator: 11.057 m (WGS-84).
            log.append(i).append(',').append(i * 1e-4).append(",0,39.8\n");
        }
        Recording wrong = read(log.toString(), "spd=speed:mph");
        assertThat(finding(wrong, "column-contradicted").message()).contains("as if it were in km/h");
        Recording right = read(log.toString(), "spd=speed:km/h");
        assertThat(right.findings()).noneMatch(one -> one.code().equals("column-contradicted"));
    }

    @Test
    void ofSeveralInstrumentsTheOneWhoseColumnsAllStandInTheHeadIsTaken() {
        var settings = ColumnSettings.among(Map.of(
                "wheel-1", settings("spd=wheel-speed:km/h", "brk=lever"),
                "meter-1", settings("volts=voltage:V")));
        Recording log = Decode.recording(decode(LOG.replace("t,", "time (s),"), settings));
        assertThat(log.channel(ChannelKind.WHEEL_SPEED)).isPresent();
        assertThat(finding(log, "columns-set").message()).contains("wheel-1");
    }

    private static Recording read(String table, String... columns) {
        return Decode.recording(decode(table, columns));
    }

    private static Decoding decode(String table, String... columns) {
        return decode(table, ColumnSettings.of("logger-1", settings(columns)));
    }

    private static Decoding decode(String table, ColumnSettings settings) {
        try {
            return Readers.decodeAll("l.csv", new ByteArrayInputStream(table.getBytes(UTF_8)), name -> settings)
                    .getFirst();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static List<ColumnSetting> settings(String... columns) {
        var settings = new ArrayList<ColumnSetting>();
        for (String column : columns) {
            int equals = column.lastIndexOf('=');
            String[] meaning = column.substring(equals + 1).split(":", 2);
            String unit = meaning.length > 1 ? meaning[1] : "";
            settings.add(ColumnSetting.of(column.substring(0, equals), meaning[0], unit)
                    .orElseThrow());
        }
        return settings;
    }
}
