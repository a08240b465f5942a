package org.measuredmile.recording.reader;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Instant;
import java.util.Locale;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.reader.Decoding.Decoded;
import org.measuredmile.recording.reader.Decoding.Refused;

/// A file of 200 MB that is made while it is read, and a program that decodes one of a format.
final class LargeFile extends InputStream {
    private static final long BYTES = 200_000_000;
    private static final Instant START = Instant.parse("2031-05-14T09:00:00Z");

    /// How a format begins, goes on by one sample, and ends.
    private interface Shape {
        byte[] head();

        byte[] sample(long i);

        byte[] tail();
    }

    private final Shape shape;
    private byte[] chunk;
    private int at;
    private long samples;
    private long given;
    private boolean ended;

    LargeFile(String format) {
        shape = switch (format) {
            case "gpx" -> new Gpx();
            case "tcx" -> new Tcx();
            case "nmea" -> new Nmea();
            case "csv" -> new Table();
            case "fit" -> new Fit();
            default -> throw new IllegalArgumentException(format);
        };
        chunk = shape.head();
    }

    /// Decodes a large file and says how that went; run in a small heap of its own.
    public static void main(String[] formats) throws IOException {
        for (String format : formats) {
            LargeFile file = new LargeFile(format);
            System.out.println(format + " " + told(Readers.decode("large." + format, file)) + " of " + file.samples
                    + " made, " + file.given + " bytes");
        }
    }

    private static String told(Decoding decoding) {
        return switch (decoding) {
            case Decoded(Recording recording) ->
                "kept " + recording.timesS().length + " of " + recording.samples() + " in "
                        + recording.channels().size() + " channels over " + Math.round(recording.spanS()) + " s, "
                        + recording.findings().stream()
                                .filter(finding -> finding.level() != Finding.Level.NOTE)
                                .map(Finding::code)
                                .toList();
            case Refused refused -> "refused " + refused.findings().getFirst().line();
        };
    }

    @Override
    public int read() {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        int done = 0;
        while (done < length) {
            if (at == chunk.length && !next()) {
                return done == 0 ? -1 : done;
            }
            int some = Math.min(length - done, chunk.length - at);
            System.arraycopy(chunk, at, into, offset + done, some);
            at += some;
            done += some;
        }
        return done;
    }

    private boolean next() {
        given += chunk.length;
        at = 0;
        if (ended) {
            chunk = new byte[0];
            return false;
        }
        if (given < BYTES) {
            chunk = shape.sample(samples++);
        } else {
            chunk = shape.tail();
            ended = true;
        }
        return chunk.length > 0;
    }

    private static double north(long i) {
        return 50 + i * 5e-5 / 90 % 10;
    }

    private static double east(long i) {
        return 8 + 0.01 * Math.sin(i / 900.0);
    }

    private static double mps(long i) {
        return 6 + 2 * Math.sin(i / 40.0);
    }

    private static byte[] text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values).getBytes(US_ASCII);
    }

    private static final class Gpx implements Shape {
        @Override
        public byte[] head() {
            return text("<?xml version=\"1.0\"?>%n<gpx version=\"1.1\" creator=\"made\" "
                    + "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>%n");
        }

        @Override
        public byte[] sample(long i) {
            return text(
                    "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>%.1f</ele><time>%s</time><extensions><speed>%.3f</speed>"
                            + "<hr>%d</hr><cad>%d</cad><power>%d</power></extensions></trkpt>%n",
                    north(i), east(i), 20 + mps(i), START.plusSeconds(i), mps(i), 120 + i % 40, 60 + i % 30, i % 300);
        }

        @Override
        public byte[] tail() {
            return text("</trkseg></trk></gpx>%n");
        }
    }

    private static final class Tcx implements Shape {
        private double wayM;

        @Override
        public byte[] head() {
            return text("<?xml version=\"1.0\"?>%n<TrainingCenterDatabase><Activities>"
                    + "<Activity Sport=\"Biking\"><Id>2031-05-14T09:00:00Z</Id><Lap StartTime=\"2031-05-14T09:00:00Z\">"
                    + "<Track>%n");
        }

        @Override
        public byte[] sample(long i) {
            wayM += mps(i);
            return text(
                    "<Trackpoint><Time>%s</Time><Position><LatitudeDegrees>%.7f</LatitudeDegrees><LongitudeDegrees>%.7f"
                            + "</LongitudeDegrees></Position><AltitudeMeters>%.1f</AltitudeMeters><DistanceMeters>%.2f"
                            + "</DistanceMeters><HeartRateBpm><Value>%d</Value></HeartRateBpm><Cadence>%d</Cadence>"
                            + "</Trackpoint>%n",
                    START.plusSeconds(i), north(i), east(i), 20 + mps(i), wayM, 120 + i % 40, 60 + i % 30);
        }

        @Override
        public byte[] tail() {
            return text("</Track></Lap></Activity></Activities></TrainingCenterDatabase>%n");
        }
    }

    private static final class Nmea implements Shape {
        @Override
        public byte[] head() {
            return new byte[0];
        }

        @Override
        public byte[] sample(long i) {
            Instant at = START.plusSeconds(i);
            String time = at.toString();
            String hour = time.substring(11, 13) + time.substring(14, 16) + time.substring(17, 19);
            String date = time.substring(8, 10) + time.substring(5, 7) + time.substring(2, 4);
            String where = String.format(
                    Locale.ROOT,
                    "%02d%07.4f,N,%03d%07.4f,E",
                    (int) north(i),
                    minutes(north(i)),
                    (int) east(i),
                    minutes(east(i)));
            String rmc = String.format(Locale.ROOT, "GPRMC,%s.00,A,%s,%.2f,,%s,,,A", hour, where, mps(i) * 1.944, date);
            String gga =
                    String.format(Locale.ROOT, "GPGGA,%s.00,%s,1,09,0.9,%.1f,M,47.0,M,,", hour, where, 20 + mps(i));
            return text("$%s*%02X\r\n$%s*%02X\r\n", rmc, checksum(rmc), gga, checksum(gga));
        }

        /// Rounded down, for sixty minutes are none.
        private static double minutes(double degrees) {
            return Math.floor(degrees % 1 * 600_000) / 10_000;
        }

        private static int checksum(String sentence) {
            return sentence.chars().reduce(0, (one, two) -> one ^ two);
        }

        @Override
        public byte[] tail() {
            return new byte[0];
        }
    }

    private static final class Table implements Shape {
        @Override
        public byte[] head() {
            return text("time,latitude,longitude,altitude (m),speed (km/h),power (W),cadence (rpm)%n");
        }

        @Override
        public byte[] sample(long i) {
            return text(
                    "%s,%.7f,%.7f,%.1f,%.2f,%d,%d%n",
                    START.plusMillis(100 * i), north(i), east(i), 20 + mps(i), 3.6 * mps(i), i % 300, 60 + i % 30);
        }

        @Override
        public byte[] tail() {
            return new byte[0];
        }
    }

    /// One kind of record; the size stands in the file's header before it is written.
    private static final class Fit implements Shape {
        private static final int RECORD = 25;
        private static final int[] CRC = {
            0x0000, 0xCC01, 0xD801, 0x1400, 0xF001, 0x3C00, 0x2800, 0xE401, 0xA001, 0x6C00, 0x7800, 0xB401, 0x5000,
            0x9C01, 0x8801, 0x4400
        };
        private int crc;

        @Override
        public byte[] head() {
            ByteArrayOutputStream data = new ByteArrayOutputStream();
            data.writeBytes(new byte[] {0x40, 0, 0, 0, 0, 1, 0, 1, 0, 0, 4});
            // Time, latitude, longitude, distance: 4 bytes each; altitude, speed, power: 2; heart rate, cadence: 1.
            data.writeBytes(new byte[] {
                0x41,
                0,
                0,
                20,
                0,
                9,
                (byte) 253,
                4,
                (byte) 0x86,
                0,
                4,
                (byte) 0x85,
                1,
                4,
                (byte) 0x85,
                5,
                4,
                (byte) 0x86,
                2,
                2,
                (byte) 0x84,
                6,
                2,
                (byte) 0x84,
                7,
                2,
                (byte) 0x84,
                3,
                1,
                2,
                4,
                1,
                2
            });
            long records = (BYTES - 14 - data.size() + RECORD - 1) / RECORD;
            ByteBuffer head = ByteBuffer.allocate(14 + data.size()).order(ByteOrder.LITTLE_ENDIAN);
            head.put((byte) 14)
                    .put((byte) 0x20)
                    .putShort((short) 2140)
                    .putInt((int) (data.size() + records * RECORD))
                    .put(".FIT".getBytes(US_ASCII))
                    .putShort((short) 0)
                    .put(data.toByteArray());
            return summed(head.array());
        }

        @Override
        public byte[] sample(long i) {
            ByteBuffer record = ByteBuffer.allocate(RECORD).order(ByteOrder.LITTLE_ENDIAN);
            record.put((byte) 1)
                    .putInt((int) (FitWriter.T0 + i))
                    .putInt((int) (north(i) * 0x8000_0000L / 180))
                    .putInt((int) (east(i) * 0x8000_0000L / 180))
                    .putInt((int) (600 * i % 4_000_000_000L))
                    .putShort((short) ((20 + mps(i) + 500) * 5))
                    .putShort((short) (1000 * mps(i)))
                    .putShort((short) (i % 300))
                    .put((byte) (120 + i % 40))
                    .put((byte) (60 + i % 30));
            return summed(record.array());
        }

        @Override
        public byte[] tail() {
            return new byte[] {(byte) crc, (byte) (crc >> 8)};
        }

        private byte[] summed(byte[] bytes) {
            for (byte one : bytes) {
                crc = (crc >> 4 & 0x0FFF) ^ CRC[crc & 0xF] ^ CRC[one & 0xF];
                crc = (crc >> 4 & 0x0FFF) ^ CRC[crc & 0xF] ^ CRC[one >> 4 & 0xF];
            }
            return bytes;
        }
    }
}
