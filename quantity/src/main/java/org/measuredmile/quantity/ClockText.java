package org.measuredmile.quantity;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/// Reads times by the clock: `1:08.3` is minutes and seconds, `4:38:10` hours, minutes and seconds, `4:38 h`
/// hours and minutes.
final class ClockText {
    private static final Pattern CLOCK =
            Pattern.compile("(\\d{1,6}):(\\d{1,2})(?::(\\d{1,2}))?(?:[.,](\\d{1,9}))? *(\\p{L}*)");
    private static final Pattern HOURS = Pattern.compile("h|hr|hrs|hours?");
    private static final Pattern MINUTES = Pattern.compile("m|min|mins|minutes?|s|sec|seconds?|");

    private ClockText() {}

    static Parsed read(String text, boolean negative) {
        Matcher clock = CLOCK.matcher(text);
        if (!clock.matches()) {
            return fault(text, "is no time by the clock", "write 1:08.3 or 4:38:10");
        }
        boolean threeParts = clock.group(3) != null;
        boolean hours = HOURS.matcher(clock.group(5)).matches();
        if (!hours && !MINUTES.matcher(clock.group(5)).matches()) {
            return fault(text, "ends in no unit of time", "write 1:08.3 or 4:38:10 without a unit");
        }
        if (hours && !threeParts && clock.group(4) != null) {
            return fault(text, "has a fraction of a minute", "write hours, minutes and seconds: 4:38:10");
        }
        int second = Integer.parseInt(clock.group(2));
        int third = threeParts ? Integer.parseInt(clock.group(3)) : 0;
        if (second > 59 || third > 59) {
            return fault(text, "has minutes or seconds beyond 59", "check the parts");
        }
        long first = Long.parseLong(clock.group(1));
        boolean beginsWithHours = threeParts || hours;
        long whole = beginsWithHours ? first * 3600 + second * 60L + third : first * 60 + second;
        return value(whole, clock.group(4), new Reading(beginsWithHours, threeParts || !hours, negative));
    }

    /// What kind of clock time it is.
    private record Reading(boolean hours, boolean seconds, boolean negative) {}

    private static Parsed value(long wholeSeconds, @Nullable String fraction, Reading reading) {
        var seconds = new BigDecimal(fraction == null ? "" + wholeSeconds : wholeSeconds + "." + fraction);
        double step = reading.seconds() ? seconds.ulp().doubleValue() : 60;
        double si = seconds.doubleValue();
        Unit unit = reading.hours() ? Unit.HOUR : Unit.MINUTE;
        return new Parsed.Value(reading.negative() && si != 0 ? -si : si, unit, step);
    }

    private static Parsed fault(String text, String wrong, String remedy) {
        return new Parsed.Fault("\"" + text + "\" " + wrong, remedy);
    }
}
