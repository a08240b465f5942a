package org.measuredmile.recording.motion;

import java.util.Arrays;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;

/// The timed positions of a recording: epochs that have latitude and longitude, repeats of the same epoch left out.
///
/// Unit: seconds, degrees of WGS-84.
record Fixes(double[] timesS, double[] latitudes, double[] longitudes) {
    static Optional<Fixes> of(Recording recording) {
        var latitude = recording.channel(ChannelKind.LATITUDE);
        var longitude = recording.channel(ChannelKind.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty()) {
            return Optional.empty();
        }
        int most = latitude.get().size();
        double[] times = new double[most];
        double[] north = new double[most];
        double[] east = new double[most];
        int kept = 0;
        for (int i = 0; i < most; i++) {
            double timeS = latitude.get().timeS(i);
            int j = longitude.get().indexAtOrAfter(timeS);
            if (j < longitude.get().size() && longitude.get().timeS(j) == timeS) {
                times[kept] = timeS;
                north[kept] = latitude.get().value(i);
                east[kept++] = longitude.get().value(j);
            }
        }
        return Optional.of(
                new Fixes(Arrays.copyOf(times, kept), Arrays.copyOf(north, kept), Arrays.copyOf(east, kept)));
    }

    /// Rows of a faster sensor repeat the receiver's last fix: where most rows do so, only changes are kept.
    Fixes withoutRepeats() {
        double[] times = new double[size()];
        double[] north = new double[size()];
        double[] east = new double[size()];
        int kept = 0;
        for (int i = 0; i < size(); i++) {
            if (i == 0 || latitudes[i] != latitudes[i - 1] || longitudes[i] != longitudes[i - 1]) {
                times[kept] = timesS[i];
                north[kept] = latitudes[i];
                east[kept++] = longitudes[i];
            }
        }
        return kept > size() / 2
                ? this
                : new Fixes(Arrays.copyOf(times, kept), Arrays.copyOf(north, kept), Arrays.copyOf(east, kept));
    }

    int size() {
        return timesS.length;
    }

    /// The geodesic between two fixes, metres.
    double metres(int from, int to) {
        if (latitudes[from] == latitudes[to] && longitudes[from] == longitudes[to]) {
            return 0;
        }
        return Geodesic.WGS84.Inverse(
                        latitudes[from], longitudes[from], latitudes[to], longitudes[to], GeodesicMask.DISTANCE)
                .s12;
    }

    /// Speed of the least-squares line through the fixes from `from` to before `to`.
    double driftMps(int from, int to) {
        var plane = new LocalPlane(latitudes[from], longitudes[from], 0);
        int count = to - from;
        double[] east = new double[count];
        double[] north = new double[count];
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            var spot = plane.of(latitudes[from + i], longitudes[from + i]);
            north[i] = spot.alongM();
            east[i] = spot.asideM();
            times[i] = timesS[from + i];
        }
        return StrictMath.hypot(Slope.of(times, east, 0, count), Slope.of(times, north, 0, count));
    }
}
