package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.Decode.finding;
import static org.measuredmile.recording.reader.Decode.recording;
import static org.measuredmile.recording.reader.Decode.refusal;
import static org.measuredmile.recording.reader.Decode.resource;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

class DelimitedReaderTest {
    @Test
    void unitsInTheHeadAreTakenInBracketsAndAfterAnUnderscore() {
        Recording log = recording("l.csv", "time_s,speed (km/h),wheel_speed_mph,Force [N]\n0,36,10,5\n0.1,18,20,6\n");
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().values()).containsExactly(10, 5);
        // 1 mph = 0.44704 m/s exactly: NIST SP 811, appendix B.
        assertThat(log.channel(ChannelKind.WHEEL_SPEED).orElseThrow().value(0)).isCloseTo(4.4704, within(1e-12));
        assertThat(log.channel(ChannelKind.FORCE).orElseThrow().value(1)).isEqualTo(6);
        assertThat(log.timesS()).containsExactly(0, 0.1);
    }

    @Test
    void semicolonsAndDecimalCommasAreReadAndSaid() {
        Recording log = recording("l.csv", "\uFEFFtime (s);speed (m/s)\r\n0,00;1,5\r\n0,50;2,25\r\n");
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().values()).containsExactly(1.5, 2.25);
        assertThat(log.timesS()).containsExactly(0, 0.5);
        assertThat(finding(log, "separator").message()).contains("\";\"").contains("\",\"");
    }

    @Test
    void tabsAndBarsPartColumnsToo() {
        assertThat(recording("l.tsv", "time (s)\tspeed (m/s)\n0\t1\n1\t2\n").timesS())
                .hasSize(2);
        assertThat(recording("l.txt", "time (s)|speed (m/s)\n0|1\n1|2\n").timesS())
                .hasSize(2);
    }

    @Test
    void utf16IsReadWithAndWithoutItsMark() {
        String table = "time (s);speed (m/s)\n0;1\n1;2\n";
        byte[] marked = ("\uFEFF" + table).getBytes(StandardCharsets.UTF_16BE);
        byte[] bare = table.getBytes(StandardCharsets.UTF_16LE);
        assertThat(recording(Decode.bytes("m.csv", marked)).timesS()).hasSize(2);
        assertThat(recording(Decode.bytes("b.csv", bare)).timesS()).hasSize(2);
    }

    @Test
    void linesBeforeTheHeadAndCommentsAreNotData() {
        Recording log =
                recording("l.csv", "# logger 7\nRide of the day\n\ntime (s),speed (m/s),note\n0,1,a\n# pause\n1,2,b\n");
        assertThat(log.samples()).isEqualTo(2);
        assertThat(log.timesS()).containsExactly(0, 1);
    }

    @Test
    void dateAndTimeInTwoColumnsMakeOneTime() {
        Recording log = recording("l.csv", "date,time,speed (m/s)\n040531,101500250,1\n040531,101501250,2\n");
        assertThat(log.start().orElseThrow()).hasToString("2004-05-31T10:15:00.250Z");
        finding(log, "date-order-assumed");
        finding(log, "zone-not-stated");
    }

    @Test
    void anotherClockSettlesTheOrderOfADate() {
        // 1395837505 s since 1970 is 2014-03-26.
        Recording log = recording(
                "l.csv",
                "date,time,millis,speed (m/s)\n260314,123825,1395837505000,1\n260314,123826,1395837506000,2\n");
        assertThat(log.start().orElseThrow()).hasToString("2014-03-26T12:38:25Z");
        assertThat(log.findings()).noneMatch(finding -> finding.code().equals("date-order-assumed"));
    }

    @Test
    void secondsAndMillisecondsSince1970AreToldApartBySize() {
        assertThat(recording("l.csv", "timestamp,speed (m/s)\n1400000000.5,1\n1400000001.5,2\n")
                        .start()
                        .orElseThrow())
                .hasToString("2014-05-13T16:53:20.500Z");
        assertThat(recording("l.csv", "timestamp,speed (m/s)\n1400000000500,1\n1400000001500,2\n")
                        .start()
                        .orElseThrow())
                .hasToString("2014-05-13T16:53:20.500Z");
    }

    @Test
    void millisecondsThatCannotBeMillisecondsAreReadAsSecondsAndSaid() {
        Recording log = recording("l.csv", "Timestamp (ms),speed (m/s)\n0.01,1\n0.02,2\n0.03,2\n");
        assertThat(log.spanS()).isCloseTo(0.02, within(1e-12));
        finding(log, "time-unit");
    }

    @Test
    void hemispheresMayStandInTheCellOrBesideIt() {
        Recording inside =
                recording("l.csv", "time (s),latitude N/S,longitude E/W\n0,33.5S,070.25W\n1,33.6S,070.25W\n");
        Recording beside = recording("l.csv", "time (s),lat,N/S,lon,E/W\n0,33.5,S,70.25,W\n1,33.6,S,70.25,W\n");
        for (Recording log : new Recording[] {inside, beside}) {
            assertThat(log.channel(ChannelKind.LATITUDE).orElseThrow().value(0)).isEqualTo(-33.5);
            assertThat(log.channel(ChannelKind.LONGITUDE).orElseThrow().value(1))
                    .isEqualTo(-70.25);
        }
    }

    @Test
    void unitsInsideTheCellsAreTakenCellByCell() {
        Recording log = recording("l.csv", "time (s),height,speed\n0,374.5 m,36.0 km/h\n1,0.375 km,10.0 m/s\n");
        assertThat(log.channel(ChannelKind.ALTITUDE).orElseThrow().values()).containsExactly(374.5, 375);
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(0)).isCloseTo(10, within(1e-9));
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(1)).isCloseTo(10, within(1e-9));
    }

    /// A straight ride north at a steady speed; one degree of latitude at 51° is 111 250 m on WGS-84 to 0.1 %.
    private static String steadyRide(double speedWritten, double mps) {
        StringBuilder table = new StringBuilder("time (s),lat,lon,speed\n");
        for (int second = 0; second < 60; second++) {
            table.append(second)
                    .append(',')
                    .append(51 + second * mps / 111_250)
                    .append(",6.5,")
                    .append(speedWritten)
                    .append('\n');
        }
        return table.toString();
    }

    @Test
    void theUnitOfASpeedIsWorkedOutFromTheWay() {
        double mps = 8;
        for (double perMps : new double[] {1, 3.6, 3600 / 1609.344, 3600 / 1852.0}) {
            Recording log = recording("l.csv", steadyRide(mps * perMps, mps));
            assertThat(log.channel(ChannelKind.SPEED).orElseThrow().value(5)).isCloseTo(mps, within(1e-9));
            finding(log, "unit-worked-out");
        }
    }

    @Test
    void withoutAWayTheUnitOfASpeedIsAssumedWithAWarning() {
        Recording log = recording("l.csv", "time (s),speed\n0,30\n1,31\n2,30\n");
        assertThat(finding(log, "unit-assumed").message()).contains("km/h");
    }

    @Test
    void marksForNoDataAreNoSamplesAndTrueZerosAre() {
        Recording log =
                recording("l.csv", "time (s),heart_rate,power,speed (m/s)\n0,255,0,-1\n1,100,65535,0\n2,,200,1\n");
        assertThat(log.channel(ChannelKind.HEART_RATE).orElseThrow().timesS()).containsExactly(1);
        assertThat(log.channel(ChannelKind.POWER).orElseThrow().values()).containsExactly(0, 200);
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().values()).containsExactly(0, 1);
        assertThat(finding(log, "no-data-mark").message()).startsWith("3 values");
    }

    @Test
    void aReceiverRepeatedBetweenItsEpochsKeepsTheFirstRowOfEach() {
        StringBuilder table = new StringBuilder("utc time,millis,ax,ay,az,speed (km/h),lat,lon\n");
        for (int row = 0; row < 100; row++) {
            int epoch = row / 5;
            table.append("10:15:0")
                    .append(epoch / 10)
                    .append('.')
                    .append(epoch % 10)
                    .append("00,")
                    .append(row * 20)
                    .append(",0.")
                    .append(row % 7)
                    .append(",0.1,9.8,")
                    .append(20 + epoch)
                    .append(',')
                    .append(51 + epoch * 1e-5)
                    .append(",6.5\n");
        }
        Recording log = recording("l.csv", table.toString());
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().size()).isEqualTo(20);
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().timesS()).startsWith(0, 0.1, 0.2);
        assertThat(log.channel(ChannelKind.ACCELERATION_X).orElseThrow().size()).isEqualTo(100);
        assertThat(finding(log, "held-values").message()).startsWith("80 rows");
    }

    @Test
    void aReceiverThatReallyMeasuresOnEveryRowKeepsThemAll() {
        StringBuilder table = new StringBuilder("utc time,millis,ax,ay,az,speed (km/h),lat,lon\n");
        for (int row = 0; row < 100; row++) {
            table.append("10:15:")
                    .append(10 + row / 10)
                    .append(',')
                    .append(row * 100)
                    .append(",0.1,0.1,9.8,")
                    .append(20 + row * 0.1)
                    .append(',')
                    .append(51 + row * 1e-5)
                    .append(",6.5\n");
        }
        assertThat(recording("l.csv", table.toString())
                        .channel(ChannelKind.SPEED)
                        .orElseThrow()
                        .size())
                .isEqualTo(100);
    }

    @Test
    void linesOfSeveralTypesAreReadByTheirCommentedHead() {
        Recording log = recording(
                "l.txt",
                "# Fix,Provider,Latitude,Longitude,Speed,TimeInMs\n# Raw,A,B,C\n"
                        + "Fix,gps,51.0,6.5,1.5,1400000000000\nRaw,1,2,3\nFix,gps,51.0,6.5,1.5,1400000001000\n");
        assertThat(log.samples()).isEqualTo(2);
        assertThat(log.counts()).containsEntry("lines-raw", 1L);
        finding(log, "line-types");
    }

    @Test
    void unknownColumnsAreKeptUnderTheirNamesAndWordsAreNamed() {
        Recording log = recording("l.csv", "time (s),speed (m/s),flux,weather\n0,1,7,Cloudy\n1,2,8,Cloudy\n");
        Channel flux = log.channels().stream()
                .filter(channel -> channel.name().equals("flux"))
                .findFirst()
                .orElseThrow();
        assertThat(flux.kind()).isEqualTo(ChannelKind.OTHER);
        assertThat(flux.values()).containsExactly(7, 8);
        assertThat(finding(log, "columns").message()).contains("weather → words");
    }

    @Test
    void aTimeOfDayMayRunOverMidnight() {
        Recording log = recording("l.csv", "time,speed (m/s)\n23:59:59,1\n00:00:01,2\n");
        assertThat(log.spanS()).isEqualTo(2);
        assertThat(log.start()).isEmpty();
    }

    @Test
    void gapsStayGaps() {
        Recording log = recording("l.csv", "time (s),speed (m/s)\n0,1\n1,2\n60,2\n");
        assertThat(log.timesS()).containsExactly(0, 1, 60);
    }

    @Test
    void wordsWhereNumbersShouldBeAreToldWithTheirLine() {
        Recording log = recording("l.csv", "time (s),speed (m/s)\n0,1\n1,fast\n2,NaN\n3,2\n4,0x10\n5,3\n");
        assertThat(log.channel(ChannelKind.SPEED).orElseThrow().timesS()).containsExactly(0, 3, 5);
        assertThat(finding(log, "no-data-mark").message())
                .startsWith("1 values")
                .contains("NaN");
        assertThat(finding(log, "not-a-number").place().where()).isEqualTo("line 3");
        assertThat(finding(log, "not-a-number").message())
                .startsWith("2 values")
                .contains("fast");
    }

    @Test
    void anEbikeRideHasItsSpeedInMetresPerSecond() {
        Recording ride = recording(Decode.bytes("r.csv", resource("ebike_ride_d_first_60_rows.csv")));
        assertThat(ride.samples()).isEqualTo(60);
        assertThat(ride.channel(ChannelKind.SPEED).orElseThrow().value(2)).isCloseTo(17.06 / 3.6, within(1e-9));
        assertThat(ride.channel(ChannelKind.DISTANCE)).isPresent();
    }

    @Test
    void aClockThatIsWholeHoursAwayFromAnotherIsNamedAndNotShifted() {
        Recording log = recording(
                "l.csv",
                "loggingTime,fix_epoch,speed (m/s)\n2014-03-26 14:38:25.1,1395837505.0,1\n"
                        + "2014-03-26 14:38:25.2,1395837505.0,1\n2014-03-26 14:38:25.3,1395837505.0,2\n");
        assertThat(finding(log, "clock-offset").message())
                .contains("7200 s ahead")
                .contains("whole hours");
        assertThat(log.start().orElseThrow()).hasToString("2014-03-26T14:38:25.100Z");
    }

    @Test
    void whatIsNoRecordingIsRefusedWithTheReason() {
        assertThat(refusal("a.csv", "").code()).isEqualTo("empty");
        assertThat(refusal("a.csv", " \n\n").code()).isEqualTo("empty");
        assertThat(refusal("a.csv", "speed_mph,distance_ft\n4,2\n7,4\n").code()).isEqualTo("no-times");
        assertThat(refusal("a.csv", "1,2,3\n4,5,6\n").code()).isEqualTo("no-head");
        assertThat(refusal("a.gpx", "<!DOCTYPE html>\n<html><body>Sign in</body></html>")
                        .code())
                .isIn("markup", "not-gpx", "ill-formed");
        assertThat(refusal("a.csv", "time (s),weather\n0,dry\n1,wet\n").code()).isEqualTo("no-samples");
        byte[] junk = new byte[4096];
        new java.util.Random(1).nextBytes(junk);
        assertThat(refusal(Decode.bytes("a.fit", junk)).code()).isEqualTo("not-text");
        assertThat(refusal(Decode.bytes("a.csv", new byte[4096])).code()).isIn("empty", "not-text");
    }
}
