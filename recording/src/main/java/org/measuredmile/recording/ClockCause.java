package org.measuredmile.recording;

import java.util.Locale;
import java.util.Optional;

/// Names the mistake that sets a clock off by a known amount.
///
/// Unit: seconds. Source: leap seconds, GPS time less UTC, 13 s from 1999 to 18 s since 2017
/// (IERS Bulletin C 52); the week number of the satellites counts 1024 weeks, which are 7168 days
/// (IS-GPS-200, 20.3.3.3.1.1); zones reach from -12 h to +14 h in quarters of an hour (IANA).
public final class ClockCause {
    private static final double DAY_S = 86_400;
    private static final double ROLLOVER_S = 7168 * DAY_S;
    private static final double HOUR_S = 3600;
    private static final double QUARTER_S = 900;
    private static final double FARTHEST_ZONE_S = 14 * HOUR_S;
    private static final double SLACK_S = 3;
    private static final int FEWEST_LEAP_S = 13;
    private static final int MOST_LEAP_S = 18;
    private static final double LEAP_SLACK_S = 0.6;

    private ClockCause() {}

    /// Words for an offset that has a name: "a whole hour, as when …"; empty for any other.
    public static Optional<String> of(double offsetS) {
        double sizeS = Math.abs(offsetS);
        if (sizeS > FEWEST_LEAP_S - LEAP_SLACK_S && sizeS < MOST_LEAP_S + LEAP_SLACK_S) {
            return Optional.of(String.format(
                    Locale.ROOT, "%d s, as when one is GPS time and the other UTC (leap seconds)", Math.round(sizeS)));
        }
        long rollovers = Math.round(sizeS / ROLLOVER_S);
        if (rollovers >= 1 && rollovers <= 2 && Math.abs(sizeS - rollovers * ROLLOVER_S) <= DAY_S) {
            return Optional.of(rollovers * 7168 + " days, as when a receiver miscounts 1024 weeks");
        }
        long days = Math.round(sizeS / DAY_S);
        if (days >= 1 && days <= 2 && Math.abs(sizeS - days * DAY_S) <= SLACK_S) {
            return Optional.of("whole days, as when the date changes before or after midnight");
        }
        return zone(sizeS);
    }

    /// The offsets that are worth trying between two clocks: whole hours and leap seconds, both ways.
    public static double[] known() {
        int zones = (int) (FARTHEST_ZONE_S / HOUR_S);
        double[] offsetsS = new double[2 * (zones + MOST_LEAP_S - FEWEST_LEAP_S + 1)];
        int size = 0;
        for (int hours = 1; hours <= zones; hours++) {
            offsetsS[size++] = hours * HOUR_S;
            offsetsS[size++] = -hours * HOUR_S;
        }
        for (int leap = FEWEST_LEAP_S; leap <= MOST_LEAP_S; leap++) {
            offsetsS[size++] = leap;
            offsetsS[size++] = -leap;
        }
        return offsetsS;
    }

    private static Optional<String> zone(double sizeS) {
        long hours = Math.round(sizeS / HOUR_S);
        boolean withinZones = sizeS <= FARTHEST_ZONE_S + SLACK_S;
        if (withinZones && hours >= 1 && Math.abs(sizeS - hours * HOUR_S) <= SLACK_S) {
            return Optional.of("whole hours, as when one is local time and the other UTC");
        }
        long quarters = Math.round(sizeS / QUARTER_S);
        boolean zoneQuarter = withinZones && quarters >= 13;
        return zoneQuarter && Math.abs(sizeS - quarters * QUARTER_S) <= SLACK_S
                ? Optional.of("whole quarters of an hour, as when one is local time and the other UTC")
                : Optional.empty();
    }
}
