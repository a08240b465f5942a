package org.measuredmile.trial.standingstart;

import java.util.EnumMap;
import java.util.Map;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;
import org.measuredmile.trial.standingstart.TracedStart.Reached;

/// The times and distances from a fitted start to each speed.
final class StartTimes {
    private final SpeedSource source;
    private final Channel samples;
    private final StartFit.Fitted fit;
    private final double cutEndS;

    StartTimes(SpeedSource source, Channel samples, StartFit.Fitted fit, double cutEndS) {
        this.source = source;
        this.samples = samples;
        this.fit = fit;
        this.cutEndS = cutEndS;
    }

    Map<Target, Reached> all() {
        var all = new EnumMap<Target, Reached>(Target.class);
        for (var target : Target.values()) {
            all.put(target, to(target));
        }
        return all;
    }

    private Reached to(Target target) {
        int first = firstAtOrAbove(target.speedMps());
        if (first < 0) {
            return below(target);
        }
        double gapS = longestStepS(first, target);
        if (gapS > StandingStartRules.GAP_STEPS * source.channel().medianStepS()) {
            return new Reached.No(
                    "gap of " + StandingStartWords.seconds(gapS) + " before " + target.words() + ", samples are "
                            + StandingStartWords.seconds(source.channel().medianStepS()) + " apart",
                    false);
        }
        var crossing = Crossing.of(samples, target.speedMps(), target.halfWindowS(), samples.timeS(first));
        boolean isBelow = TracedStart.highestMps(samples) < target.speedMps() - 2 * StandingStartRules.SLOW_NOISE_MPS;
        boolean isCrossed = crossing.isPresent() && crossing.get().timeS() <= samples.timeS(samples.size() - 1);
        boolean isFlat = isCrossed && !(crossing.get().slopeMps2() > StandingStartRules.LEAST_SLOPE_MPS2);
        if ((!isCrossed || isFlat) && isBelow) {
            return below(target);
        }
        if (!isCrossed) {
            return uncrossed(target, samples.timeS(first));
        }
        if (isFlat) {
            return flat(target, crossing.get().slopeMps2());
        }
        return reached(target, crossing.get());
    }

    private Reached below(Target target) {
        return new Reached.No(
                "did not reach " + target.words() + ": highest mean over 2 s "
                        + StandingStartWords.mph(TracedStart.highestMps(samples)),
                true);
    }

    /// No parabola crosses the speed: the run ended, or it went on nearly level.
    private Reached uncrossed(Target target, double firstS) {
        var near = samples.between(firstS - target.halfWindowS(), firstS + target.halfWindowS());
        boolean goesOn = samples.timeS(samples.size() - 1) >= firstS + target.halfWindowS();
        if (goesOn && near.size() >= Crossing.FEWEST_SAMPLES) {
            return flat(target, LineFit.through(near.timesS(), near.values()).slope());
        }
        return new Reached.No(
                "the run ends too soon after " + target.words() + ": at least " + Crossing.FEWEST_SAMPLES
                        + " samples within " + StandingStartWords.seconds(target.halfWindowS()) + " needed",
                false);
    }

    private static Reached flat(Target target, double slopeMps2) {
        return new Reached.No(
                "approaches " + target.words() + " too flatly: acceleration " + StandingStartWords.mps2(slopeMps2)
                        + ", more than " + StandingStartWords.mps2(StandingStartRules.LEAST_SLOPE_MPS2)
                        + " needed; its time is not defined to better than "
                        + StandingStartWords.seconds(
                                StandingStartRules.SLOW_NOISE_MPS / Math.max(0.01, Math.abs(slopeMps2))),
                false);
    }

    private Reached reached(Target target, Crossing crossing) {
        return new Reached.Yes(
                crossing,
                crossing.timeS() - fit.motionS(),
                crossing.timeS() - fit.rampS(),
                distanceM(target, crossing.timeS()),
                crossing.sd(source.sigmaMps()));
    }

    private int firstAtOrAbove(double speedMps) {
        for (int i = 0; i < samples.size(); i++) {
            if (samples.timeS(i) >= cutEndS && samples.value(i) >= speedMps) {
                return i;
            }
        }
        return -1;
    }

    private double longestStepS(int last, Target target) {
        double longest = 0;
        double untilS = samples.timeS(last) + target.halfWindowS();
        for (int i = 1; i < samples.size() && samples.timeS(i) <= untilS; i++) {
            if (samples.timeS(i - 1) >= cutEndS) {
                longest = Math.max(longest, samples.timeS(i) - samples.timeS(i - 1));
            }
        }
        return longest;
    }

    /// The model's way to the end of the fitted stretch, then speed integrated by trapezoids.
    private double distanceM(Target target, double crossingS) {
        double metres = fit.curve().distanceM(cutEndS - fit.motionS());
        double timeS = cutEndS;
        double speedMps = samples.value(samples.indexAtOrAfter(cutEndS));
        for (int i = samples.indexAtOrAfter(cutEndS) + 1; i < samples.size() && samples.timeS(i) < crossingS; i++) {
            metres += (speedMps + samples.value(i)) / 2 * (samples.timeS(i) - timeS);
            timeS = samples.timeS(i);
            speedMps = samples.value(i);
        }
        return metres + (speedMps + target.speedMps()) / 2 * (crossingS - timeS);
    }
}
