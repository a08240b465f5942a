package org.measuredmile.trial.climb;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.recording.day.CourseHeights;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.motion.Pass.Direction;
import org.measuredmile.trial.TrialInput;

/// The hill that a run went up: the surveyed course where there is one, else what was read for it.
///
/// Unit: metres; `bearingDegrees` is the way up, from true north.
/// Shape: `rise` is positive; a course surveyed from its top is turned.
record Hill(
        String id,
        Optional<Course> course,
        Optional<Surveyed> length,
        Optional<Surveyed> rise,
        OptionalDouble bearingDegrees) {
    static final String KIND = "climb";

    /// The surveyed hills of a day.
    static List<Course> surveyed(TrialInput input) {
        return input.day().courses().stream()
                .filter(course -> course.kind().equals(KIND))
                .toList();
    }

    /// The hill of a run: the one it names, else the day's only one, else one without a record.
    static Hill of(TrialInput input, Run run) {
        var hills = surveyed(input);
        var named = input.day().courses().stream()
                .filter(course -> course.id().equals(run.course()))
                .findFirst();
        if (named.isPresent()) {
            return of(named.get());
        }
        if (run.course().isEmpty() && hills.size() == 1) {
            return of(hills.getFirst());
        }
        return new Hill(run.course(), Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }

    static Hill of(Course course) {
        boolean isUp = direction(course) == Direction.OUT;
        var bearing = course.start()
                .map(gate -> OptionalDouble.of(isUp ? gate.bearingDegrees() : gate.bearingDegrees() + 180))
                .orElse(OptionalDouble.empty());
        var rise = course.rise().map(one -> new Surveyed(Math.abs(one.valueM()), one.standardUncertaintyM()));
        return new Hill(course.id(), Optional.of(course), course.length(), rise, bearing);
    }

    /// The heights along the way up.
    CourseHeights heights() {
        var known = course.map(Course::heights).orElse(CourseHeights.NONE);
        return known.isEmpty() || isUp() ? known : known.turned();
    }

    private boolean isUp() {
        return course.filter(one -> direction(one) == Direction.BACK).isEmpty();
    }

    /// The rise that the profile has between the gates, as well as its ends are known.
    Optional<Surveyed> riseOfHeights() {
        var known = heights();
        return known.isEmpty()
                ? Optional.empty()
                : Optional.of(new Surveyed(
                        known.riseM(),
                        StrictMath.hypot(
                                known.points().getFirst().standardUncertaintyM(),
                                known.points().getLast().standardUncertaintyM())));
    }

    /// Which way of a course is up: by its surveyed rise, else by its profile.
    static Direction direction(Course course) {
        boolean isDown = course.rise()
                .map(rise -> rise.valueM() < 0)
                .orElse(!course.heights().isEmpty() && course.heights().riseM() < 0);
        return isDown ? Direction.BACK : Direction.OUT;
    }

    /// Whether length and rise are known and can be a road's.
    boolean isKnown() {
        return length.isPresent()
                && rise.isPresent()
                && rise.get().valueM() < length.get().valueM();
    }

    double lengthM() {
        return length.orElseThrow().valueM();
    }

    double riseM() {
        return rise.orElseThrow().valueM();
    }
}
