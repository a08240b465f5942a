package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.motion.ModelFit.Parameter;

/// The search for a stop by accelerometer and satellite speed. See [InertialStop].
final class InertialSearch {
    /// The mounting is looked for so far around the stop.
    private static final double AROUND_S = 40;
    private static final double BEFORE_S = 3;
    private static final double AFTER_S = 1;
    /// After a stop the bike rocks for so long; before the speed shows a start it has begun.
    private static final double ROCKS_S = 0.5;
    private static final double BEFORE_START_S = 0.6;
    private static final double BLOCK_S = 0.1;
    private static final double LONG_BLOCK_S = 0.5;
    /// What is known of any accelerometer on a bike before the speed speaks. House.
    private static final double SCALE_SD = 0.05;
    private static final double ZERO_SD = 0.08;
    private static final double LAG_SD = 0.15;
    private static final double FILTER_S = 0.25;
    private static final double FILTER_SD = 0.25;
    /// Least density of an accelerometer's slow errors, m²/s³. House.
    private static final double LEAST_DENSITY = 1e-4;
    /// A receiver's noise lasts a while, so that its samples count for fewer: of a standard deviation s of a
    /// sample, 0.58 s last 0.4 s. House.
    private static final double LASTING_SHARE = 0.58;
    private static final double NOISE_LASTS_S = 0.4;

    private static final int SATURATED_IN_A_ROW = 3;
    private static final double SATURATED_FROM_MPS2 = 3;

    private final Accelerations whole;
    private final Channel speed;
    private final double sigmaMps;
    private final Stops.Stop stop;

    InertialSearch(Accelerations accelerations, Channel speed, double sigmaMps, Stops.Stop stop) {
        this.whole = accelerations.between(stop.onsetS() - AROUND_S, stop.endS() + AROUND_S / 4);
        this.speed = speed;
        this.sigmaMps = sigmaMps;
        this.stop = stop;
    }

    InertialStop found() {
        if (stop.restForS() < InertialStop.REST_S - 1e-9) {
            return refused(
                    "at rest for %.2f s after the stop, at least %.2f s needed for the accelerometer's zero",
                    stop.restForS(), InertialStop.REST_S);
        }
        var around = speed.between(stop.onsetS() - AROUND_S, stop.endS());
        return switch (Mounting.of(whole, around)) {
            case Mounting.Refused(String reason) -> new InertialStop.Refused(reason);
            case Mounting.Known known -> mounted(known);
        };
    }

    private static InertialStop.Refused refused(String words, Object... values) {
        return new InertialStop.Refused(String.format(Locale.ROOT, words, values));
    }

    private InertialStop mounted(Mounting.Known mounting) {
        double onsetS = stop.onsetS() - mounting.lagS();
        double shownRestS = stop.restS() - mounting.lagS();
        var inside = whole.between(onsetS - BEFORE_S - 1, stop.endS() - mounting.lagS());
        var fault = recordingFault(inside, onsetS, shownRestS);
        if (!fault.isEmpty()) {
            return new InertialStop.Refused(fault);
        }
        var raw = inside.along(mounting.forward());
        double zeroFromS = shownRestS + ROCKS_S;
        double zeroToS = Math.max(zeroFromS + 0.2, stop.endS() - mounting.lagS() - BEFORE_START_S);
        double zero = new RunningIntegral(raw).mean(zeroFromS, Math.min(zeroToS, raw.timeS(raw.size() - 1)));
        var forward = less(raw, zero);
        var sum = new RunningIntegral(forward);
        double atRest = meanOfSum(sum, zeroFromS, zeroToS);
        double restS = rest(sum, atRest, onsetS, zeroFromS);
        if (Double.isNaN(restS)) {
            return refused("the accelerometer does not show this stop");
        }
        return fitted(mounting, forward, new Sum(sum, atRest, restS));
    }

    private record Sum(RunningIntegral forward, double atRestMps, double restS) {}

    private String recordingFault(Accelerations inside, double onsetS, double restS) {
        double stepS = whole.stepS();
        if (inside.size() < 2
                || inside.x().timeS(0) > onsetS - 1.5
                || inside.x().timeS(inside.size() - 1) < restS) {
            return "the accelerometer did not record the whole stop";
        }
        for (int i = 1; i < inside.size(); i++) {
            double gapS = inside.x().timeS(i) - inside.x().timeS(i - 1);
            if (gapS > Math.max(4 * stepS, 0.06)) {
                return String.format(Locale.ROOT, "gap of %.2f s in the acceleration", gapS);
            }
        }
        for (var axis : inside.between(onsetS, restS).axes()) {
            double at = saturatedAt(axis);
            if (!Double.isNaN(at)) {
                return String.format(
                        Locale.ROOT,
                        "saturated: %d equal readings in a row at the end of the range, %.2f m/s²",
                        SATURATED_IN_A_ROW,
                        at);
            }
        }
        return "";
    }

    /// The highest or lowest reading, where it comes several times in a row and far from the usual.
    private static double saturatedAt(Channel axis) {
        if (axis.isEmpty()) {
            return Double.NaN;
        }
        double[] sorted = axis.values().clone();
        Arrays.sort(sorted);
        double middle = sorted[sorted.length / 2];
        for (double end : new double[] {sorted[0], sorted[sorted.length - 1]}) {
            int row = 0;
            for (int i = 0; i < axis.size(); i++) {
                row = axis.value(i) == end ? row + 1 : 0;
                boolean atTheEnd = Math.abs(end - middle) > SATURATED_FROM_MPS2 || row > axis.size() / 3;
                if (row >= SATURATED_IN_A_ROW && atTheEnd) {
                    return end;
                }
            }
        }
        return Double.NaN;
    }

    private static Channel less(Channel channel, double by) {
        double[] values = channel.values().clone();
        for (int i = 0; i < values.length; i++) {
            values[i] -= by;
        }
        return new Channel(
                channel.kind(),
                channel.name(),
                channel.writtenUnit(),
                channel.source(),
                new Channel.Series(channel.timesS(), values));
    }

    /// What the acceleration has added up to once the rocking is over.
    private static double meanOfSum(RunningIntegral sum, double fromS, double toS) {
        return (sum.twice(toS) - sum.twice(fromS)) / (toS - fromS);
    }

    /// Where the speed reaches nothing on the line through its fall from 1.5 to 0.3 m/s.
    private static double rest(RunningIntegral sum, double atRest, double onsetS, double untilS) {
        double stepS = 0.01;
        double lowS = Double.NaN;
        for (double timeS = untilS; timeS > onsetS - 1; timeS -= stepS) {
            double speed = sum.once(timeS) - atRest;
            if (Double.isNaN(lowS) && speed >= 0.3) {
                lowS = timeS;
            }
            if (!Double.isNaN(lowS) && speed >= 1.5) {
                return lowS + (lowS - timeS) * 0.3 / 1.2;
            }
        }
        return Double.NaN;
    }

    private InertialStop fitted(Mounting.Known mounting, Channel forward, Sum sum) {
        double onsetS = stop.onsetS() - mounting.lagS();
        double[] edges = edges(onsetS, sum.restS());
        double density = density(forward.between(onsetS - 2, sum.restS()));
        var parameters = parameters(mounting, edges, density);
        var curve = new InertialCurve(sum.forward(), sum.atRestMps(), sum.restS(), edges, new double[0]);
        var samples = speed.between(
                Math.max(stop.onsetS() - BEFORE_S, edges[0] + mounting.lagS() + 0.5),
                sum.restS() + mounting.lagS() + AFTER_S);
        double shownAtRest = shownAtRest(samples);
        ModelFit.Model model = values -> {
            var moved = curve.with(values);
            double[] shown = new double[samples.size()];
            for (int i = 0; i < shown.length; i++) {
                double mean = Math.max(0, moved.shownMps(samples.timeS(i)));
                shown[i] = Math.sqrt(mean * mean + shownAtRest * shownAtRest);
            }
            return shown;
        };
        double sigma = sigmaMps * lasting(samples.medianStepS());
        return switch (ModelFit.fit(samples.values(), sigma, model, parameters)) {
            case ModelFit.Outcome.NotSettled _ -> refused("the fit of accelerometer and speed together did not settle");
            case ModelFit.Outcome.Settled settled -> judged(mounting, forward, curve, settled);
        };
    }

    /// How much wider a receiver's sample counts when its noise lasts.
    private static double lasting(double stepS) {
        double kept = StrictMath.exp(-stepS / NOISE_LASTS_S);
        double share = LASTING_SHARE * LASTING_SHARE;
        return Math.sqrt(1 - share + share * (1 + kept) / (1 - kept));
    }

    private static double shownAtRest(Channel samples) {
        double last = samples.timeS(samples.size() - 1);
        double median = Stops.median(samples, last - 0.5, last);
        return Double.isNaN(median) ? 0 : Math.min(median, Stops.REST_MPS);
    }

    private static double[] edges(double onsetS, double restS) {
        var edges = new ArrayList<Double>();
        double fineS = onsetS - 0.4;
        for (int k = (int) Math.ceil(BEFORE_S / LONG_BLOCK_S); k > 0; k--) {
            edges.add(fineS - k * LONG_BLOCK_S);
        }
        int fine = Math.max(1, (int) Math.round((restS - fineS) / BLOCK_S));
        for (int k = 0; k <= fine; k++) {
            edges.add(fineS + (restS - fineS) * k / fine);
        }
        return edges.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private List<Parameter> parameters(Mounting.Known mounting, double[] edges, double density) {
        var all = new ArrayList<Parameter>();
        all.add(Parameter.known("accelerometer's scale", 1, SCALE_SD, 0.5, 2));
        all.add(Parameter.known("accelerometer's zero", 0, ZERO_SD, -2, 2));
        all.add(Parameter.known(
                "receiver's lag", mounting.lagS(), LAG_SD, mounting.lagS() - 0.5, mounting.lagS() + 0.5));
        all.add(Parameter.known("receiver's filter", FILTER_S, FILTER_SD, 0.02, 0.9));
        for (int k = 0; k + 1 < edges.length; k++) {
            all.add(Parameter.known("error", 0, Math.sqrt(density / (edges[k + 1] - edges[k])), -10, 10));
        }
        return all;
    }

    /// Density of what shakes the acceleration from one tenth of a second to the next, by the median of its second
    /// differences, which a build-up hardly touches.
    private static double density(Channel forward) {
        var sum = new RunningIntegral(forward);
        int count = (int) Math.floor((sum.lastS() - sum.firstS()) / BLOCK_S);
        double[] means = new double[count];
        for (int i = 0; i < count; i++) {
            means[i] = sum.mean(sum.firstS() + i * BLOCK_S, sum.firstS() + (i + 1) * BLOCK_S);
        }
        double[] second = new double[Math.max(1, count - 2)];
        for (int i = 0; i + 2 < count; i++) {
            second[i] = Math.abs(means[i] - 2 * means[i + 1] + means[i + 2]);
        }
        Arrays.sort(second);
        double sd = 1.4826 * second[second.length / 2] / Math.sqrt(6);
        return Math.max(LEAST_DENSITY, BLOCK_S * sd * sd);
    }

    private InertialStop judged(
            Mounting.Known mounting, Channel forward, InertialCurve curve, ModelFit.Outcome.Settled settled) {
        if (settled.reducedChiSquare() > InertialStop.MOST_CHI_SQUARE) {
            return refused(
                    "accelerometer and speed disagree: reduced χ² %.1f, at most %.1f; the mounting gave way, or the "
                            + "receiver held its speed",
                    settled.reducedChiSquare(), InertialStop.MOST_CHI_SQUARE);
        }
        double scale = settled.values()[InertialCurve.SCALE];
        if (Math.abs(scale - 1) > InertialStop.MOST_SCALE_ERROR) {
            return refused("the accelerometer shows %.2f of the speed that was lost, 0.85 to 1.15 allowed", 1 / scale);
        }
        return switch (Ramp.of(forward, stop.onsetS() - mounting.lagS(), curve.restS())) {
            case Ramp.Refused(String reason) -> new InertialStop.Refused(reason);
            case Ramp.Known ramp ->
                new InertialStop.Known(
                        mounting,
                        ramp.onsetS(),
                        ramp.onsetSd(),
                        ramp.onsetFromDiveSd(),
                        ramp.buildUpS(),
                        ramp.buildUpSd(),
                        curve.with(settled.values()),
                        settled);
        };
    }
}
