package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TimeZone;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Inspection;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;

/// Whatever bytes come in, a reader answers, in time, and what it answers keeps the contract.
class ReadersPropertyTest {
    private static final List<String> RESOURCES = List.of(
            "bad_checksum.nmea",
            "truncated_end.nmea",
            "phone_log_prefixed_lines.nmea",
            "no_namespace_9_points.gpx",
            "empty_ele_duplicate_point.gpx",
            "coordinates_not_numbers.gpx",
            "invalid_xml_mismatched_tag.gpx",
            "coordinates_zero_and_not_numbers.tcx",
            "ebike_ride_d_first_60_rows.csv");
    private static final String[] PIECES = {
        ",", ";", "\n", "\r\n", "\"", "-", "1e308", "NaN", "99999999999999999999", "0", "<trkpt lat=\"1\" lon=\"2\">",
        "</trkpt>", "2031-02-31T10:15:00Z", "$GPRMC,", "*", "\u0000", "\uFFFD", "time", "-9999", "255", "é",
                "<!DOCTYPE",
        "&amp;", "&x;", "235959", "000000", "\t", "|", "#"
    };

    static Stream<Integer> seeds() {
        return IntStream.range(0, 300).boxed();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void changedRealFilesAreAnsweredInTime(int seed) {
        Random random = new Random(seed);
        String name = RESOURCES.get(seed % RESOURCES.size());
        byte[] changed = changed(Decode.resource(name), random);
        Decoding decoding = Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(20), () -> Decode.bytes(name, changed), () -> "seed " + seed);
        ReaderContract.holds(decoding);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void randomBytesAreAnsweredInTime(int seed) {
        Random random = new Random(seed);
        byte[] bytes = new byte[random.nextInt(3000)];
        random.nextBytes(bytes);
        for (RecordingReader reader : Readers.all()) {
            Decoding decoding = Assertions.assertTimeoutPreemptively(
                    Duration.ofSeconds(20),
                    () -> reader.read("x", new java.io.ByteArrayInputStream(bytes)),
                    () -> "seed " + seed);
            ReaderContract.holds(decoding);
        }
    }

    private static byte[] changed(byte[] original, Random random) {
        byte[] bytes = original;
        int changes = 1 + random.nextInt(12);
        for (int i = 0; i < changes; i++) {
            int at = random.nextInt(bytes.length + 1);
            byte[] head = Arrays.copyOf(bytes, at);
            byte[] tail = Arrays.copyOfRange(bytes, at, bytes.length);
            bytes = switch (random.nextInt(5)) {
                case 0 -> joined(head, PIECES[random.nextInt(PIECES.length)].getBytes(UTF_8), tail);
                case 1 ->
                    joined(head, Arrays.copyOfRange(tail, Math.min(tail.length, 1 + random.nextInt(40)), tail.length));
                case 2 -> joined(head, Arrays.copyOf(tail, Math.min(tail.length, 200)), tail);
                case 3 -> joined(tail, head);
                default ->
                    joined(
                            head,
                            PIECES[random.nextInt(PIECES.length)].getBytes(UTF_8),
                            Arrays.copyOfRange(tail, Math.min(tail.length, 3), tail.length));
            };
        }
        return bytes;
    }

    private static byte[] joined(byte[]... parts) {
        byte[] all = new byte[Arrays.stream(parts).mapToInt(part -> part.length).sum()];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    static List<String> resources() {
        return RESOURCES;
    }

    @ParameterizedTest
    @MethodSource("resources")
    void theMachinesLanguageAndZoneChangeNothing(String name) {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        String here = described(name);
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            assertThat(described(name)).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    private static String described(String name) {
        Decoding decoding = Decode.bytes(name, Decode.resource(name));
        if (!(decoding instanceof Decoded(Recording recording))) {
            return decoding.toString();
        }
        List<String> parts = new ArrayList<>();
        parts.add(Inspection.of(recording, List.of()).toString());
        for (Channel channel : recording.channels()) {
            parts.add(channel.name() + Arrays.toString(channel.timesS()) + Arrays.toString(channel.values()));
        }
        return String.join("\n", parts);
    }
}
