package org.measuredmile.demo.ride;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;

/// A straight, level piece of road on WGS-84.
///
/// Unit: degrees; bearing from true north in the direction called out; altitude in metres.
public record RoadLine(double latitudeDegrees, double longitudeDegrees, double bearingDegrees, double altitudeM) {
    /// A place on or beside the road.
    public record Spot(double latitudeDegrees, double longitudeDegrees) {}

    /// The place at a distance along the road and a distance to its right.
    public Spot at(double alongM, double rightM) {
        GeodesicData on = Geodesic.WGS84.Direct(latitudeDegrees, longitudeDegrees, bearingDegrees, alongM);
        GeodesicData beside = Geodesic.WGS84.Direct(on.lat2, on.lon2, on.azi2 + 90, rightM);
        return new Spot(beside.lat2, beside.lon2);
    }

    /// The same road ridden from a point further along, the other way.
    public RoadLine back(double fromM) {
        GeodesicData start = Geodesic.WGS84.Direct(latitudeDegrees, longitudeDegrees, bearingDegrees, fromM);
        double turned = start.azi2 + 180;
        return new RoadLine(start.lat2, start.lon2, turned >= 360 ? turned - 360 : turned, altitudeM);
    }
}
