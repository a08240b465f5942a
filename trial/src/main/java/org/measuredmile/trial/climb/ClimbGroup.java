package org.measuredmile.trial.climb;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The climbs of one drive on one hill, those that count and those that do not.
record ClimbGroup(String drive, Hill hill, List<ClimbRun> runs) {
    ClimbGroup {
        runs = List.copyOf(runs);
    }

    Variant variant() {
        var variant = Variant.of("drive", drive);
        return hill.id().isEmpty() ? variant : variant.with("course", hill.id());
    }

    List<ClimbRun> counted() {
        return runs.stream().filter(ClimbRun::counts).toList();
    }

    /// The counted runs that have something.
    <T> List<T> having(Function<ClimbRun, Optional<T>> take) {
        return counted().stream().flatMap(run -> take.apply(run).stream()).toList();
    }

    double meanOf(ToDoubleFunction<ClimbRun> take) {
        return counted().stream().mapToDouble(take).average().orElse(Double.NaN);
    }

    double timeS() {
        return meanOf(run -> time(run).seconds());
    }

    static ClimbRun.Timed time(ClimbRun run) {
        return run.time().orElseThrow();
    }

    /// What a mean of so many numbers keeps of their own uncertainties.
    static double ofMean(List<Double> standardUncertainties) {
        double squares = 0;
        for (double one : standardUncertainties) {
            squares += one * one;
        }
        return Math.sqrt(squares) / Math.max(1, standardUncertainties.size());
    }

    /// The share of counted runs that a watch timed.
    double watchedShare() {
        return meanOf(run -> time(run).by() == ClimbRun.By.WATCH ? 1 : 0);
    }

    /// How well the speed's scale is known, over the runs that lean on it.
    double scaleSd() {
        return counted().stream().mapToDouble(ClimbRun::scaleSd).max().orElse(ClimbRules.SPEED_SCALE);
    }

    /// The contributions to the mean time that its runs share, and what timing each run adds.
    List<Contribution> timing() {
        double own = ofMean(having(run -> run.time().map(ClimbRun.Timed::ownSdS)));
        double lengthSd = hill.length().map(Surveyed::standardUncertaintyM).orElse(0.0);
        return List.of(
                Contribution.typeB("timing of single runs", own),
                Contribution.typeB(
                                "surveyed length",
                                lengthSd * meanOf(run -> time(run).perMetre()))
                        .sharedAs("length of " + hill.id()),
                Contribution.typeB(
                                "scale of the speed",
                                scaleSd() * meanOf(run -> time(run).perScale()))
                        .sharedAs("scale of the speed on " + hill.id()),
                Contribution.typeB(
                                "reaction at both marks, alike in all runs", ClimbRules.HAND_COMMON_S * watchedShare())
                        .sharedAs("reaction on " + hill.id()));
    }

    /// The energy of the mean climb; nothing without a rise and a length.
    Optional<ClimbPower> power(TrialInput input) {
        return powerOf(input, counted(), timeS());
    }

    /// The energy of one climb.
    Optional<ClimbPower> power(TrialInput input, ClimbRun run) {
        return powerOf(input, List.of(run), time(run).seconds());
    }

    private Optional<ClimbPower> powerOf(TrialInput input, List<ClimbRun> of, double timeS) {
        var length = length();
        var rise = rise();
        if (of.isEmpty() || length.isEmpty() || rise.isEmpty()) {
            return Optional.empty();
        }
        var first = of.getFirst();
        return Optional.of(new ClimbPower(
                RoadSetting.of(input, first.run()),
                UsedLoad.of(input).load(),
                HillWind.of(input, first.run(), hill),
                length.get(),
                rise.get(),
                timeS,
                of.stream().mapToDouble(run -> run.entry().mps()).average().orElseThrow(),
                of.stream().mapToDouble(run -> run.exit().mps()).average().orElseThrow()));
    }

    /// The surveyed length, else the one read.
    Optional<Surveyed> length() {
        return hill.length()
                .or(() -> runs.getFirst()
                        .reading(Climb.LENGTH)
                        .map(read -> new Surveyed(
                                read.si(), StrictMath.hypot(read.stepSd(), ClimbRules.LENGTH_READ_SD * read.si()))));
    }

    /// The surveyed rise, else that of the profile, the one read, or the grade read times the length; only one that
    /// a road can have.
    Optional<Surveyed> rise() {
        var read = runs.getFirst()
                .reading(Climb.RISE)
                .map(one ->
                        new Surveyed(one.si(), StrictMath.hypot(one.stepSd(), ClimbRules.LENGTH_READ_SD * one.si())));
        var byGrade = runs.getFirst()
                .reading(Climb.GRADE)
                .flatMap(grade -> length().map(along -> {
                    double sine = grade.si() / StrictMath.sqrt(1 + grade.si() * grade.si());
                    return new Surveyed(sine * along.valueM(), ClimbRules.GRADE_READ_SD * along.valueM());
                }));
        return hill.rise()
                .or(hill::riseOfHeights)
                .or(() -> read)
                .or(() -> byGrade)
                .filter(rise ->
                        length().filter(along -> rise.valueM() < along.valueM()).isPresent());
    }
}
