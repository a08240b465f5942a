package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.motion.GateCrossings.Crossing;
import org.measuredmile.recording.motion.Pass.Direction;
import org.measuredmile.recording.motion.Pass.Method;

/// How long a pass took, and how well that is known.
///
/// A position errs slowly: between two gates it costs u² = σ²·(1/v₁² + 1/v₂² − 2·e^(−T/τ)/(v₁·v₂)). Where there is a
/// speed
/// and a surveyed length L, the second end solves D(t₂) = D(t₁) + L with D = ∫v dt: the position's error then moves
/// both
/// ends alike, and u² = (σ·(1/v₁ − 1/v₂))² + (u_s·T)² + T·Δt·[σ_w² + σ_c²·(1 + φ)/(1 − φ)]/v̄² + (u_L/v̄)²,
/// φ = e^(−Δt/τ_c).
/// Source: the crew's own study of climbs (examples D1 to D3); σ 3 m and τ 60 s of a position, 0.05 m/s white and 0.05
/// m/s
/// over 0.5 s of a speed, and the speed scale's 0.3 % are house values.
final class PassTiming {
    private static final double POSITION_M = 3;
    private static final double POSITION_MEMORY_S = 60;
    private static final double SPEED_SCALE = 0.003;
    private static final double WHITE_MPS = 0.05;
    private static final double CORRELATED_MPS = 0.05;
    private static final double SPEED_MEMORY_S = 0.5;
    private static final double MOST_MISSING = 0.05;
    private static final double MOST_OFF_LINE = 0.05;
    private static final double STRAIGHT_WITHIN = 0.01;

    private final Recording recording;
    private final Fixes fixes;
    private final Course course;
    private final Optional<CourseLine> line;
    private final Optional<TravelledWay> way;
    private final double stepS;

    /// A pass, or why it is none.
    sealed interface Timed {
        record Whole(Pass pass) implements Timed {}

        record Refused(String reason) implements Timed {}
    }

    private PassTiming(Recording recording, Fixes fixes, Course course, Optional<CourseLine> line) {
        this.recording = recording;
        this.fixes = fixes;
        this.course = course;
        this.line = line;
        var speed = SpeedSource.best(recording)
                .filter(source -> source.kind() != SpeedSource.Kind.POSITIONS)
                .map(source -> source.scaled().channel());
        this.way = speed.map(TravelledWay::of);
        this.stepS = speed.map(Channel::medianStepS).orElse(1.0);
    }

    static PassTiming of(Recording recording, Fixes fixes, Course course, Optional<CourseLine> line) {
        return new PassTiming(recording, fixes, course, line);
    }

    Timed timed(Direction direction, Crossing begun, Crossing ended) {
        double gatesS = ended.timeS() - begun.timeS();
        double uGatesS = betweenGatesS(begun.speedMps(), ended.speedMps(), gatesS);
        var findings = new ArrayList<Finding>();
        var bySpeed = bySpeedS(begun.timeS(), ended.timeS());
        double toS = bySpeed.orElse(ended.timeS());
        double uS = uGatesS;
        var method = Method.GATES;
        if (bySpeed.isPresent()) {
            method = Method.SPEED_OVER_LENGTH;
            double durationS = toS - begun.timeS();
            uS = bySpeedS(
                    begun.speedMps(),
                    ended.speedMps(),
                    durationS,
                    course.length().orElseThrow());
            double u = StrictMath.hypot(uS, uGatesS);
            if (Math.abs(durationS - gatesS) > 2 * u) {
                findings.add(Finding.warning(
                        "gates-disagree",
                        Place.atTime(recording.name(), begun.timeS()),
                        GateWords.gatesDisagree(gatesS, durationS, u),
                        "look at the course's length, at which course it was, and at the wheel's size"));
            }
        }
        var on = chainage(direction, begun.timeS(), toS, findings);
        if (on instanceof OnLine.Left(double share)) {
            return new Timed.Refused(GateWords.offLine(share, MOST_OFF_LINE, GateCrossings.HALF_WIDTH_M));
        }
        var along = (OnLine.Along) on;
        return new Timed.Whole(new Pass(
                direction,
                method,
                begun.timeS(),
                toS,
                POSITION_M / begun.speedMps(),
                POSITION_M / ended.speedMps(),
                uS,
                new Pass.ByGates(gatesS, uGatesS),
                along.timesS,
                along.chainageM,
                findings));
    }

    static double betweenGatesS(double firstMps, double lastMps, double durationS) {
        return betweenGatesS(firstMps, lastMps, durationS, POSITION_M, POSITION_MEMORY_S);
    }

    static double betweenGatesS(double firstMps, double lastMps, double durationS, double sigmaM, double memoryS) {
        double shared = 2 * StrictMath.exp(-durationS / memoryS) / (firstMps * lastMps);
        return sigmaM * Math.sqrt(1 / (firstMps * firstMps) + 1 / (lastMps * lastMps) - shared);
    }

    private double bySpeedS(double firstMps, double lastMps, double durationS, Course.Surveyed length) {
        double meanMps = length.valueM() / durationS;
        double atEnds = POSITION_M * (1 / firstMps - 1 / lastMps);
        double ofLength = length.standardUncertaintyM() / meanMps;
        double ofSpeed = bySpeedS(durationS, stepS, meanMps);
        return Math.sqrt(atEnds * atEnds + ofLength * ofLength + ofSpeed * ofSpeed);
    }

    /// What noise and scale of the speed leave open.
    static double bySpeedS(double durationS, double stepS, double meanMps) {
        double kept = StrictMath.exp(-stepS / SPEED_MEMORY_S);
        double perStep = WHITE_MPS * WHITE_MPS + CORRELATED_MPS * CORRELATED_MPS * (1 + kept) / (1 - kept);
        double ofNoise = durationS * stepS * perStep / (meanMps * meanMps);
        return Math.sqrt(ofNoise + SPEED_SCALE * durationS * SPEED_SCALE * durationS);
    }

    /// The second end by speed; nothing without a speed or a length, or where too much of the speed is missing.
    private Optional<Double> bySpeedS(double fromS, double toS) {
        if (way.isEmpty() || course.length().isEmpty() || way.get().missing(fromS, toS) > MOST_MISSING) {
            return Optional.empty();
        }
        var end = way.get().reachedS(fromS, course.length().get().valueM());
        return end.isPresent() && way.get().missing(fromS, end.getAsDouble()) <= MOST_MISSING
                ? Optional.of(end.getAsDouble())
                : Optional.empty();
    }

    /// Where the fixes of a pass lie on the course, or that they do not.
    private sealed interface OnLine {
        record Along(double[] timesS, double[] chainageM) implements OnLine {}

        record Left(double share) implements OnLine {}
    }

    private OnLine chainage(Direction direction, double fromS, double toS, List<Finding> findings) {
        int from = Arrays.binarySearch(fixes.timesS(), fromS);
        int to = Arrays.binarySearch(fixes.timesS(), toS);
        int first = from >= 0 ? from : -from - 1;
        int end = to >= 0 ? to : -to - 1;
        double[] times = Arrays.copyOfRange(fixes.timesS(), first, Math.max(first, end));
        double lengthM = course.length()
                .map(Course.Surveyed::valueM)
                .orElse(line.map(CourseLine::lengthM).orElse(0.0));
        boolean fits = line.isPresent() && Math.abs(line.get().lengthM() / lengthM - 1) <= STRAIGHT_WITHIN;
        if (!fits) {
            line.ifPresent(one -> findings.add(Finding.note(
                    "course-not-straight",
                    Place.atTime(recording.name(), fromS),
                    GateWords.notStraight(one.lengthM(), lengthM))));
            return new OnLine.Along(times, byTime(direction, times, fromS, toS, lengthM));
        }
        return projected(direction, times, first, lengthM);
    }

    /// Without a line that fits, chainage follows the way that the speed went, or else time.
    private double[] byTime(Direction direction, double[] times, double fromS, double toS, double lengthM) {
        double wholeM = way.map(one -> one.betweenM(fromS, toS)).orElse(0.0);
        double[] chainage = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            double at = times[i];
            double share = wholeM > 0 ? way.orElseThrow().betweenM(fromS, at) / wholeM : (at - fromS) / (toS - fromS);
            chainage[i] = lengthM * (direction == Direction.OUT ? share : 1 - share);
        }
        return chainage;
    }

    private OnLine projected(Direction direction, double[] times, int first, double lengthM) {
        var known = line.orElseThrow();
        double[] chainage = new double[times.length];
        double last = direction == Direction.OUT ? 0 : known.lengthM();
        int off = 0;
        for (int i = 0; i < times.length; i++) {
            var fix = new CourseLine.Point(fixes.latitudes()[first + i], fixes.longitudes()[first + i]);
            double stepS = i == 0 ? 3 : times[i] - times[i - 1];
            double reachM = 20 * stepS + 2 * POSITION_M;
            var at = known.project(fix, last - reachM, last + reachM);
            off += Math.abs(at.asideM()) > GateCrossings.HALF_WIDTH_M ? 1 : 0;
            last = at.chainageM();
            chainage[i] = last * lengthM / known.lengthM();
        }
        double share = times.length == 0 ? 0 : (double) off / times.length;
        return share > MOST_OFF_LINE ? new OnLine.Left(share) : new OnLine.Along(times, chainage);
    }
}
