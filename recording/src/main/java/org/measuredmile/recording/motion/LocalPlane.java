package org.measuredmile.recording.motion;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/// A plane that touches the ellipsoid at a point, with one axis along a bearing: distance and direction from the point
/// are those of the geodesic.
///
/// Unit: degrees of WGS-84; metres along the bearing and to the right of it.
/// Valid: within some kilometres of the point, where the plane's own error is far below a centimetre.
/// Source: azimuthal equidistant projection; geodesics by Karney, Journal of Geodesy 87 (2013) 43–55.
record LocalPlane(double latitudeDegrees, double longitudeDegrees, double bearingDegrees) {
    record Spot(double alongM, double asideM) {}

    Spot of(double latitude, double longitude) {
        if (latitude == latitudeDegrees && longitude == longitudeDegrees) {
            return new Spot(0, 0);
        }
        var line = Geodesic.WGS84.Inverse(
                latitudeDegrees, longitudeDegrees, latitude, longitude, GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        double angle = StrictMath.toRadians(line.azi1 - bearingDegrees);
        return new Spot(line.s12 * StrictMath.cos(angle), line.s12 * StrictMath.sin(angle));
    }
}
