package org.measuredmile.trial.assistspeed;

import java.util.List;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.motion.SecondMeans;
import org.measuredmile.trial.assistspeed.LevelPass.Heading;

/// Which ways the stretches of a recording went, from its positions.
final class Headings {
    private Headings() {}

    /// The mean unit heading of stretches, each weighed by the seconds it held.
    static Heading of(Recording recording, SecondMeans seconds, List<SteadyStretch> stretches) {
        var latitude = recording.channel(ChannelKind.LATITUDE);
        var longitude = recording.channel(ChannelKind.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty() || stretches.isEmpty()) {
            return Heading.UNKNOWN;
        }
        double east = 0;
        double north = 0;
        double weight = 0;
        for (var stretch : stretches) {
            double fromS = seconds.timeS(stretch.span().from());
            double toS = seconds.timeS(stretch.span().to());
            double[] way = way(latitude.get(), longitude.get(), fromS, toS);
            double length = StrictMath.hypot(way[0], way[1]);
            if (length == 0) {
                return Heading.UNKNOWN;
            }
            east += stretch.heldS() * way[0] / length;
            north += stretch.heldS() * way[1] / length;
            weight += stretch.heldS();
        }
        return new Heading(east / weight, north / weight, true);
    }

    /// East and north between the first and the last position of a stretch, in degrees of latitude.
    private static double[] way(Channel latitude, Channel longitude, double fromS, double toS) {
        var lat = latitude.between(fromS, toS);
        var lon = longitude.between(fromS, toS);
        if (lat.size() < 2 || lon.size() < 2) {
            return new double[] {0, 0};
        }
        double north = lat.value(lat.size() - 1) - lat.value(0);
        double turn = lon.value(lon.size() - 1) - lon.value(0);
        return new double[] {turn * StrictMath.cos(StrictMath.toRadians(lat.value(0))), north};
    }
}
