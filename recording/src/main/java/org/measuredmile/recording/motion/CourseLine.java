package org.measuredmile.recording.motion;

import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.day.Course;

/// The line of a course on the ground, on which fixes are projected to chainage: how far along the course they lie.
///
/// Shape: points in the order of riding out; a straight course is the line between its gates.
/// Unit: degrees of WGS-84; metres along the line from its first point, and to the right of it.
/// Valid: for courses of some kilometres.
public final class CourseLine {
    private final LocalPlane plane;
    private final double[] along;
    private final double[] aside;
    private final double[] chainage;

    /// A point of the line.
    public record Point(double latitudeDegrees, double longitudeDegrees) {}

    /// Where a fix lies: how far along, and how far to the side.
    public record Projection(double chainageM, double asideM) {}

    private CourseLine(List<Point> points) {
        var first = points.getFirst();
        plane = new LocalPlane(first.latitudeDegrees(), first.longitudeDegrees(), 0);
        along = new double[points.size()];
        aside = new double[points.size()];
        chainage = new double[points.size()];
        for (int i = 1; i < along.length; i++) {
            var spot = plane.of(points.get(i).latitudeDegrees(), points.get(i).longitudeDegrees());
            along[i] = spot.alongM();
            aside[i] = spot.asideM();
            chainage[i] = chainage[i - 1] + StrictMath.hypot(along[i] - along[i - 1], aside[i] - aside[i - 1]);
        }
    }

    /// A line through points; nothing when there are fewer than two, or all are one.
    public static Optional<CourseLine> through(List<Point> points) {
        if (points.size() < 2) {
            return Optional.empty();
        }
        var line = new CourseLine(points);
        return line.lengthM() > 0 ? Optional.of(line) : Optional.empty();
    }

    /// The straight line between the gates of a course.
    public static Optional<CourseLine> straight(Course course) {
        if (course.start().isEmpty() || course.finish().isEmpty()) {
            return Optional.empty();
        }
        return through(
                List.of(point(course.start().get()), point(course.finish().get())));
    }

    private static Point point(Course.Gate gate) {
        return new Point(gate.latitudeDegrees(), gate.longitudeDegrees());
    }

    public double lengthM() {
        return chainage[chainage.length - 1];
    }

    /// The nearest place of the line to a fix, among those whose chainage lies between two.
    ///
    /// A line that comes near itself, as a loop does, needs those two: a fix belongs to where the bike can be.
    public Projection project(Point fix, double lowM, double highM) {
        var spot = plane.of(fix.latitudeDegrees(), fix.longitudeDegrees());
        var best = new Projection(Math.clamp(0, lowM, Math.max(lowM, highM)), Double.POSITIVE_INFINITY);
        for (int i = 1; i < chainage.length; i++) {
            if (chainage[i] >= lowM && chainage[i - 1] <= highM && chainage[i] > chainage[i - 1]) {
                var here = onPiece(i, spot, lowM, highM);
                best = Math.abs(here.asideM) < Math.abs(best.asideM) ? here : best;
            }
        }
        return best;
    }

    /// The nearest place of the whole line; before its beginning and after its end the line goes on straight.
    public Projection project(Point fix) {
        return project(fix, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private Projection onPiece(int i, LocalPlane.Spot spot, double lowM, double highM) {
        double length = chainage[i] - chainage[i - 1];
        double alongUnit = (along[i] - along[i - 1]) / length;
        double asideUnit = (aside[i] - aside[i - 1]) / length;
        double fromAlong = spot.alongM() - along[i - 1];
        double fromAside = spot.asideM() - aside[i - 1];
        double on = fromAlong * alongUnit + fromAside * asideUnit;
        double least = i == 1 ? Double.NEGATIVE_INFINITY : 0;
        double most = i == chainage.length - 1 ? Double.POSITIVE_INFINITY : length;
        double kept = Math.max(
                Math.max(least, lowM - chainage[i - 1]), Math.min(Math.min(most, highM - chainage[i - 1]), on));
        double side = Math.signum(fromAside * alongUnit - fromAlong * asideUnit);
        double off = StrictMath.hypot(fromAlong - kept * alongUnit, fromAside - kept * asideUnit);
        return new Projection(chainage[i - 1] + kept, side == 0 ? off : side * off);
    }
}
