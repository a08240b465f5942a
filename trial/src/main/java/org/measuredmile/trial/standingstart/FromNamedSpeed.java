package org.measuredmile.trial.standingstart;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// Times and distances from half a metre a second on, the least speed that a receiver tells: what a start gives even
/// where it crept before it went, so that nobody can say when it first moved.
///
/// Shape: a start's samples in; for every speed that was crossed without a gap a [Passed] out; nothing where the speed
/// never was below the named one.
final class FromNamedSpeed {
    /// How far to either side of the crossing its slope is taken from, s.
    private static final double SLOPE_HALF_S = 0.4;
    /// Samples so far to either side of a crossing make its parabola: few, for what crept may speed up by fits and
    /// starts.
    private static final double HALF_WINDOW_S = 0.5;

    private final SpeedSource source;
    private final Channel samples;

    private FromNamedSpeed(SpeedSource source, Channel samples) {
        this.source = source;
        this.samples = samples;
    }

    /// From the named speed to another.
    ///
    /// Unit: seconds and metres, with their standard uncertainties; `fromS` is when the named speed was
    /// crossed, in the recording's seconds.
    record Passed(double fromS, double timeS, double timeSd, double distanceM, double distanceSd) {}

    /// Where the named speed was crossed for the last time, in the recording's seconds.
    private record Begin(int next, double timeS, double timeSd) {}

    static Map<Target, Passed> of(SpeedSource source, Channel samples, double cutEndS) {
        return new FromNamedSpeed(source, samples).all(cutEndS);
    }

    private Map<Target, Passed> all(double cutEndS) {
        var all = new EnumMap<Target, Passed>(Target.class);
        int next = samples.indexAtOrAfter(cutEndS);
        while (next > 0 && samples.value(next - 1) > StandingStartRules.REST_MPS) {
            next--;
        }
        if (next == 0 || next >= samples.size()) {
            return all;
        }
        var begin = begin(next);
        for (var target : Target.values()) {
            int first = first(next, target.speedMps());
            if (first >= 0 && isWhole(next, samples.timeS(first) + HALF_WINDOW_S)) {
                Crossing.of(samples, target.speedMps(), HALF_WINDOW_S, samples.timeS(first))
                        .filter(crossing -> crossing.slopeMps2() > StandingStartRules.LEAST_SLOPE_MPS2
                                && crossing.timeS() <= samples.timeS(samples.size() - 1))
                        .ifPresent(crossing -> all.put(target, passed(begin, target, crossing)));
            }
        }
        return Collections.unmodifiableMap(all);
    }

    private Begin begin(int next) {
        double before = samples.value(next - 1);
        double share = (StandingStartRules.REST_MPS - before) / (samples.value(next) - before);
        double timeS = samples.timeS(next - 1) + share * (samples.timeS(next) - samples.timeS(next - 1));
        var near = samples.between(timeS - SLOPE_HALF_S, timeS + SLOPE_HALF_S);
        double slope = near.size() < 3
                ? 0
                : LineFit.through(near.timesS(), near.values()).slope();
        double speedSd = StrictMath.hypot(
                source.sigmaMps() / Math.sqrt(Math.max(1, near.size())), StandingStartRules.SLOW_NOISE_MPS);
        return new Begin(next, timeS, speedSd / Math.max(StandingStartRules.LEAST_SLOPE_MPS2, slope));
    }

    private int first(int from, double speedMps) {
        for (int i = from; i < samples.size(); i++) {
            if (samples.value(i) >= speedMps) {
                return i;
            }
        }
        return -1;
    }

    private boolean isWhole(int from, double untilS) {
        double most = StandingStartRules.GAP_STEPS * source.channel().medianStepS();
        for (int i = from; i < samples.size() && samples.timeS(i) <= untilS; i++) {
            if (samples.timeS(i) - samples.timeS(i - 1) > most) {
                return false;
            }
        }
        return true;
    }

    private Passed passed(Begin begin, Target target, Crossing crossing) {
        double crossingSd = crossing.sd(source.sigmaMps());
        double metres = 0;
        double timeS = begin.timeS();
        double speedMps = StandingStartRules.REST_MPS;
        for (int i = begin.next(); i < samples.size() && samples.timeS(i) < crossing.timeS(); i++) {
            metres += (speedMps + samples.value(i)) / 2 * (samples.timeS(i) - timeS);
            timeS = samples.timeS(i);
            speedMps = samples.value(i);
        }
        metres += (speedMps + target.speedMps()) / 2 * (crossing.timeS() - timeS);
        return new Passed(
                begin.timeS(),
                crossing.timeS() - begin.timeS(),
                StrictMath.hypot(begin.timeSd(), crossingSd),
                metres,
                StrictMath.hypot(
                        StandingStartRules.REST_MPS * begin.timeSd(),
                        crossing.distanceSd(target.speedMps(), crossingSd)));
    }
}
