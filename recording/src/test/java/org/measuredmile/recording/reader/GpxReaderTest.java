package org.measuredmile.recording.reader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.recording.reader.Decode.finding;
import static org.measuredmile.recording.reader.Decode.recording;
import static org.measuredmile.recording.reader.Decode.refusal;
import static org.measuredmile.recording.reader.Decode.resource;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

class GpxReaderTest {
    private static String gpx(String inside) {
        return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"box\">\n<trk><trkseg>\n" + inside
                + "\n</trkseg></trk>\n</gpx>\n";
    }

    private static String point(int second, String more) {
        return "<trkpt lat=\"51.0000" + second + "\" lon=\"6.5\"><time>2031-05-04T10:15:0" + second + "Z</time>" + more
                + "</trkpt>\n";
    }

    @Test
    void extensionsAreTakenByLocalNameAtAnyDepthUnderAnyPrefix() {
        String more = "<extensions><a:box xmlns:a=\"u:a\"><a:inner><a:hr>120</a:hr>"
                + "<b:speed xmlns:b=\"u:b\">5.5</b:speed>"
                + "<a:atemp>18.5</a:atemp><a:cad>60</a:cad><a:power>210</a:power></a:inner></a:box></extensions>";
        Recording ride = recording("r.gpx", gpx(point(0, more) + point(1, more)));
        assertThat(ride.channel(ChannelKind.SPEED).orElseThrow().value(1)).isEqualTo(5.5);
        assertThat(ride.channel(ChannelKind.HEART_RATE).orElseThrow().value(0)).isEqualTo(2.0);
        assertThat(ride.channel(ChannelKind.CADENCE).orElseThrow().value(0)).isEqualTo(1.0);
        assertThat(ride.channel(ChannelKind.POWER).orElseThrow().value(0)).isEqualTo(210);
        assertThat(ride.channel(ChannelKind.AIR_TEMPERATURE).orElseThrow().value(0))
                .isCloseTo(291.65, within(1e-9));
    }

    @Test
    void aPrefixThatWasNeverDeclaredIsNoReasonToRefuse() {
        Recording ride = recording("r.gpx", gpx(point(0, "<x:hr>90</x:hr>") + point(1, "")));
        assertThat(ride.channel(ChannelKind.HEART_RATE).orElseThrow().size()).isEqualTo(1);
    }

    @Test
    void aTrueZeroSurvivesAndAMarkForNoDataDoesNot() {
        Recording ride = recording("r.gpx", gpx(point(0, "<power>0</power><hr>255</hr>") + point(1, "<hr>99</hr>")));
        assertThat(ride.channel(ChannelKind.POWER).orElseThrow().value(0)).isZero();
        assertThat(ride.channel(ChannelKind.HEART_RATE).orElseThrow().size()).isEqualTo(1);
        assertThat(finding(ride, "no-data-mark").place().where()).isEqualTo("line 4");
    }

    @Test
    void timesWithoutAZoneAreReadAsUtcAndSaidToBe() {
        String bare = "<trkpt lat=\"1\" lon=\"2\"><time>2031-05-04T10:15:00</time></trkpt>";
        Recording ride = recording("r.gpx", gpx(bare + point(1, "")));
        assertThat(ride.zoneStated()).isFalse();
        assertThat(finding(ride, "zone-not-stated").level()).isEqualTo(Finding.Level.WARNING);
    }

    @Test
    void offsetsAreTurnedIntoUtc() {
        String east = "<trkpt lat=\"1\" lon=\"2\"><time>2031-05-04T12:15:00.250+02:00</time></trkpt>";
        Recording ride = recording("r.gpx", gpx(east));
        assertThat(ride.start().orElseThrow()).hasToString("2031-05-04T10:15:00.250Z");
        assertThat(ride.zoneStated()).isTrue();
    }

    @Test
    void theThirtyFirstOfFebruaryIsNoTime() {
        String never = "<trkpt lat=\"1\" lon=\"2\"><time>2031-02-31T10:15:00Z</time></trkpt>";
        Recording ride = recording("r.gpx", gpx(point(0, "") + point(1, "") + never));
        assertThat(ride.timesS()).hasSize(2);
        assertThat(finding(ride, "bad-time").message()).contains("2031-02-31");
    }

    @Test
    void oneWildTimeAheadCostsItselfAndNotAllThatFollows() {
        String wild = "<trkpt lat=\"1\" lon=\"2\"><time>2099-01-01T00:00:00Z</time></trkpt>\n";
        Recording ride = recording("r.gpx", gpx(point(0, "") + wild + point(1, "") + point(2, "") + point(3, "")));
        assertThat(ride.timesS()).containsExactly(0, 1, 2, 3);
        assertThat(finding(ride, "time-backwards").place().where()).isEqualTo("line 5");
    }

    @Test
    void aFileThatEndsInTheMiddleGivesWhatCameBefore() {
        String cut = gpx(point(0, "") + point(1, "") + point(2, ""));
        Recording ride = recording("r.gpx", cut.substring(0, cut.indexOf("10:15:02")));
        assertThat(ride.timesS()).containsExactly(0, 1);
        assertThat(finding(ride, "cut-off").level()).isEqualTo(Finding.Level.WARNING);
    }

    @Test
    void aFileThatEndsBeforeTwoPointsIsRefused() {
        String cut = gpx(point(0, "") + point(1, ""));
        assertThat(refusal("r.gpx", cut.substring(0, cut.indexOf("10:15:01"))).code())
                .isEqualTo("cut-off");
    }

    @Test
    void illFormedXmlGivesWhatCameBeforeAndItsLine() {
        Recording ride = recording(Decode.bytes("x.gpx", resource("invalid_xml_mismatched_tag.gpx")));
        assertThat(ride.timesS()).containsExactly(0, 4);
        // xml.etree of Python 3: mismatched tag: line 39, column 3.
        assertThat(finding(ride, "ill-formed").place().where()).isEqualTo("line 39");
        assertThat(finding(ride, "ill-formed").level()).isEqualTo(Finding.Level.WARNING);
    }

    @Test
    void illFormedXmlBeforeTwoPointsIsRefusedAtItsLine() {
        Finding refusal = refusal("x.gpx", gpx(point(0, "</wrong>")));
        assertThat(refusal.code()).isEqualTo("ill-formed");
        assertThat(refusal.place().where()).isEqualTo("line 4");
        assertThat(refusal.message()).contains("1 points had been read");
    }

    @Test
    void aFileThatDeclaresEntitiesAndBreaksOnOneGivesNothingHoweverMuchCameBefore() {
        String bomb = "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>"
                + "<gpx><trk><trkseg>" + point(0, "") + point(1, "") + point(2, "<hr>&b;</hr>")
                + "</trkseg></trk></gpx>";
        assertThat(refusal("r.gpx", bomb).code()).isEqualTo("ill-formed");
    }

    @Test
    void blanksBeforeTheXmlArePassedOverAndLinesCountAllTheSame() {
        Recording ride = recording("r.gpx", "\n  " + gpx(point(0, "<hr>x</hr>") + point(1, "")));
        assertThat(ride.timesS()).hasSize(2);
        assertThat(finding(ride, "blanks-first").level()).isEqualTo(Finding.Level.NOTE);
        assertThat(finding(ride, "not-a-number").place().where()).isEqualTo("line 5");
    }

    @Test
    void gpx10WithItsOwnNamespaceHasItsValuesBesideThePointAndUnderAnyPrefix() {
        String text = "<?xml version=\"1.0\"?>\n<g:gpx version=\"1.0\" creator=\"box\" "
                + "xmlns:g=\"http://www.topografix.com/GPX/1/0\"><g:trk><g:trkseg>"
                + "<g:trkpt lat=\"51\" lon=\"6\"><g:time>2031-05-04T10:15:00Z</g:time><g:course>12</g:course>"
                + "<g:speed>5.5</g:speed><z:hr>120</z:hr><cad>60</cad><y:PowerInWatts>210</y:PowerInWatts>"
                + "<z:temp>18.5</z:temp></g:trkpt></g:trkseg></g:trk></g:gpx>";
        Recording ride = recording("r.gpx", text);
        assertThat(ride.channels())
                .extracting(org.measuredmile.recording.Channel::kind)
                .containsExactlyInAnyOrder(
                        ChannelKind.LATITUDE,
                        ChannelKind.LONGITUDE,
                        ChannelKind.COURSE,
                        ChannelKind.SPEED,
                        ChannelKind.HEART_RATE,
                        ChannelKind.CADENCE,
                        ChannelKind.POWER,
                        ChannelKind.AIR_TEMPERATURE);
    }

    @Test
    void eachTrackSegmentIsASegmentAndAWaypointWithATimeIsAMark() {
        String text = "<gpx><wpt lat=\"1\" lon=\"2\"><time>2031-05-04T10:15:02Z</time><name>gate</name></wpt>"
                + "<wpt lat=\"1\" lon=\"2\"><time>2031-05-04T09:00:00Z</time><name>home</name></wpt>"
                + "<wpt lat=\"1\" lon=\"2\"><name>timeless</name></wpt><trk><trkseg>" + point(0, "") + point(1, "")
                + "</trkseg><trkseg>" + point(4, "") + point(5, "") + "</trkseg></trk></gpx>";
        Recording ride = recording("r.gpx", text);
        assertThat(ride.segments()).containsExactly(new Segment(0, 1), new Segment(4, 5));
        assertThat(ride.marks()).containsExactly(new Mark(Mark.Kind.POINT, 2, 2, "gate"));
        assertThat(finding(ride, "mark-outside").message()).startsWith("1 marks");
        assertThat(ride.counts()).containsEntry("waypoints", 3L);
    }

    @Test
    void anExternalEntityIsNeverFetchedAndABombNeverGrows() {
        String external = "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>"
                + "<gpx creator=\"&x;\"><trk><trkseg>" + point(0, "<hr>&x;</hr>") + "</trkseg></trk></gpx>";
        assertThat(refusal("r.gpx", external).code()).isEqualTo("ill-formed");
        String bomb = "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>"
                + "<gpx><trk><trkseg>" + point(0, "<hr>&b;</hr>") + "</trkseg></trk></gpx>";
        assertThat(refusal("r.gpx", bomb).code()).isEqualTo("ill-formed");
    }

    @Test
    void anEntityThatNobodyDeclaredIsRefusedWhereverItStands() {
        for (String at : new String[] {"<hr>&x;</hr>", "<hr>1\n&x;\n2</hr>", "\n \n&x;", "<a b=\"&x;\"/>"}) {
            assertThat(refusal("r.gpx", gpx(point(0, at))).code()).isEqualTo("ill-formed");
        }
    }

    @Test
    void elementsWithinElementsWithoutEndAreRefused() {
        assertThat(refusal("r.gpx", "<gpx>" + "<a>".repeat(5000)).level()).isEqualTo(Finding.Level.REFUSED);
    }

    @Test
    void twoIdenticalPointsWithEmptyElevationsAreOneSampleAndNoDistance() {
        Recording ride = recording(Decode.bytes("e.gpx", resource("empty_ele_duplicate_point.gpx")));
        assertThat(ride.samples()).isEqualTo(2);
        assertThat(ride.timesS()).hasSize(1);
        assertThat(ride.track().lengthM()).hasValue(0);
        assertThat(finding(ride, "empty-elevation").message()).startsWith("2 points");
        assertThat(finding(ride, "repeated-time").message()).startsWith("1 samples");
    }

    @Test
    void wordsForCoordinatesAreRefusedWithTheirLine() {
        Decoding decoding = Decode.bytes("c.gpx", resource("coordinates_not_numbers.gpx"));
        assertThat(refusal(decoding).code()).isEqualTo("no-samples");
        assertThat(((Decoding.Refused) decoding).findings())
                .anyMatch(finding -> finding.code().equals("bad-coordinates")
                        && finding.place().where().equals("line 5"));
    }

    @Test
    void aFileWithoutNamespaceHasItsPathToADecimetre() {
        Recording walk = recording(Decode.bytes("n.gpx", resource("no_namespace_9_points.gpx")));
        // 243.1 m: pyproj Geod WGS84 over the nine points.
        assertThat(walk.track().lengthM().orElseThrow()).isCloseTo(243.1, within(0.06));
        assertThat(walk.spanS()).isEqualTo(251);
    }

    @Test
    void utf16WithAByteOrderMarkIsRead() {
        byte[] wide = ("\uFEFF" + gpx(point(0, "") + point(1, "")).replace("<?xml version=\"1.0\"?>\n", ""))
                .getBytes(java.nio.charset.StandardCharsets.UTF_16LE);
        assertThat(recording(Decode.bytes("w.gpx", wide)).timesS()).hasSize(2);
    }

    @Test
    void anotherRootIsNotGpx() {
        assertThat(refusal("r.gpx", "<?xml version=\"1.0\"?><kml><x/></kml>").code())
                .isEqualTo("not-gpx");
    }
}
