package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.motion.Passes;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.CandidateFinder;
import org.measuredmile.trial.TrialInput;

/// How climbs are looked for: every pass of the day's surveyed hills, the way up.
///
/// A speed that a calibration corrects by a factor f shows a length L as L/f; that is what is laid along it.
record ClimbSearch(TrialInput input) implements CandidateFinder<TracedClimb> {
    private static final double SLOWEST_RATE_S = 2;
    private static final String REMEDY = "time the climb by hand, or log positions and speed once a second or more";

    @Override
    public String word() {
        return "climb";
    }

    @Override
    public List<TracedClimb> find(Recording recording, SpeedSource source) {
        var found = new ArrayList<TracedClimb>();
        double factor = input.instrumentOf(recording).map(Instrument::factor).orElse(1.0);
        for (var course : Hill.surveyed(input)) {
            var up = Hill.direction(course);
            var passes = Passes.of(recording, shown(course, factor));
            passes.passes().stream()
                    .filter(pass -> pass.direction() == up)
                    .forEach(pass -> found.add(TracedClimb.whole(recording, source, course, pass)));
            passes.partial().stream()
                    .filter(partial -> partial.direction() == up && partial.toS() > partial.fromS())
                    .forEach(partial -> found.add(TracedClimb.refused(recording, source, course, partial)));
        }
        found.sort(Comparator.comparingDouble(TracedClimb::beginS));
        return found;
    }

    private static Course shown(Course course, double factor) {
        return factor == 1
                ? course
                : new Course(
                        course.id(),
                        course.kind(),
                        course.length()
                                .map(one -> new Surveyed(one.valueM() / factor, one.standardUncertaintyM() / factor)),
                        course.rise(),
                        course.start(),
                        course.finish(),
                        course.profile(),
                        course.surveyedOn(),
                        course.surveyedBy(),
                        course.heights());
    }

    @Override
    public Optional<Finding> tooCoarse(Place place, SpeedSource source) {
        double stepS = source.channel().medianStepS();
        return stepS <= SLOWEST_RATE_S
                ? Optional.empty()
                : Optional.of(Finding.refused(
                        "too-coarse",
                        place,
                        "a sample every " + ClimbWords.seconds(stepS) + ", at most "
                                + ClimbWords.seconds(SLOWEST_RATE_S),
                        REMEDY));
    }

    @Override
    public String withoutSpeed() {
        return REMEDY;
    }
}
