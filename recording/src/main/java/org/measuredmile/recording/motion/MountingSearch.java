package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.recording.Channel;

/// The search for a mounting. See [Mounting].
final class MountingSearch {
    private static final double HALF_S = 0.3;
    private static final double MOST_LAG_S = 2;
    private static final double COARSE_S = 0.1;
    private static final double FINE_S = 0.01;
    private static final int FEWEST = 20;
    private static final double REST_S = 1.0;
    /// After a stop the bike rocks; before the speed shows a start it has begun.
    private static final double AFTER_STOP_S = 0.4;
    private static final double BEFORE_START_S = 0.8;
    /// A weaker change of speed says little of the direction.
    private static final double LEAST_RATE_MPS2 = 0.4;

    private final Accelerations accelerations;
    private final Channel speed;
    private final RunningIntegral[] axes;

    MountingSearch(Accelerations accelerations, Channel speed) {
        this.accelerations = accelerations;
        this.speed = speed;
        this.axes = new RunningIntegral[3];
    }

    /// A direction and the share of the rate's variance that goes with it at a lag.
    private record Fit(double[] direction, double share) {}

    Mounting found() {
        if (accelerations.size() < FEWEST || speed.size() < FEWEST) {
            return new Mounting.Refused("too few samples of acceleration or speed");
        }
        if (!(accelerations.stepS() <= 1.05 / Accelerations.LEAST_RATE_HZ)) {
            return new Mounting.Refused(String.format(
                    Locale.ROOT,
                    "acceleration sampled every %.2f s, at most %.2f s needed",
                    accelerations.stepS(),
                    1 / Accelerations.LEAST_RATE_HZ));
        }
        for (int axis = 0; axis < 3; axis++) {
            axes[axis] = new RunningIntegral(accelerations.axes()[axis]);
        }
        var rates = rates();
        if (rates.size() < FEWEST / 2) {
            return new Mounting.Refused("the speed hardly changes, so forward cannot be told");
        }
        double lagS = best(rates, -MOST_LAG_S, MOST_LAG_S, COARSE_S);
        lagS = best(rates, lagS - COARSE_S, lagS + COARSE_S, FINE_S);
        var fit = fit(rates, lagS);
        return oriented(fit, lagS);
    }

    /// Time in the middle and rate of speed, over a little more than half a second.
    private record Rate(double timeS, double mps2) {}

    private List<Rate> rates() {
        var channel = Lag.rate(speed, 2 * HALF_S);
        var rates = new ArrayList<Rate>();
        for (int i = 0; i < channel.size(); i++) {
            double timeS = channel.timeS(i);
            boolean inside = timeS - MOST_LAG_S - HALF_S >= axes[0].firstS() && timeS + HALF_S <= axes[0].lastS();
            if (inside && Math.abs(channel.value(i)) >= LEAST_RATE_MPS2) {
                rates.add(new Rate(timeS, channel.value(i)));
            }
        }
        return rates;
    }

    private double best(List<Rate> rates, double fromS, double toS, double stepS) {
        double bestS = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; fromS + i * stepS <= toS + 1e-9; i++) {
            double share = fit(rates, fromS + i * stepS).share;
            if (share > most) {
                most = share;
                bestS = fromS + i * stepS;
            }
        }
        return bestS;
    }

    /// The direction in which accelerations go with the rate of speed, and how well they do along it. Each axis is
    /// taken against the rate and not the rate against the axes: an axis that hardly moves would say anything.
    private Fit fit(List<Rate> rates, double lagS) {
        double halfS = halfS();
        int count = rates.size();
        double[][] means = new double[3][count];
        double[] centre = new double[3];
        double rateCentre = 0;
        for (int i = 0; i < count; i++) {
            double timeS = rates.get(i).timeS - lagS;
            for (int axis = 0; axis < 3; axis++) {
                means[axis][i] = axes[axis].mean(timeS - halfS, timeS + halfS);
                centre[axis] += means[axis][i] / count;
            }
            rateCentre += rates.get(i).mps2 / count;
        }
        double[] direction = new double[3];
        double rateSquares = 0;
        for (int i = 0; i < count; i++) {
            double rate = rates.get(i).mps2 - rateCentre;
            rateSquares += rate * rate;
            for (int axis = 0; axis < 3; axis++) {
                direction[axis] += rate * (means[axis][i] - centre[axis]);
            }
        }
        double[] forward = unit(direction);
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double along = 0;
            for (int axis = 0; axis < 3; axis++) {
                along += forward[axis] * (means[axis][i] - centre[axis]);
            }
            squares += along * along;
        }
        double product = dot(direction, forward);
        return new Fit(forward, squares > 0 && rateSquares > 0 ? product * product / squares / rateSquares : 0);
    }

    /// Half the time over which [Lag#rate] takes its differences.
    private double halfS() {
        double stepS = speed.medianStepS();
        return Math.max(1, Math.round(2 * HALF_S / stepS / 2)) * stepS;
    }

    private Mounting oriented(Fit fit, double lagS) {
        var rests = rests(lagS);
        if (rests.isEmpty()) {
            return new Mounting.Refused(
                    String.format(Locale.ROOT, "no rest of %.1f s that shows gravity alone", REST_S));
        }
        double[] sum = new double[3];
        for (var rest : rests) {
            double turned = Math.toDegrees(angle(rest, rests.getLast()));
            if (turned > Mounting.MOST_TURN_DEGREES) {
                return new Mounting.Refused(String.format(
                        Locale.ROOT,
                        "mounting moved: gravity turned by %.1f° from one rest to another, at most %.1f° allowed",
                        turned,
                        Mounting.MOST_TURN_DEGREES));
            }
            for (int axis = 0; axis < 3; axis++) {
                sum[axis] += rest[axis];
            }
        }
        if (fit.share < Mounting.LEAST_SHARE) {
            return new Mounting.Refused(String.format(
                    Locale.ROOT,
                    "the accelerations explain %.0f %% of the changes of speed, at least %.0f %% needed: "
                            + "not one ride, not one clock, or not firmly mounted",
                    100 * Math.max(0, fit.share),
                    100 * Mounting.LEAST_SHARE));
        }
        double[] up = unit(sum);
        double along = dot(fit.direction, up);
        double[] level = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            level[axis] = fit.direction[axis] - along * up[axis];
        }
        return new Mounting.Known(up, unit(level), lagS, fit.share);
    }

    /// The mean accelerations of each rest, directions and all.
    private List<double[]> rests(double lagS) {
        var rests = new ArrayList<double[]>();
        int from = -1;
        for (int i = 0; i <= speed.size(); i++) {
            boolean stands = i < speed.size() && speed.value(i) <= Stops.REST_MPS;
            if (stands) {
                from = from < 0 ? i : from;
            } else if (from >= 0) {
                double fromS = speed.timeS(from) - lagS + AFTER_STOP_S;
                double toS = speed.timeS(i - 1) - lagS;
                boolean last = i == speed.size();
                double endS = last ? toS : Math.max(fromS + 0.2, toS - BEFORE_START_S);
                boolean recorded = fromS >= axes[0].firstS() && endS <= axes[0].lastS();
                if (speed.timeS(i - 1) - speed.timeS(from) >= REST_S - 1e-9 && recorded && endS > fromS) {
                    rests.add(new double[] {
                        axes[0].mean(fromS, endS), axes[1].mean(fromS, endS), axes[2].mean(fromS, endS)
                    });
                }
                from = -1;
            }
        }
        return rests;
    }

    private static double angle(double[] a, double[] b) {
        double cosine = dot(unit(a), unit(b));
        return StrictMath.acos(Math.clamp(cosine, -1, 1));
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] unit(double[] a) {
        double length = Math.max(Double.MIN_NORMAL, Math.sqrt(dot(a, a)));
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }
}
