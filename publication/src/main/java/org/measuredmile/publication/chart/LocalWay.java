package org.measuredmile.publication.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.measuredmile.recording.Track;

/// A track in metres east and north of its first position, in the lines it was recorded in.
///
/// Source: metres a degree by the meridian's and the prime vertical's radius of curvature on WGS-84 (NGA.STND.0036,
/// semi-major axis and flattening).
record LocalWay(List<Line> lines) {
    private static final double SEMI_MAJOR_M = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;

    /// One line without a break; never without a point.
    record Line(double[] eastM, double[] northM) {}

    /// How far it reaches.
    record Extent(double westM, double eastM, double southM, double northM) {
        double wideM() {
            return eastM - westM;
        }

        double highM() {
            return northM - southM;
        }
    }

    static LocalWay of(Track track) {
        double latitude0 = track.latitudes()[0];
        double longitude0 = track.longitudes()[0];
        double sine = StrictMath.sin(StrictMath.toRadians(latitude0));
        double eccentricity2 = FLATTENING * (2 - FLATTENING);
        double root = StrictMath.sqrt(1 - eccentricity2 * sine * sine);
        double northPerDegree = StrictMath.toRadians(SEMI_MAJOR_M * (1 - eccentricity2) / (root * root * root));
        double eastPerDegree =
                StrictMath.toRadians(SEMI_MAJOR_M / root) * StrictMath.cos(StrictMath.toRadians(latitude0));
        var lines = new ArrayList<Line>();
        for (int part = 0; part < track.segmentStarts().length; part++) {
            int from = track.segmentStarts()[part];
            int to = part + 1 < track.segmentStarts().length ? track.segmentStarts()[part + 1] : track.size();
            if (to > from) {
                double[] east = new double[to - from];
                double[] north = new double[to - from];
                for (int i = from; i < to; i++) {
                    east[i - from] = StrictMath.IEEEremainder(track.longitudes()[i] - longitude0, 360) * eastPerDegree;
                    north[i - from] = (track.latitudes()[i] - latitude0) * northPerDegree;
                }
                lines.add(new Line(east, north));
            }
        }
        return new LocalWay(lines);
    }

    Extent extent() {
        double west = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        for (Line line : lines) {
            for (int i = 0; i < line.eastM().length; i++) {
                west = Math.min(west, line.eastM()[i]);
                east = Math.max(east, line.eastM()[i]);
                south = Math.min(south, line.northM()[i]);
                north = Math.max(north, line.northM()[i]);
            }
        }
        return new Extent(west, east, south, north);
    }

    /// The same way by fewer points, none left out that lies further from the line than a tolerance; the tolerance
    /// grows until no more than `most` points are left, or only the ends of the lines.
    List<Line> simplified(double toleranceM, int most) {
        List<Line> thinned =
                lines.stream().map(line -> thinned(line, toleranceM / 2)).toList();
        for (double tolerance = toleranceM; ; tolerance *= 1.6) {
            double within = tolerance;
            var simple = thinned.stream().map(line -> simplified(line, within)).toList();
            int points = simple.stream().mapToInt(line -> line.eastM().length).sum();
            if (points <= Math.max(most, 2 * lines.size())) {
                return simple;
            }
        }
    }

    /// Without the points that lie closer to the last kept one than a distance: standing about.
    private static Line thinned(Line line, double distanceM) {
        var kept = new BitSet();
        kept.set(0);
        int last = 0;
        for (int i = 1; i < line.eastM().length; i++) {
            boolean far = StrictMath.hypot(line.eastM()[i] - line.eastM()[last], line.northM()[i] - line.northM()[last])
                    > distanceM;
            if (far || i == line.eastM().length - 1) {
                kept.set(i);
                last = i;
            }
        }
        return only(line, kept);
    }

    /// Source: D. Douglas, T. Peucker, Algorithms for the reduction of the number of points required to represent a
    /// digitized line or its caricature, Cartographica 10 (1973) 112-122.
    private static Line simplified(Line line, double toleranceM) {
        var kept = new BitSet();
        int end = line.eastM().length - 1;
        kept.set(0);
        kept.set(end);
        var open = new ArrayDeque<int[]>();
        open.push(new int[] {0, end});
        while (!open.isEmpty()) {
            int[] part = open.pop();
            int farthest = -1;
            double distance = toleranceM;
            for (int i = part[0] + 1; i < part[1]; i++) {
                double away = distanceM(line, i, part);
                if (away > distance) {
                    distance = away;
                    farthest = i;
                }
            }
            if (farthest >= 0) {
                kept.set(farthest);
                open.push(new int[] {part[0], farthest});
                open.push(new int[] {farthest, part[1]});
            }
        }
        return only(line, kept);
    }

    /// The distance of a point from the stretch between two others.
    private static double distanceM(Line line, int index, int[] part) {
        double east = line.eastM()[part[1]] - line.eastM()[part[0]];
        double north = line.northM()[part[1]] - line.northM()[part[0]];
        double pointEast = line.eastM()[index] - line.eastM()[part[0]];
        double pointNorth = line.northM()[index] - line.northM()[part[0]];
        double length2 = east * east + north * north;
        double along = length2 == 0 ? 0 : Math.clamp((pointEast * east + pointNorth * north) / length2, 0, 1);
        return StrictMath.hypot(pointEast - along * east, pointNorth - along * north);
    }

    private static Line only(Line line, BitSet kept) {
        return new Line(
                kept.stream().mapToDouble(i -> line.eastM()[i]).toArray(),
                kept.stream().mapToDouble(i -> line.northM()[i]).toArray());
    }
}
