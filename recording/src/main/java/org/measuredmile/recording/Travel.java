package org.measuredmile.recording;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/// How far and how long a recording went, by each way of telling that it offers.
///
/// Unit: metres and seconds. `bySpeedM` integrates speed by trapezoids, `byWheelM` wheel speed, `byInstrumentM` sums
/// the
/// rises of the instrument's own distance, `byTrackM` sums geodesics between timed positions; none of them bridges a
/// gap
/// except the instrument's distance, which counts on.
record Travel(
        double gapLimitS,
        OptionalDouble ridingS,
        OptionalDouble bySpeedM,
        OptionalDouble byInstrumentM,
        OptionalDouble byTrackM) {
    private static final double MOVING_MPS = 0.5;
    private static final double SHORTEST_GAP_S = 0.1;

    /// Up to here a step is bridged by a trapezoid even where it counts as a gap.
    private static final double BRIDGED_S = 3;

    static Travel of(Recording recording) {
        double gapLimitS = gapLimitS(recording.timesS());
        double bridgedS = Math.max(gapLimitS, BRIDGED_S);
        Optional<Channel> speed = speed(recording);
        Optional<Channel> latitude = recording.channel(ChannelKind.LATITUDE);
        Optional<Channel> longitude = recording.channel(ChannelKind.LONGITUDE);
        Steps steps = new Steps(recording.segments(), bridgedS);
        Sums bySpeed = speed.map(channel -> bySpeed(channel, steps)).orElse(Sums.NONE);
        Sums byTrack = latitude.isPresent() && longitude.isPresent()
                ? byTrack(latitude.get(), longitude.get(), steps)
                : Sums.NONE;
        return new Travel(
                gapLimitS,
                speed.isPresent() ? bySpeed.ridingS : byTrack.ridingS,
                bySpeed.wayM,
                recording.channel(ChannelKind.DISTANCE).map(Travel::rises).orElse(OptionalDouble.empty()),
                byTrack.wayM);
    }

    private record Sums(OptionalDouble wayM, OptionalDouble ridingS) {
        private static final Sums NONE = new Sums(OptionalDouble.empty(), OptionalDouble.empty());
    }

    /// Which steps between samples count: short ones that do not leave a segment.
    private record Steps(java.util.List<Segment> segments, double longestS) {
        boolean count(double fromS, double toS) {
            return toS - fromS <= longestS && segmentOf(fromS) == segmentOf(toS);
        }

        private int segmentOf(double timeS) {
            int low = 0;
            int high = segments.size();
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (segments.get(middle).fromS() <= timeS) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }

    private static Optional<Channel> speed(Recording recording) {
        return recording.channel(ChannelKind.WHEEL_SPEED).or(() -> recording.channel(ChannelKind.SPEED));
    }

    /// The best distance that the recording offers: the instrument's own, else by speed, else by track.
    OptionalDouble bestM() {
        return byInstrumentM.isPresent() ? byInstrumentM : bySpeedM.isPresent() ? bySpeedM : byTrackM;
    }

    /// What `bestM` is by, in words.
    String bestSource() {
        if (byInstrumentM.isPresent()) {
            return "the instrument's own distance";
        }
        if (bySpeedM.isPresent()) {
            return "speed integrated over time";
        }
        return byTrackM.isPresent() ? "positions, unfiltered" : "";
    }

    /// The longest step that still belongs to the recording's rhythm.
    private static double gapLimitS(double[] timesS) {
        if (timesS.length < 2) {
            return SHORTEST_GAP_S;
        }
        double[] steps = new double[timesS.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timesS[i + 1] - timesS[i];
        }
        Arrays.sort(steps);
        double middle = steps[steps.length / 2];
        double upper = steps[(int) ((steps.length - 1) * 0.9)];
        double uneven = upper > 1.4 * middle ? 3 * upper : 0;
        return Math.max(Math.max(1.5 * middle, uneven), SHORTEST_GAP_S);
    }

    private static Sums bySpeed(Channel speed, Steps steps) {
        double wayM = 0;
        double ridingS = 0;
        for (int i = 1; i < speed.size(); i++) {
            double stepS = speed.timeS(i) - speed.timeS(i - 1);
            double meanMps = (speed.value(i) + speed.value(i - 1)) / 2;
            if (steps.count(speed.timeS(i - 1), speed.timeS(i))) {
                wayM += meanMps * stepS;
                ridingS += meanMps > MOVING_MPS ? stepS : 0;
            }
        }
        return new Sums(OptionalDouble.of(wayM), OptionalDouble.of(ridingS));
    }

    private static Sums byTrack(Channel latitude, Channel longitude, Steps steps) {
        double wayM = 0;
        double ridingS = 0;
        int before = -1;
        int beforeLongitude = -1;
        for (int i = 0; i < latitude.size(); i++) {
            int j = longitude.indexAtOrAfter(latitude.timeS(i));
            if (j >= longitude.size() || longitude.timeS(j) != latitude.timeS(i)) {
                continue;
            }
            if (before >= 0 && steps.count(latitude.timeS(before), latitude.timeS(i))) {
                double stepS = latitude.timeS(i) - latitude.timeS(before);
                double stepM = stepM(latitude, longitude, before, beforeLongitude, i, j);
                wayM += stepM;
                ridingS += stepM > MOVING_MPS * stepS ? stepS : 0;
            }
            before = i;
            beforeLongitude = j;
        }
        return new Sums(OptionalDouble.of(wayM), OptionalDouble.of(ridingS));
    }

    private static double stepM(Channel latitude, Channel longitude, int i0, int j0, int i1, int j1) {
        double lat0 = latitude.value(i0);
        double lon0 = longitude.value(j0);
        double lat1 = latitude.value(i1);
        double lon1 = longitude.value(j1);
        boolean same = lat0 == lat1 && lon0 == lon1;
        return same ? 0 : Geodesic.WGS84.Inverse(lat0, lon0, lat1, lon1, GeodesicMask.DISTANCE).s12;
    }

    private static OptionalDouble rises(Channel distance) {
        double sumM = 0;
        for (int i = 1; i < distance.size(); i++) {
            sumM += Math.max(0, distance.value(i) - distance.value(i - 1));
        }
        return OptionalDouble.of(sumM);
    }
}
