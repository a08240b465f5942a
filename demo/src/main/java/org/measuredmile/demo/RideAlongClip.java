package org.measuredmile.demo;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.measuredmile.demo.ride.TrueRide;
import org.measuredmile.quantity.Unit;

/// The words of an invented clip that was filmed on a ride: the rider reads the display aloud, and says other numbers
/// too.
///
/// Shape: WebVTT, a cue a remark. A remark follows what it names by a second or so; one number is a road sign's, one a
/// weight, so that not all of them agree with the recording.
record RideAlongClip(TrueRide ride) {
    /// How far into the recording the camera was switched on.
    static final double BEGINS_S = 11.4;

    private static final double FIRST_S = 4;
    private static final double BETWEEN_S = 9.5;
    private static final double REMARK_S = 2.4;

    /// How long after the display a remark comes, over and over.
    private static final double[] LAGS_S = {1.1, 1.5, 0.9, 1.3, 1.7, 1.0, 1.4};

    private static final List<String> UNITS = List.of(
            "nought",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
            "twenty",
            "twenty one",
            "twenty two",
            "twenty three",
            "twenty four",
            "twenty five");

    byte[] captions() {
        var text = new StringBuilder("WEBVTT - words of an invented ride\n\n");
        cue(text, 0.4, "Right, camera is on, we are rolling.");
        int remark = 0;
        for (double saidS = FIRST_S; saidS + BEGINS_S < ride.spanS() - 4; saidS += BETWEEN_S) {
            double shownMps = ride.speedAtMps(saidS + BEGINS_S - LAGS_S[remark % LAGS_S.length]);
            cue(text, saidS, remark(remark++, Unit.MILE_PER_HOUR.fromSi(shownMps)));
        }
        cue(text, ride.spanS() - BEGINS_S, "And that is the end of the causeway.");
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String remark(int number, double mph) {
        String digits = String.format(Locale.ROOT, "%.1f", mph);
        if (number == 5) {
            return "The sign over there says 30 miles an hour.";
        }
        if (number == 8) {
            return "On the scale this morning it was fifty two pounds and four ounces.";
        }
        return switch (number % 3) {
            case 0 -> words(digits) + " miles an hour on the display.";
            case 1 -> "Steady, " + digits + " miles an hour.";
            default -> "and now " + digits + " mph";
        };
    }

    private static String words(String digits) {
        int whole = Integer.parseInt(digits.substring(0, digits.indexOf('.')));
        int tenth = digits.charAt(digits.length() - 1) - '0';
        return "That is " + UNITS.get(whole) + " point " + UNITS.get(tenth);
    }

    private static void cue(StringBuilder text, double fromS, String words) {
        text.append(time(fromS)).append(" --> ").append(time(fromS + REMARK_S)).append('\n');
        text.append(words).append("\n\n");
    }

    private static String time(double seconds) {
        long millis = Math.round(seconds * 1000);
        return String.format(Locale.ROOT, "%02d:%02d.%03d", millis / 60_000, millis / 1000 % 60, millis % 1000);
    }
}
