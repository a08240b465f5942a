package org.measuredmile.benchmark;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.measuredmile.demo.ride.ReceiverLog;
import org.measuredmile.demo.ride.ReceiverModel.Epoch;

/// One ride as the file of each format, by the format's ending.
final class RideFiles {
    static final List<String> ENDINGS = List.of("gpx", "tcx", "fit", "nmea", "csv", "vtt");

    /// Seconds from 1970 to the zero of the FIT protocol's clock, 1989-12-31T00:00:00Z.
    private static final long FIT_ZERO_S = 631_065_600;
    private static final int[] CHECKSUM = {
        0x0000, 0xCC01, 0xD801, 0x1400, 0xF001, 0x3C00, 0x2800, 0xE401,
        0xA001, 0x6C00, 0x7800, 0xB401, 0x5000, 0x9C01, 0x8801, 0x4400
    };

    private RideFiles() {}

    static byte[] of(String ending, List<Epoch> epochs) {
        var log = new ReceiverLog(Rides.START, epochs);
        return switch (ending) {
            case "gpx" -> log.gpx();
            case "nmea" -> log.nmea();
            case "csv" -> log.delimited();
            case "tcx" -> tcx(epochs);
            case "fit" -> fit(epochs);
            case "vtt" -> captions(epochs);
            default -> throw new IllegalArgumentException(ending);
        };
    }

    private static byte[] tcx(List<Epoch> epochs) {
        var text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<TrainingCenterDatabase><Activities>"
                + "<Activity Sport=\"Biking\"><Id>" + Rides.START + "</Id><Lap StartTime=\"" + Rides.START
                + "\"><Track>\n");
        double metres = 0;
        double before = 0;
        for (Epoch epoch : epochs) {
            metres += epoch.speedMps() * (epoch.timeS() - before);
            before = epoch.timeS();
            text.append("<Trackpoint><Time>").append(instant(epoch)).append("</Time><Position><LatitudeDegrees>");
            text.append(fixed(epoch.spot().latitudeDegrees(), 7)).append("</LatitudeDegrees><LongitudeDegrees>");
            text.append(fixed(epoch.spot().longitudeDegrees(), 7)).append("</LongitudeDegrees></Position>");
            text.append("<AltitudeMeters>").append(fixed(epoch.altitudeM(), 1)).append("</AltitudeMeters>");
            text.append("<DistanceMeters>").append(fixed(metres, 2)).append("</DistanceMeters><HeartRateBpm><Value>");
            text.append(100 + (int) epoch.timeS() % 40).append("</Value></HeartRateBpm></Trackpoint>\n");
        }
        text.append("</Track></Lap></Activity></Activities></TrainingCenterDatabase>\n");
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /// An activity with a record an epoch: time, position, altitude, distance, speed, heart rate.
    private static byte[] fit(List<Epoch> epochs) {
        var body = new ByteArrayOutputStream();
        define(body, 1, 0, 0, 1, 0x00);
        body.write(1);
        body.write(4);
        define(body, 0, 20, 253, 4, 0x86, 0, 4, 0x85, 1, 4, 0x85, 2, 2, 0x84, 5, 4, 0x86, 6, 2, 0x84, 3, 1, 0x02);
        double metres = 0;
        double before = 0;
        ByteBuffer record = ByteBuffer.allocate(22).order(ByteOrder.LITTLE_ENDIAN);
        for (Epoch epoch : epochs) {
            metres += epoch.speedMps() * (epoch.timeS() - before);
            before = epoch.timeS();
            record.clear().put((byte) 0);
            record.putInt((int) (Rides.START.getEpochSecond() + (long) epoch.timeS() - FIT_ZERO_S));
            record.putInt(semicircles(epoch.spot().latitudeDegrees()));
            record.putInt(semicircles(epoch.spot().longitudeDegrees()));
            record.putShort((short) Math.round((epoch.altitudeM() + 500) * 5));
            record.putInt((int) Math.round(metres * 100));
            record.putShort((short) Math.round(epoch.speedMps() * 1000));
            record.put((byte) (100 + (int) epoch.timeS() % 40));
            body.write(record.array(), 0, record.position());
        }
        byte[] data = body.toByteArray();
        ByteBuffer file = ByteBuffer.allocate(12 + data.length + 2).order(ByteOrder.LITTLE_ENDIAN);
        file.put((byte) 12).put((byte) 0x20).putShort((short) 2100).putInt(data.length);
        file.put(".FIT".getBytes(StandardCharsets.US_ASCII)).put(data);
        return file.putShort((short) checksum(file.array(), file.position())).array();
    }

    private static void define(ByteArrayOutputStream to, int local, int message, int... fields) {
        to.writeBytes(new byte[] {(byte) (0x40 | local), 0, 0, (byte) message, 0, (byte) (fields.length / 3)});
        for (int each : fields) {
            to.write(each);
        }
    }

    private static int semicircles(double degrees) {
        return (int) Math.round(degrees / 180 * (1L << 31));
    }

    /// Source: the published FIT protocol, CRC over nibbles.
    private static int checksum(byte[] bytes, int length) {
        int sum = 0;
        for (int i = 0; i < length; i++) {
            for (int nibble : new int[] {bytes[i] & 0xF, (bytes[i] >> 4) & 0xF}) {
                sum = ((sum >> 4) & 0x0FFF) ^ CHECKSUM[sum & 0xF] ^ CHECKSUM[nibble];
            }
        }
        return sum;
    }

    /// Somebody says the speed every ten seconds.
    private static byte[] captions(List<Epoch> epochs) {
        var text = new StringBuilder("WEBVTT\n");
        double next = 5;
        for (Epoch epoch : epochs) {
            if (epoch.timeS() >= next) {
                text.append('\n').append(cueTime(next)).append(" --> ").append(cueTime(next + 3));
                text.append("\nnow we do ")
                        .append(fixed(epoch.speedMps() * 3.6, 1))
                        .append(" km/h on the flat\n");
                next += 10;
            }
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String cueTime(double seconds) {
        long whole = (long) seconds;
        return String.format(Locale.ROOT, "%02d:%02d:%02d.000", whole / 3600, whole / 60 % 60, whole % 60);
    }

    private static Instant instant(Epoch epoch) {
        return Rides.START.plusMillis(Math.round(epoch.timeS() * 1000));
    }

    private static String fixed(double value, int digits) {
        return BigDecimal.valueOf(value)
                .setScale(digits, RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
