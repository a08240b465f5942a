package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Course.Surveyed;

/// Whether length, time and mean speed agree, within each run and across runs; and which of the three is the odd one
/// out, where that can be told.
///
/// Every run that has two of them implies a length: mean speed times time as written, or the way by speed between the
/// fixes at both gates. A run whose own recording tells the time accuses its watch or its display; runs that agree
/// with each other on another length accuse the course's record; one run alone against others accuses itself.
/// Unit: metres.
final class ImpliedLengths {
    private static final double[] SLIPS = {1.609344, 1.852, 1.150779, 3.6, 60};
    private static final String[] SLIP_WORDS = {
        "miles taken for kilometres",
        "nautical miles taken for kilometres",
        "knots taken for miles an hour",
        "km/h taken for m/s",
        "minutes taken for seconds"
    };
    private static final double SLIP_WITHIN = 0.01;

    private final SortedMap<String, List<Implied>> byHill = new TreeMap<>();

    /// A length that one run implies.
    private record Implied(ClimbRun run, double metres, double sd, boolean written, Surveyed stated) {
        boolean disagrees() {
            double u = StrictMath.hypot(sd, stated.standardUncertaintyM());
            return Math.abs(metres - stated.valueM()) > ClimbRules.DISAGREE_BEYOND * u;
        }

        boolean agreesWith(Implied other) {
            double u = StrictMath.hypot(sd, other.sd);
            return Math.abs(metres - other.metres) <= ClimbRules.DISAGREE_BEYOND * u;
        }
    }

    ImpliedLengths(List<ClimbRun> runs) {
        for (var run : runs) {
            var all = byHill.computeIfAbsent(run.hill().id(), _ -> new ArrayList<>());
            if (run.screened().isEmpty()) {
                written(run).or(() -> driven(run)).ifPresent(all::add);
            }
        }
    }

    private static Optional<Surveyed> stated(ClimbRun run) {
        return run.hill()
                .length()
                .or(() -> run.reading(Climb.LENGTH)
                        .map(read -> new Surveyed(
                                read.si(), StrictMath.hypot(read.stepSd(), ClimbRules.LENGTH_READ_SD * read.si()))));
    }

    private static Optional<Implied> written(ClimbRun run) {
        var speed = run.reading(Climb.MEAN_SPEED);
        var time = run.byHand().or(run::byTrace);
        var length = stated(run);
        if (speed.isEmpty() || time.isEmpty() || length.isEmpty()) {
            return Optional.empty();
        }
        double metres = speed.get().si() * time.get().seconds();
        double scale = speed.get()
                .instrument()
                .flatMap(one -> one.calibration())
                .map(one -> one.standardUncertainty())
                .orElse(ClimbRules.DISPLAY_SCALE);
        double relative = StrictMath.hypot(
                StrictMath.hypot(speed.get().stepSd() / speed.get().si(), scale),
                StrictMath.hypot(time.get().ownSdS(), ClimbRules.HAND_COMMON_S)
                        / time.get().seconds());
        return Optional.of(new Implied(run, metres, relative * metres, true, length.get()));
    }

    /// The way by speed between the fixes at both gates: the surveyed length, and what was ridden in the time
    /// between where it ended and the last gate.
    private static Optional<Implied> driven(ClimbRun run) {
        var climb = run.traced().filter(TracedClimb::qualifies).filter(TracedClimb::isBySpeed);
        var length = run.hill().length();
        if (climb.isEmpty() || length.isEmpty()) {
            return Optional.empty();
        }
        var gates = climb.get().pass().orElseThrow().byGates();
        double exit = climb.get().exit().mps();
        double metres =
                length.get().valueM() + exit * (gates.durationS() - climb.get().durationS());
        double sd = StrictMath.hypot(gates.standardUncertaintyS() * exit, run.scaleSd() * metres);
        return Optional.of(new Implied(run, metres, sd, false, length.get()));
    }

    List<Finding> findings() {
        var findings = new ArrayList<Finding>();
        byHill.forEach((hill, all) -> {
            var off = all.stream().filter(Implied::disagrees).toList();
            if (accuseTheRecord(all, off)) {
                findings.add(doubted(hill, off));
            } else {
                off.forEach(one -> findings.add(disagreement(one, all)));
            }
        });
        return findings;
    }

    /// At least two runs say another length, all of those agree with one another, and none says the stated one.
    private static boolean accuseTheRecord(List<Implied> all, List<Implied> off) {
        return off.size() >= 2
                && off.size() == all.size()
                && off.stream().allMatch(one -> off.stream().allMatch(one::agreesWith))
                && off.stream().noneMatch(one -> oddByTrace(one).isPresent());
    }

    private static Finding doubted(String hill, List<Implied> off) {
        double mean = off.stream().mapToDouble(Implied::metres).average().orElseThrow();
        double stated = off.getFirst().stated().valueM();
        return Finding.warning(
                "course-length-doubted",
                hill.isEmpty() ? Place.NOWHERE : new Place("day.yaml", "courses." + hill),
                off.size() + " runs (" + String.join(", ", ids(off)) + ") agree with each other on "
                        + ClimbWords.metres(mean) + ", the length stated is " + ClimbWords.metres(stated)
                        + ": the course's record is the odd one out" + slip(mean / stated),
                "survey the length again; where one display gave all the speeds, check its wheel size first");
    }

    private static List<String> ids(List<Implied> off) {
        return off.stream().map(one -> one.run().run().id()).toList();
    }

    private static Finding disagreement(Implied one, List<Implied> all) {
        double ratio = one.metres() / one.stated().valueM();
        String odd = oddByTrace(one)
                .or(() -> oddAmong(one, all))
                .map(what -> "; the odd one out is " + what)
                .orElse("; which of the three is the odd one out cannot be told from one run");
        String implied = one.written() ? "mean speed and time as written make " : "speed between the gates makes ";
        return Finding.warning(
                "length-time-speed-disagree",
                one.run().run().place(),
                "run " + one.run().run().id() + ": " + implied + ClimbWords.metres(one.metres())
                        + ", the length stated is "
                        + ClimbWords.metres(one.stated().valueM()) + odd + slip(ratio),
                "look at the slip again, and correct what was misread");
    }

    /// The run's own recording tells its time, and with the length its mean speed.
    private static Optional<String> oddByTrace(Implied one) {
        var hand = one.run().byHand();
        var trace = one.run().byTrace();
        if (!one.written() || trace.isEmpty()) {
            return Optional.empty();
        }
        if (hand.isPresent()) {
            double gap = Math.abs(hand.get().seconds() - trace.get().seconds());
            double u = StrictMath.hypot(hand.get().ownSdS(), trace.get().ownSdS())
                    + trace.get().perScale() * one.run().scaleSd();
            if (gap > ClimbRules.DISAGREE_BEYOND * u) {
                return Optional.of("the time: the recording says "
                        + ClimbWords.seconds(trace.get().seconds()));
            }
        }
        double mean = one.stated().valueM() / trace.get().seconds();
        return Optional.of("the mean speed: the recording says " + ClimbWords.mps(mean));
    }

    /// Against other runs of the same drive that do agree: whichever of time and speed is farther from theirs.
    private static Optional<String> oddAmong(Implied one, List<Implied> all) {
        var others = all.stream()
                .filter(other -> !other.disagrees())
                .filter(other -> other.run().drive().equals(one.run().drive()))
                .toList();
        if (others.isEmpty()) {
            return Optional.empty();
        }
        double time = one.run().time().orElseThrow().seconds();
        double speed = one.metres() / time;
        double usualTime =
                middle(others, other -> other.run().time().orElseThrow().seconds());
        double usualSpeed = one.stated().valueM() / usualTime;
        double byTime = Math.abs(StrictMath.log(time / usualTime));
        double bySpeed = Math.abs(StrictMath.log(speed / usualSpeed));
        double scatter = ClimbRules.DISAGREE_BEYOND * ClimbRules.TIME.betweenRuns();
        if (byTime > scatter && bySpeed <= scatter) {
            return Optional.of("the time: the other runs took about " + ClimbWords.seconds(usualTime));
        }
        return bySpeed > scatter && byTime <= scatter
                ? Optional.of("the mean speed: the other runs had about " + ClimbWords.mps(usualSpeed))
                : Optional.empty();
    }

    private static double middle(List<Implied> all, java.util.function.ToDoubleFunction<Implied> take) {
        var sorted = all.stream()
                .sorted(Comparator.comparingDouble(take))
                .map(take::applyAsDouble)
                .toList();
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(half) : (sorted.get(half - 1) + sorted.get(half)) / 2;
    }

    /// The slip of units that a ratio looks like; empty text for none.
    static String slip(double ratio) {
        double larger = ratio < 1 ? 1 / ratio : ratio;
        for (int i = 0; i < SLIPS.length; i++) {
            if (Math.abs(larger / SLIPS[i] - 1) < SLIP_WITHIN) {
                return " (a ratio of " + ClimbWords.plain(larger) + ": " + SLIP_WORDS[i] + "?)";
            }
        }
        return "";
    }
}
