package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.trial.TrialInput;

/// Whether rise, length and grade agree as far as they were stated, and which is the odd one out, where a second
/// reading or the recorded heights can tell.
///
/// Formula: grade = h/√(L² − h²).
final class GradeAgreement {
    private static final double HALF_S = 3;

    private final TrialInput input;
    private final List<ClimbRun> runs;
    private final Hill hill;

    private GradeAgreement(TrialInput input, List<ClimbRun> runs, Hill hill) {
        this.input = input;
        this.runs = runs;
        this.hill = hill;
    }

    static List<Finding> of(TrialInput input, List<ClimbRun> runs) {
        var findings = new ArrayList<Finding>();
        var ids = runs.stream().map(run -> run.hill().id()).distinct().toList();
        for (String id : ids) {
            var there = runs.stream().filter(run -> run.hill().id().equals(id)).toList();
            var agreement = new GradeAgreement(input, there, there.getFirst().hill());
            agreement.grade().ifPresent(findings::add);
            agreement.pair(Climb.LENGTH, hillLength(there), "length").ifPresent(findings::add);
            agreement.pair(Climb.RISE, there.getFirst().hill().rise(), "rise").ifPresent(findings::add);
            agreement.profile().ifPresent(findings::add);
        }
        return findings;
    }

    private static Optional<Surveyed> hillLength(List<ClimbRun> there) {
        return there.getFirst().hill().length();
    }

    private Optional<Surveyed> read(String name) {
        return input.readings()
                .ofDay(name)
                .map(one ->
                        new Surveyed(one.si(), StrictMath.hypot(one.stepSd(), ClimbRules.LENGTH_READ_SD * one.si())));
    }

    /// A second length or rise against the record's.
    private Optional<Finding> pair(String reading, Optional<Surveyed> record, String what) {
        var read = read(reading);
        if (read.isEmpty() || record.isEmpty() || agree(read.get(), record.get())) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                what + "s-differ",
                place(),
                "the " + what + " as read is " + ClimbWords.metres(read.get().valueM()) + ", the course's record says "
                        + ClimbWords.metres(record.get().valueM())
                        + ImpliedLengths.slip(read.get().valueM() / record.get().valueM())
                        + "; the record is used",
                "find out which of the two is of another hill, or was misread"));
    }

    /// The rise of the profile against the surveyed one.
    private Optional<Finding> profile() {
        var byHeights = hill.riseOfHeights();
        var record = hill.rise();
        if (byHeights.isEmpty() || record.isEmpty() || agree(byHeights.get(), record.get())) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                "profile-rises-otherwise",
                new Place("day.yaml", "courses." + hill.id() + ".profile"),
                "the profile rises " + ClimbWords.metres(byHeights.get().valueM()) + " between the gates, the course's"
                        + " record says " + ClimbWords.metres(record.get().valueM())
                        + "; the profile is tilted to the record",
                "level both gates again, and mend the one that was wrong"));
    }

    private static boolean agree(Surveyed one, Surveyed other) {
        double u = StrictMath.hypot(one.standardUncertaintyM(), other.standardUncertaintyM());
        return Math.abs(one.valueM() - other.valueM()) <= ClimbRules.DISAGREE_BEYOND * u;
    }

    private Place place() {
        return hill.id().isEmpty() ? Place.NOWHERE : new Place("day.yaml", "courses." + hill.id());
    }

    private static double grade(double riseM, double lengthM) {
        return riseM / StrictMath.sqrt(lengthM * lengthM - riseM * riseM);
    }

    private Optional<Finding> grade() {
        var read = input.readings().ofDay(Climb.GRADE);
        var length = hill.length().or(() -> read(Climb.LENGTH));
        var rise = hill.rise().or(() -> read(Climb.RISE));
        if (read.isEmpty()
                || length.isEmpty()
                || rise.isEmpty()
                || rise.get().valueM() >= length.get().valueM()) {
            return Optional.empty();
        }
        double made = grade(rise.get().valueM(), length.get().valueM());
        double gradeSd = StrictMath.hypot(read.get().stepSd(), ClimbRules.GRADE_READ_SD);
        double relative = StrictMath.hypot(
                rise.get().standardUncertaintyM() / rise.get().valueM(),
                length.get().standardUncertaintyM() / length.get().valueM());
        double u = StrictMath.hypot(gradeSd, made * relative);
        if (Math.abs(made - read.get().si()) <= ClimbRules.DISAGREE_BEYOND * u) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                "rise-length-grade-disagree",
                place(),
                String.format(
                        Locale.ROOT,
                        "a rise of %.1f m over %.1f m makes a grade of %.1f %%, the grade stated is %.1f %%%s",
                        rise.get().valueM(),
                        length.get().valueM(),
                        100 * made,
                        100 * read.get().si(),
                        odd(read.get().si(), rise.get(), length.get())),
                "survey again whatever is the odd one out"));
    }

    private String odd(double grade, Surveyed rise, Surveyed length) {
        double sine = grade / StrictMath.sqrt(1 + grade * grade);
        var otherRise = hill.rise().isPresent() ? read(Climb.RISE) : Optional.<Surveyed>empty();
        var otherLength = hill.length().isPresent() ? read(Climb.LENGTH) : Optional.<Surveyed>empty();
        double wantedRiseM = sine * length.valueM();
        double tolerated = ClimbRules.DISAGREE_BEYOND * ClimbRules.GRADE_READ_SD * length.valueM();
        if (otherRise.isPresent()) {
            return Math.abs(otherRise.get().valueM() - wantedRiseM) <= tolerated
                    ? "; the odd one out is the rise: "
                            + ClimbWords.metres(otherRise.get().valueM()) + " was read"
                    : "; the odd one out is the grade or the length: the rise as read is the record's";
        }
        if (otherLength.isPresent()
                && Math.abs(sine * otherLength.get().valueM() - rise.valueM()) <= tolerated
                && !agree(otherLength.get(), length)) {
            return "; the odd one out is the length: "
                    + ClimbWords.metres(otherLength.get().valueM()) + " was read";
        }
        var recorded = recordedRiseM();
        if (recorded.isPresent()) {
            double most = ClimbRules.DISAGREE_BEYOND * ClimbRules.RECORDED_RISE_SD;
            boolean fitsRecord = Math.abs(recorded.getAsDouble() - rise.valueM()) <= most;
            boolean fitsGrade = Math.abs(recorded.getAsDouble() - wantedRiseM) <= most;
            if (fitsRecord != fitsGrade) {
                return fitsGrade
                        ? "; the odd one out is the rise: the recordings rose "
                                + ClimbWords.metres(recorded.getAsDouble())
                        : "; the odd one out is the grade: the recordings rose "
                                + ClimbWords.metres(recorded.getAsDouble());
            }
        }
        return "; which of the three is the odd one out cannot be told";
    }

    /// The mean height difference between the gates in the recordings.
    private OptionalDouble recordedRiseM() {
        return runs.stream()
                .flatMap(run -> run.traced().filter(TracedClimb::qualifies).stream())
                .flatMap(climb -> climb.recording().channel(ChannelKind.ALTITUDE).stream()
                        .filter(heights -> heights.size() > 1)
                        .map(heights -> height(
                                        heights, climb.pass().orElseThrow().toS())
                                - height(heights, climb.pass().orElseThrow().fromS())))
                .filter(rise -> !rise.isNaN())
                .mapToDouble(Double::doubleValue)
                .average();
    }

    private static double height(Channel heights, double timeS) {
        var near = heights.between(timeS - HALF_S, timeS + HALF_S);
        return java.util.Arrays.stream(near.values()).average().orElse(Double.NaN);
    }
}
