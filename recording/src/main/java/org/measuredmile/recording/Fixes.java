package org.measuredmile.recording;

import java.util.Arrays;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/// The positions of a recording that have a time, each with both coordinates.
///
/// Shape: three arrays of one length, in order of time, shared with the channels where these agree; not to be
/// written to. Unit: seconds from the start; degrees, WGS-84.
record Fixes(double[] timesS, double[] latitudes, double[] longitudes) {
    private static final Fixes NONE = new Fixes(new double[0], new double[0], new double[0]);
    private static final double EQUATOR_M = 6_378_137;
    private static final double ECCENTRICITY_SQUARED = 6.694_379_990_14e-3;

    static Fixes of(Recording recording) {
        Optional<Channel> latitude = recording.channel(ChannelKind.LATITUDE);
        Optional<Channel> longitude = recording.channel(ChannelKind.LONGITUDE);
        return latitude.isPresent() && longitude.isPresent() ? joined(latitude.get(), longitude.get()) : NONE;
    }

    static Fixes joined(Channel latitude, Channel longitude) {
        if (Arrays.equals(latitude.timesS(), longitude.timesS())) {
            return new Fixes(latitude.timesS(), latitude.values(), longitude.values());
        }
        double[] timesS = new double[latitude.size()];
        double[] latitudes = new double[latitude.size()];
        double[] longitudes = new double[latitude.size()];
        int size = 0;
        int j = 0;
        for (int i = 0; i < latitude.size(); i++) {
            while (j < longitude.size() && longitude.timeS(j) < latitude.timeS(i)) {
                j++;
            }
            if (j < longitude.size() && longitude.timeS(j) == latitude.timeS(i)) {
                timesS[size] = latitude.timeS(i);
                latitudes[size] = latitude.value(i);
                longitudes[size++] = longitude.value(j);
            }
        }
        return new Fixes(Arrays.copyOf(timesS, size), Arrays.copyOf(latitudes, size), Arrays.copyOf(longitudes, size));
    }

    int size() {
        return timesS.length;
    }

    boolean same(int i, int j) {
        return latitudes[i] == latitudes[j] && longitudes[i] == longitudes[j];
    }

    /// The geodesic between two fixes, in metres.
    double geodesicM(int i, int j) {
        return same(i, j)
                ? 0
                : Geodesic.WGS84.Inverse(
                                latitudes[i], longitudes[i], latitudes[j], longitudes[j], GeodesicMask.DISTANCE)
                        .s12;
    }

    /// The distance between two fixes on the ellipsoid's tangent plane, in metres: within a part in 10 000 of the
    /// geodesic for steps up to some kilometres, and far cheaper; for checks, not for results.
    double nearlyM(int i, int j) {
        if (same(i, j)) {
            return 0;
        }
        double middle = StrictMath.toRadians((latitudes[i] + latitudes[j]) / 2);
        double sine = StrictMath.sin(middle);
        double w = 1 - ECCENTRICITY_SQUARED * sine * sine;
        double acrossM = EQUATOR_M / Math.sqrt(w);
        double alongM = acrossM * (1 - ECCENTRICITY_SQUARED) / w;
        double east = longitudes[j] - longitudes[i];
        double turned = east > 180 ? east - 360 : east < -180 ? east + 360 : east;
        double northM = StrictMath.toRadians(latitudes[j] - latitudes[i]) * alongM;
        double eastM = StrictMath.toRadians(turned) * acrossM * StrictMath.cos(middle);
        return Math.sqrt(northM * northM + eastM * eastM);
    }

    /// The mean speed of the step that ends at a fix, in m/s.
    double stepMps(int i) {
        return nearlyM(i - 1, i) / (timesS[i] - timesS[i - 1]);
    }

    /// The first fix at or after a time; the size when there is none.
    int atOrAfter(double timeS) {
        int found = Arrays.binarySearch(timesS, timeS);
        return found >= 0 ? found : -found - 1;
    }
}
