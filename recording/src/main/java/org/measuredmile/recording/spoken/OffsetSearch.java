package org.measuredmile.recording.spoken;

import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.Interval;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.SpeedSource;

/// Searches every offset at which a clip can overlap a recording, and gives one only if it alone fits.
///
/// Each speed said is either that of the trace a lag before (with the display's errors and the lag's own scatter) or,
/// with a stated probability, anything at all; the product over all of them, against what a moment taken at random
/// would give, is how well an offset fits. Its mean over all offsets is the evidence that the two belong together;
/// where the same clip fits the trace run backwards nearly as well, it fits by chance.
///
/// Unit: seconds, metres per second.
final class OffsetSearch {
    private static final int FEWEST = 4;
    private static final double NEIGHBOURS_S = 4;
    private static final double ONE_ALONE = 0.95;
    private static final double LOG_EVIDENCE = StrictMath.log(1000);
    private static final double LOG_BETTER_THAN_CHANCE = StrictMath.log(100);
    private static final double AGREEING_SHARE = 0.4;
    private static final double LONGEST_S = 12 * 3600.0;
    private static final double COVERING_95 = 1.959964;

    private final List<SaidSpeed> said;
    private final SpeedSource speed;

    OffsetSearch(List<SaidSpeed> said, SpeedSource speed) {
        this.said = said;
        this.speed = speed;
    }

    CameraOffset find() {
        if (said.size() < FEWEST) {
            return none(
                    "too-few-speeds",
                    said.size() + " speeds were said; " + FEWEST + " or more are needed to set the clip's clock",
                    "say the speed more often, at different speeds");
        }
        double firstS = said.stream().mapToDouble(SaidSpeed::timeS).min().orElseThrow();
        double lastS = said.stream().mapToDouble(SaidSpeed::timeS).max().orElseThrow();
        Channel channel = speed.channel();
        if (lastS - firstS > LONGEST_S || channel.timeS(channel.size() - 1) - channel.timeS(0) > LONGEST_S) {
            return none("too-long", "the clip or the recording is longer than 12 h", "cut it into parts");
        }
        TraceTable trace = TraceTable.of(speed);
        Fits fits = fits(trace, firstS, lastS);
        Fits backwards = fits(trace.reversed(), firstS, lastS);
        return judged(fits, backwards);
    }

    private static CameraOffset.NotFound none(String code, String message, String remedy) {
        return new CameraOffset.NotFound(code, message, remedy, List.of());
    }

    /// How well each shift fits, as the logarithm against chance; a shift is an offset less the lag.
    private record Fits(double fromS, double[] logRatio) {
        double shiftS(int index) {
            return fromS + index * TraceTable.STEP_S;
        }

        int best() {
            int best = 0;
            for (int i = 1; i < logRatio.length; i++) {
                best = logRatio[i] > logRatio[best] ? i : best;
            }
            return best;
        }

        /// The best of those that are no neighbours of another.
        int bestBeside(int one) {
            int best = -1;
            for (int i = 0; i < logRatio.length; i++) {
                boolean beside = Math.abs(i - one) * TraceTable.STEP_S > NEIGHBOURS_S;
                best = beside && (best < 0 || logRatio[i] > logRatio[best]) ? i : best;
            }
            return best;
        }

        double logEvidence() {
            double most = logRatio[best()];
            double sum = 0;
            for (double one : logRatio) {
                sum += StrictMath.exp(one - most);
            }
            return most + StrictMath.log(sum / logRatio.length);
        }
    }

    private Fits fits(TraceTable trace, double firstS, double lastS) {
        double fromS = trace.fromS() - lastS;
        double spanS = trace.toS() - firstS - fromS;
        double[] logRatio = new double[(int) Math.floor(spanS / TraceTable.STEP_S) + 1];
        for (SaidSpeed one : said) {
            double[] logOne = logRatioOf(one, trace);
            long first = Math.round((one.timeS() + fromS - trace.fromS()) / TraceTable.STEP_S);
            for (int i = 0; i < logRatio.length; i++) {
                long at = first + i;
                logRatio[i] += at >= 0 && at < logOne.length ? logOne[(int) at] : 0;
            }
        }
        return new Fits(fromS, logRatio);
    }

    /// For one speed said, how well each moment of the trace fits it, against a moment at random; 0 where the trace
    /// has nothing to say.
    private double[] logRatioOf(SaidSpeed one, TraceTable trace) {
        double[] density = blurred(densities(one, trace));
        double sum = 0;
        int count = 0;
        for (double each : density) {
            if (!Double.isNaN(each)) {
                sum += each;
                count++;
            }
        }
        double chance = sum / Math.max(1, count);
        double[] log = new double[density.length];
        for (int i = 0; i < log.length; i++) {
            log[i] = Double.isNaN(density[i]) ? 0 : StrictMath.log(density[i] / chance);
        }
        return log;
    }

    private double[] densities(SaidSpeed one, TraceTable trace) {
        double sigma = one.sigmaMps(speed);
        double most = 1;
        for (double mps : trace.mps()) {
            most = Double.isNaN(mps) ? most : Math.max(most, mps);
        }
        double anything = one.wrongShare() / (most + 2);
        double[] density = new double[trace.mps().length];
        for (int i = 0; i < density.length; i++) {
            double away = (trace.mps()[i] - one.mps()) / sigma;
            density[i] = (1 - one.wrongShare()) * StrictMath.exp(-away * away / 2) / (sigma * Math.sqrt(2 * Math.PI))
                    + anything;
        }
        return density;
    }

    /// Spread over the scatter of the lag from remark to remark.
    private static double[] blurred(double[] density) {
        int reach = (int) Math.round(2.5 * SpeechLag.EACH_S / TraceTable.STEP_S);
        double[] weight = new double[reach + 1];
        for (int i = 0; i <= reach; i++) {
            double away = i * TraceTable.STEP_S / SpeechLag.EACH_S;
            weight[i] = StrictMath.exp(-away * away / 2);
        }
        double[] blurred = new double[density.length];
        for (int i = 0; i < density.length; i++) {
            double sum = 0;
            double weights = 0;
            for (int j = Math.max(0, i - reach); j <= Math.min(density.length - 1, i + reach); j++) {
                if (!Double.isNaN(density[j])) {
                    sum += weight[Math.abs(j - i)] * density[j];
                    weights += weight[Math.abs(j - i)];
                }
            }
            blurred[i] = Double.isNaN(density[i]) ? Double.NaN : sum / weights;
        }
        return blurred;
    }

    private CameraOffset judged(Fits fits, Fits backwards) {
        double evidence = fits.logEvidence();
        if (evidence < LOG_EVIDENCE || evidence < backwards.logEvidence() + LOG_BETTER_THAN_CHANCE) {
            return none(
                    "no-offset-fits",
                    "the speeds said fit the recording at no time better than they would by chance",
                    "check that clip and recording are of the same ride; say speeds that differ");
        }
        int best = fits.best();
        double share = shareAround(fits, best);
        if (share < ONE_ALONE) {
            double one = fits.shiftS(best) + SpeechLag.MEAN_S;
            double other = fits.shiftS(fits.bestBeside(best)) + SpeechLag.MEAN_S;
            return new CameraOffset.NotFound(
                    "two-offsets-fit",
                    String.format(Locale.ROOT, "two offsets fit: %+.1f s and %+.1f s", one, other),
                    "say the speed more often, or set the offset in recordings.csv",
                    List.of(one, other));
        }
        return found(fits, best);
    }

    private static double shareAround(Fits fits, int best) {
        double all = 0;
        double near = 0;
        for (int i = 0; i < fits.logRatio().length; i++) {
            double weight = StrictMath.exp(fits.logRatio()[i] - fits.logRatio()[best]);
            all += weight;
            near += Math.abs(i - best) * TraceTable.STEP_S <= NEIGHBOURS_S ? weight : 0;
        }
        return near / all;
    }

    private CameraOffset found(Fits fits, int best) {
        double sum = 0;
        double first = 0;
        double second = 0;
        int reach = (int) Math.round(NEIGHBOURS_S / TraceTable.STEP_S);
        int to = Math.min(fits.logRatio().length - 1, best + reach);
        for (int i = Math.max(0, best - reach); i <= to; i++) {
            double weight = StrictMath.exp(fits.logRatio()[i] - fits.logRatio()[best]);
            double away = (i - best) * TraceTable.STEP_S;
            sum += weight;
            first += weight * away;
            second += weight * away * away;
        }
        double mean = first / sum;
        double variance = Math.max(second / sum - mean * mean, TraceTable.STEP_S * TraceTable.STEP_S / 12);
        double offsetS = fits.shiftS(best) + mean + SpeechLag.MEAN_S;
        double standardS = Math.sqrt(variance + SpeechLag.COMMON_S * SpeechLag.COMMON_S);
        int agreeing = agreeing(offsetS);
        if (agreeing < FEWEST || agreeing < AGREEING_SHARE * said.size()) {
            return none(
                    "no-offset-fits",
                    agreeing + " of " + said.size() + " speeds said agree with the recording at the best offset",
                    "check that clip and recording are of the same ride");
        }
        return new CameraOffset.Found(
                offsetS, standardS, Interval.around(offsetS, COVERING_95 * standardS), agreeing, said.size());
    }

    private int agreeing(double offsetS) {
        var at = new TraceWindow(TraceTable.of(speed), offsetS, SpeechLag.EACH_S);
        return (int) said.stream()
                .filter(one -> at.near(one.timeS()).agreesWith(one.mps(), one.sigmaMps(speed)))
                .count();
    }
}
