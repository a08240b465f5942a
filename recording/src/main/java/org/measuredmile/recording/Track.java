package org.measuredmile.recording;

import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/// Every position that a file held, in the file's own order, with or without a time.
///
/// Channels hold timed samples only; a length of track must not depend on which points had a time, so the positions
/// stand here once more. Shape: latitudes and longitudes have the same length; `segmentStarts` are rising indexes at
/// which a new segment begins, the first of them 0 when there is any position. Arrays are handed over, not copied.
/// Unit: degrees, WGS-84.
public record Track(double[] latitudes, double[] longitudes, int[] segmentStarts) {
    public static final Track NONE = new Track(new double[0], new double[0], new int[0]);

    public int size() {
        return latitudes.length;
    }

    /// The sum of geodesics between successive positions within segments, unfiltered and without height, in metres;
    /// empty when there is no position.
    ///
    /// Source: geodesics on the WGS-84 ellipsoid by Karney's algorithm, Journal of Geodesy 87 (2013) 43-55.
    public OptionalDouble lengthM() {
        if (latitudes.length == 0) {
            return OptionalDouble.empty();
        }
        double sumM = 0;
        int next = 0;
        for (int i = 0; i < latitudes.length; i++) {
            if (next < segmentStarts.length && segmentStarts[next] == i) {
                next++;
            } else {
                sumM += stepM(i);
            }
        }
        return OptionalDouble.of(sumM);
    }

    private double stepM(int i) {
        if (latitudes[i] == latitudes[i - 1] && longitudes[i] == longitudes[i - 1]) {
            return 0;
        }
        return Geodesic.WGS84.Inverse(
                        latitudes[i - 1], longitudes[i - 1], latitudes[i], longitudes[i], GeodesicMask.DISTANCE)
                .s12;
    }

    /// The track that timed position channels make, for a recording whose format holds no other positions.
    static Track of(java.util.List<Channel> channels, java.util.List<Segment> segments) {
        var latitude = first(channels, ChannelKind.LATITUDE);
        var longitude = first(channels, ChannelKind.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty()) {
            return NONE;
        }
        return joined(latitude.get(), longitude.get(), segments);
    }

    private static java.util.Optional<Channel> first(java.util.List<Channel> channels, ChannelKind kind) {
        return channels.stream()
                .filter(channel -> channel.kind() == kind && !channel.isEmpty())
                .findFirst();
    }

    private static Track joined(Channel latitude, Channel longitude, java.util.List<Segment> segments) {
        Fixes fixes = Fixes.joined(latitude, longitude);
        int[] starts = new int[Math.min(segments.size(), fixes.size()) + 1];
        int started = 0;
        int segment = -1;
        for (int i = 0; i < fixes.size(); i++) {
            int now = segmentAt(segments, fixes.timesS()[i], segment);
            if (i == 0 || now != segment) {
                starts[started++] = i;
            }
            segment = now;
        }
        return new Track(fixes.latitudes(), fixes.longitudes(), java.util.Arrays.copyOf(starts, started));
    }

    private static int segmentAt(java.util.List<Segment> segments, double timeS, int from) {
        int segment = Math.max(from, 0);
        while (segment + 1 < segments.size() && segments.get(segment + 1).fromS() <= timeS) {
            segment++;
        }
        return segment;
    }
}
