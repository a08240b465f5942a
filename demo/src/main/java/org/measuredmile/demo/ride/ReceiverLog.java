package org.measuredmile.demo.ride;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/// Writes what a receiver said as the file that a logger would leave: delimited text, GPX or NMEA 0183.
///
/// Shape: an epoch without a fix is a line with empty cells, a missing point, or a sentence marked void; never a zero.
/// Unit: `start` is the instant of time 0.
public record ReceiverLog(Instant start, List<ReceiverModel.Epoch> epochs) {
    private static final double KMH_PER_MPS = 3.6;
    private static final double METRES_PER_NAUTICAL_MILE = 1852;
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter NMEA_TIME =
            DateTimeFormatter.ofPattern("HHmmss.SS", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter NMEA_DATE =
            DateTimeFormatter.ofPattern("ddMMyy", Locale.ROOT).withZone(ZoneOffset.UTC);

    public ReceiverLog {
        epochs = List.copyOf(epochs);
    }

    /// `time,latitude,longitude,speed_kmh,altitude_m`, the speed in steps of 0.01 km/h.
    public byte[] delimited() {
        return delimited(2);
    }

    /// The same with another number of digits of the speed in km/h.
    public byte[] delimited(int speedDigits) {
        var text = new StringBuilder("time,latitude,longitude,speed_kmh,altitude_m\n");
        for (var epoch : epochs) {
            text.append(STAMP.format(at(epoch)));
            if (epoch.hasFix()) {
                text.append(',').append(fixed(epoch.spot().latitudeDegrees(), 7));
                text.append(',').append(fixed(epoch.spot().longitudeDegrees(), 7));
                text.append(',').append(fixed(epoch.speedMps() * KMH_PER_MPS, speedDigits));
                text.append(',').append(fixed(epoch.altitudeM(), 1)).append('\n');
            } else {
                text.append(",,,,\n");
            }
        }
        return bytes(text);
    }

    /// GPX 1.0, whose points carry the receiver's speed in m/s.
    public byte[] gpx() {
        var text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
                .append("<gpx version=\"1.0\" creator=\"invented logger\"")
                .append(" xmlns=\"http://www.topografix.com/GPX/1/0\">\n<trk><trkseg>\n");
        for (var epoch : epochs) {
            if (epoch.hasFix()) {
                text.append("<trkpt lat=\"").append(fixed(epoch.spot().latitudeDegrees(), 7));
                text.append("\" lon=\"").append(fixed(epoch.spot().longitudeDegrees(), 7));
                text.append("\"><ele>").append(fixed(epoch.altitudeM(), 1));
                text.append("</ele><time>").append(STAMP.format(at(epoch)));
                text.append("</time><course>").append(fixed(epoch.courseDegrees(), 1));
                text.append("</course><speed>").append(fixed(epoch.speedMps(), 3));
                text.append("</speed></trkpt>\n");
            }
        }
        return bytes(text.append("</trkseg></trk>\n</gpx>\n"));
    }

    /// NMEA 0183: a recommended-minimum sentence and a fix sentence an epoch.
    public byte[] nmea() {
        var text = new StringBuilder();
        for (var epoch : epochs) {
            String time = NMEA_TIME.format(at(epoch));
            String date = NMEA_DATE.format(at(epoch));
            if (epoch.hasFix()) {
                String spot = angle(epoch.spot().latitudeDegrees(), 2, "N", "S") + ","
                        + angle(epoch.spot().longitudeDegrees(), 3, "E", "W");
                String knots = fixed(epoch.speedMps() * 3600 / METRES_PER_NAUTICAL_MILE, 3);
                String course = fixed(epoch.courseDegrees(), 1);
                sentence(text, "GPRMC," + time + ",A," + spot + "," + knots + "," + course + "," + date + ",,,A");
                sentence(
                        text,
                        "GPGGA," + time + "," + spot + ",1,14,0.8," + fixed(epoch.altitudeM(), 1) + ",M,47.0,M,,");
            } else {
                sentence(text, "GPRMC," + time + ",V,,,,,,," + date + ",,,N");
                sentence(text, "GPGGA," + time + ",,,,,0,00,99.9,,M,,M,,");
            }
        }
        return bytes(text);
    }

    private Instant at(ReceiverModel.Epoch epoch) {
        return start.plusMillis(Math.round(epoch.timeS() * 1000));
    }

    private static void sentence(StringBuilder text, String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        text.append('$')
                .append(body)
                .append('*')
                .append(String.format(Locale.ROOT, "%02X", sum))
                .append("\r\n");
    }

    /// Degrees and decimal minutes run together, as NMEA 0183 has them.
    private static String angle(double degrees, int digits, String positive, String negative) {
        BigDecimal minutes = BigDecimal.valueOf(Math.abs(degrees) * 60).setScale(5, RoundingMode.HALF_EVEN);
        BigDecimal[] parts = minutes.divideAndRemainder(BigDecimal.valueOf(60));
        String whole = String.format(Locale.ROOT, "%0" + digits + "d", parts[0].intValueExact());
        String rest = parts[1].toPlainString();
        return whole + (parts[1].compareTo(BigDecimal.TEN) < 0 ? "0" : "") + rest + ","
                + (degrees < 0 ? negative : positive);
    }

    private static String fixed(double value, int digits) {
        return BigDecimal.valueOf(value)
                .setScale(digits, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    private static byte[] bytes(StringBuilder text) {
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
