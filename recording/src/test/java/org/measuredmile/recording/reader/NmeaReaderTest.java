package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.Decode.finding;
import static org.measuredmile.recording.reader.Decode.recording;
import static org.measuredmile.recording.reader.Decode.refusal;
import static org.measuredmile.recording.reader.Decode.resource;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

class NmeaReaderTest {
    private static String sentence(String body) {
        int sum = 0;
        for (char sign : body.toCharArray()) {
            sum ^= sign;
        }
        return String.format(Locale.ROOT, "$%s*%02X\r\n", body, sum);
    }

    private static String rmc(String clock, String knots, String date) {
        return sentence("GPRMC," + clock + ",A,5100.000,N,00630.000,E," + knots + ",90.0," + date + ",,,A");
    }

    private static String gga(String clock) {
        return sentence("GPGGA," + clock + ",5100.000,N,00630.000,E,1,08,1.0,60.0,M,46.0,M,,");
    }

    @Test
    void knotsBecomeMetresPerSecond() {
        Recording log = recording("l.nmea", rmc("101500.00", "10.0", "040531"));
        // 10 kn = 18.52 km/h: the international nautical mile, NIST SP 811 appendix B.
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(0)).isCloseTo(18.52 / 3.6, within(1e-12));
        assertThat(log.start().orElseThrow()).hasToString("2031-05-04T10:15:00Z");
    }

    @Test
    void sentencesOfOneTimeAreOneEpochHoweverTheyAreInterleaved() {
        Recording log = recording(
                "l.nmea",
                gga("101500.00")
                        + rmc("101500.20", "5.0", "040531")
                        + gga("101500.20")
                        + rmc("101500.00", "4.0", "040531"));
        assertThat(log.samples()).isEqualTo(2);
        assertThat(log.timesS()).containsExactly(0, 0.2);
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().size()).isEqualTo(2);
    }

    @Test
    void anEpochWrittenLateIsPutInItsTime() {
        Recording log = recording(
                "l.nmea",
                rmc("101500.50", "5.0", "040531")
                        + rmc("101500.00", "4.0", "040531")
                        + rmc("101501.00", "6.0", "040531"));
        Channel speed = log.channel(ChannelKind.SPEED).orElseThrow();
        assertThat(speed.timesS()).containsExactly(0, 0.5, 1.0);
        assertThat(speed.value(0)).isLessThan(speed.value(1));
        assertThat(finding(log, "late-sentences").message()).startsWith("1 epochs");
    }

    @Test
    void timeRunsOverMidnightAndADateAtTheEndCountsBackwards() {
        Recording log =
                recording("l.nmea", gga("235959.00") + gga("000000.00") + sentence("GPZDA,000000.00,05,05,2031,00,00"));
        assertThat(log.start().orElseThrow()).hasToString("2031-05-04T23:59:59Z");
        assertThat(log.spanS()).isEqualTo(1);
    }

    @Test
    void withoutAnyDateThereIsNoStartAndThatIsSaid() {
        Recording log = recording("l.nmea", gga("101500.00") + gga("101501.00"));
        assertThat(log.start()).isEmpty();
        finding(log, "date-unknown");
    }

    @Test
    void sentencesWithAWrongChecksumAreDroppedAndCounted() {
        Recording log = recording(Decode.bytes("b.nmea", resource("bad_checksum.nmea")));
        assertThat(log.counts()).containsEntry("wrong-checksum", 2L).containsEntry("RMC", 1L);
        assertThat(finding(log, "wrong-checksum").place().where()).isEqualTo("line 1");
    }

    @Test
    void aCutLastSentenceIsCountedAndTheRestStands() {
        Recording log = recording(Decode.bytes("t.nmea", resource("truncated_end.nmea")));
        assertThat(log.samples()).isEqualTo(1);
        assertThat(log.counts()).containsEntry("unreadable", 1L);
    }

    @Test
    void aLogThatStopsInsideASentenceIsSaidToBeCutOff() {
        String whole = rmc("101500.00", "5", "040531") + rmc("101501.00", "5", "040531");
        Recording log = recording("l.nmea", whole + "$GPRMC,101502.00,A,51*");
        assertThat(log.timesS()).hasSize(2);
        finding(log, "cut-off");
    }

    @Test
    void whatALoggerAddsAroundASentenceDoesNotMatter() {
        Recording log = recording(Decode.bytes("p.nmea", resource("phone_log_prefixed_lines.nmea")));
        assertThat(log.samples()).isEqualTo(48);
        // 614.0 m: pyproj Geod WGS84 over the GGA fixes.
        assertThat(log.track().lengthM().orElseThrow()).isCloseTo(614.0, within(0.06));
    }

    @Test
    void noFixIsNeverThePlaceWhereEquatorAndMeridianCross() {
        String vacant = sentence("GPRMC,101500.00,V,0000.0000,N,00000.0000,E,0.00,0.00,040531,,,N");
        assertThat(refusal("l.nmea", vacant).code()).isEqualTo("no-fix");
        Recording log = recording("l.nmea", vacant + rmc("101501.00", "5", "040531"));
        assertThat(log.samples()).isEqualTo(2);
        assertThat(log.channel(ChannelKind.LATITUDE).orElseThrow().size()).isEqualTo(1);
    }

    @Test
    void southAndWestAreNegative() {
        Recording log = recording("l.nmea", sentence("GNGNS,101500.00,3330.000,S,07040.000,W,AAN,09,0.8,500.0,30.0,,"));
        assertThat(log.channel(ChannelKind.LATITUDE).orElseThrow().value(0)).isEqualTo(-33.5);
        assertThat(log.channel(ChannelKind.LONGITUDE).orElseThrow().value(0)).isCloseTo(-70.6666667, within(1e-6));
    }

    @Test
    void speedOverGroundFillsInWhereNoRmcGivesIt() {
        Recording log = recording("l.nmea", gga("101500.00") + sentence("GPVTG,90.0,T,,M,3.6,N,6.67,K,A"));
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(0)).isCloseTo(1.852, within(1e-9));
    }

    @Test
    void sixtyMinutesAreNoCoordinate() {
        Recording log = recording(
                "l.nmea",
                sentence("GPRMC,101500.00,A,5160.000,N,00630.000,E,1.0,90.0,040531,,,A")
                        + rmc("101501.00", "5", "040531"));
        finding(log, "bad-coordinates");
        assertThat(log.channel(ChannelKind.LATITUDE).orElseThrow().size()).isEqualTo(1);
    }
}
