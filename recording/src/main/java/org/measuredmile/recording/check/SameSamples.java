package org.measuredmile.recording.check;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.ClockCause;

/// Whether two files hold one recording: the same positions, or the same values, at the same instants.
///
/// Two receivers on one bike are metres apart and never agree to the last digits; a conversion from
/// format to format agrees to its rounding. So a match asks for positions within 0.3 m (1.1 m where
/// one file has five decimals) at instants within 0.02 s, or for values within half a per cent; a
/// clock that is whole hours or leap seconds away is tried too. Common practice, no source.
///
/// Unit: `byS` seconds to add to the second file's clock; `share` of the instants looked at that agree; `commonS` for
/// which both run; `wholeOfFirst` and `wholeOfSecond` whether that is all of a file but for its ends.
record SameSamples(double byS, double share, double commonS, boolean wholeOfFirst, boolean wholeOfSecond) {
    private static final double WHOLE = 0.98;
    private static final double ENDS_S = 10;
    private static final int PROBES = 240;
    private static final int FEWEST = 8;
    private static final double AGREE = 0.95;
    private static final double INSTANT_S = 0.02;
    private static final double NEAR_M = 0.3;
    private static final double MOVED_M = 10;
    private static final double DEGREE_M = 111_195;
    private static final double STEP_DEGREES = 1e-5;
    private static final double RELATIVE = 0.005;
    private static final int FEWEST_DISTINCT = 6;
    private static final Set<ChannelKind> TELLING = EnumSet.of(
            ChannelKind.SPEED,
            ChannelKind.WHEEL_SPEED,
            ChannelKind.DISTANCE,
            ChannelKind.POWER,
            ChannelKind.CADENCE,
            ChannelKind.HEART_RATE,
            ChannelKind.ACCELERATION_X,
            ChannelKind.VOLTAGE,
            ChannelKind.CURRENT);

    /// How many instants both files have, and at how many of them they agree.
    private record Tally(int partners, int same, boolean telling) {
        private static final Tally NONE = new Tally(0, 0, false);

        boolean agrees() {
            return telling && partners >= FEWEST && same >= AGREE * partners;
        }
    }

    static Optional<SameSamples> of(DayRecording one, DayRecording two) {
        if (one.recording().timesS().length < FEWEST || two.recording().timesS().length < FEWEST) {
            return Optional.empty();
        }
        if (!one.isDated() || !two.isDated()) {
            boolean asLong = Math.abs(one.recording().spanS() - two.recording().spanS()) <= 2;
            return asLong
                    ? at(
                            one,
                            two,
                            0,
                            Math.min(one.recording().spanS(), two.recording().spanS()),
                            0)
                    : Optional.empty();
        }
        double apartS = two.fromS() - one.fromS();
        Optional<SameSamples> found = at(one, two, apartS, one.commonS(two, 0), 0);
        for (double byS : ClockCause.known()) {
            double commonS = found.isPresent() ? 0 : one.commonS(two, byS);
            if (commonS
                    > 0.5 * Math.min(one.recording().spanS(), two.recording().spanS())) {
                found = at(one, two, apartS + byS, commonS, byS);
            }
        }
        return found;
    }

    /// @param apartS what to add to the second file's times to have them on the first one's base
    private static Optional<SameSamples> at(
            DayRecording one, DayRecording two, double apartS, double commonS, double byS) {
        if (commonS <= 0) {
            return Optional.empty();
        }
        Tally tally = one.hasPositions() && two.hasPositions() ? positions(one, two, apartS) : values(one, two, apartS);
        return tally.agrees()
                ? Optional.of(new SameSamples(
                        byS,
                        tally.same / (double) tally.partners,
                        commonS,
                        isWhole(one, commonS),
                        isWhole(two, commonS)))
                : Optional.empty();
    }

    /// Whether one of the files has nothing that the other lacks.
    boolean isWhole() {
        return wholeOfFirst || wholeOfSecond;
    }

    private static boolean isWhole(DayRecording file, double commonS) {
        double spanS = file.recording().spanS();
        return commonS >= WHOLE * spanS || (spanS - commonS <= ENDS_S && commonS >= spanS / 2);
    }

    private static Tally positions(DayRecording one, DayRecording two, double apartS) {
        Channel north = one.latitude().orElseThrow();
        Channel east = one.longitude().orElseThrow();
        Channel otherNorth = two.latitude().orElseThrow();
        Channel otherEast = two.longitude().orElseThrow();
        int from = otherNorth.indexAtOrAfter(north.timeS(0) - apartS - INSTANT_S);
        int to = otherNorth.indexAtOrAfter(north.timeS(north.size() - 1) - apartS + INSTANT_S);
        int stride = Math.max(1, (to - from) / PROBES);
        double nearM = nearM(north, east, otherNorth, otherEast);
        int partners = 0;
        int looked = 0;
        int same = 0;
        double northMost = Double.NEGATIVE_INFINITY;
        double southMost = Double.POSITIVE_INFINITY;
        double eastMost = Double.NEGATIVE_INFINITY;
        double westMost = Double.POSITIVE_INFINITY;
        for (int i = from; i < to; i += stride) {
            looked++;
            double timeS = otherNorth.timeS(i);
            double atNorth = valueAt(north, timeS + apartS);
            double atEast = valueAt(east, timeS + apartS);
            double thereEast = valueAt(otherEast, timeS);
            if (!Double.isNaN(atNorth) && !Double.isNaN(atEast) && !Double.isNaN(thereEast)) {
                partners++;
                double cosine = StrictMath.cos(StrictMath.toRadians(atNorth));
                double northM = (otherNorth.value(i) - atNorth) * DEGREE_M;
                double eastM = (thereEast - atEast) * DEGREE_M * cosine;
                same += northM * northM + eastM * eastM <= nearM * nearM ? 1 : 0;
                northMost = Math.max(northMost, atNorth * DEGREE_M);
                southMost = Math.min(southMost, atNorth * DEGREE_M);
                eastMost = Math.max(eastMost, atEast * DEGREE_M * cosine);
                westMost = Math.min(westMost, atEast * DEGREE_M * cosine);
            }
        }
        boolean moved = northMost - southMost > MOVED_M || eastMost - westMost > MOVED_M;
        return new Tally(2 * partners >= looked ? partners : 0, same, moved);
    }

    /// How near two positions of one ride are: one of two files written to five decimals is half a step off in each
    /// direction.
    private static double nearM(Channel... degrees) {
        boolean rounded = isRounded(degrees[0]) && isRounded(degrees[1]);
        boolean otherRounded = isRounded(degrees[2]) && isRounded(degrees[3]);
        return rounded || otherRounded ? NEAR_M + STEP_DEGREES / 2 * DEGREE_M * Math.sqrt(2) : NEAR_M;
    }

    private static boolean isRounded(Channel degrees) {
        int stride = Math.max(1, degrees.size() / PROBES);
        for (int i = 0; i < degrees.size(); i += stride) {
            double steps = degrees.value(i) / STEP_DEGREES;
            if (Math.abs(steps - Math.rint(steps)) > 1e-4) {
                return false;
            }
        }
        return true;
    }

    /// The values of every telling kind that both have; the worst of them decides.
    private static Tally values(DayRecording one, DayRecording two, double apartS) {
        Tally worst = Tally.NONE;
        for (ChannelKind kind : TELLING) {
            Optional<Channel> first = one.recording().channel(kind);
            Optional<Channel> second = two.recording().channel(kind);
            if (first.isPresent() && second.isPresent()) {
                Tally tally = values(first.get(), second.get(), apartS);
                boolean worse =
                        !worst.telling || (tally.telling && tally.same * worst.partners < worst.same * tally.partners);
                worst = worse ? tally : worst;
            }
        }
        return worst;
    }

    private static Tally values(Channel one, Channel two, double apartS) {
        int from = two.indexAtOrAfter(one.timeS(0) - apartS - INSTANT_S);
        int to = two.indexAtOrAfter(one.timeS(one.size() - 1) - apartS + INSTANT_S);
        int stride = Math.max(1, (to - from) / PROBES);
        Set<Double> distinct = new java.util.HashSet<>();
        int partners = 0;
        int looked = 0;
        int same = 0;
        for (int i = from; i < to; i += stride) {
            looked++;
            double value = valueAt(one, two.timeS(i) + apartS);
            if (!Double.isNaN(value)) {
                partners++;
                distinct.add(value);
                double slack = Math.max(0.02, RELATIVE * Math.abs(value));
                same += Math.abs(value - two.value(i)) <= slack ? 1 : 0;
            }
        }
        boolean telling = distinct.size() >= FEWEST_DISTINCT;
        return new Tally(2 * partners >= looked ? partners : 0, same, telling);
    }

    /// The value at an instant, to within a fiftieth of a second; NaN where there is none.
    private static double valueAt(Channel channel, double timeS) {
        int after = channel.indexAtOrAfter(timeS - INSTANT_S);
        return after < channel.size() && channel.timeS(after) <= timeS + INSTANT_S ? channel.value(after) : Double.NaN;
    }
}
