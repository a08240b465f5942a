package org.measuredmile.recording.day;

import java.util.List;

/// The height of the road along a course, as somebody levelled it from the first gate.
///
/// Unit: metres along the road and above the first gate's; each height with its standard uncertainty against the first.
/// Shape: at least two points, the first at 0, distances rising; none where nobody levelled the course.
public record CourseHeights(List<Point> points) {
    public static final CourseHeights NONE = new CourseHeights(List.of());

    /// One levelled place.
    public record Point(double distanceM, double heightM, double standardUncertaintyM) {}

    public CourseHeights {
        points = List.copyOf(points);
    }

    public boolean isEmpty() {
        return points.isEmpty();
    }

    public double lengthM() {
        return points.getLast().distanceM();
    }

    public double riseM() {
        return points.getLast().heightM() - points.getFirst().heightM();
    }

    /// The same seen from the other gate.
    public CourseHeights turned() {
        return new CourseHeights(points.reversed().stream()
                .map(one -> new Point(lengthM() - one.distanceM(), one.heightM(), one.standardUncertaintyM()))
                .toList());
    }
}
