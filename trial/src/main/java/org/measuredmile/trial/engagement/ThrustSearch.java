package org.measuredmile.trial.engagement;

import java.util.Locale;
import org.measuredmile.quantity.statistics.Projection;
import org.measuredmile.recording.Channel;

/// The search for one change of thrust. See [ThrustChange].
///
/// Constant and push are the same at every place of the grid: their directions are taken out of the samples once and
/// out
/// of each ramp, and what is left of the two is a line through nothing.
/// Source: partial regression by projection (Frisch and Waugh, Econometrica 1 (1933) 387-401, from memory).
final class ThrustSearch {
    private static final double GRID_S = 0.01;
    private static final int FEWEST = 30;
    /// A ramp that leaves less than this a sample beside the push is the push.
    private static final double ALIKE = 1e-4;
    private final Channel samples;
    private final double cranksS;
    private final double lastS;
    private final boolean comes;
    private final double[] constant;
    private final double[] push;
    private final double[] left;

    ThrustSearch(Channel acceleration, double cranksS, double untilS, boolean comes) {
        this.cranksS = cranksS;
        this.lastS = Math.min(untilS, cranksS + EngagementRules.AFTER_S);
        this.samples = acceleration.between(cranksS - EngagementRules.BEFORE_S, lastS);
        this.comes = comes;
        this.constant = Projection.constant(samples.size());
        this.push = Projection.unit(Projection.without(ramp(cranksS, EngagementRules.PUSH_S), constant));
        this.left = Projection.without(Projection.without(samples.values().clone(), constant), push);
    }

    /// One place of the grid: the squares left over and the height of the motor's ramp.
    private record Fit(double squares, double change) {}

    ThrustChange found() {
        if (samples.size() < FEWEST) {
            return new ThrustChange.Refused(String.format(
                    Locale.ROOT, "%d samples of acceleration around it, at least %d needed", samples.size(), FEWEST));
        }
        double step = GRID_S;
        int count = (int) Math.floor((lastS - 0.1 - cranksS) / step) + 1;
        double[][] squares = new double[EngagementRules.RAMPS_S.length][Math.max(0, count)];
        double best = Double.POSITIVE_INFINITY;
        Fit bestFit = new Fit(Double.POSITIVE_INFINITY, 0);
        for (int k = 0; k < squares.length; k++) {
            for (int i = 0; i < squares[k].length; i++) {
                var fit = fit(cranksS + i * step, EngagementRules.RAMPS_S[k]);
                boolean isRightWay = comes == fit.change() > 0;
                squares[k][i] = isRightWay ? fit.squares() : Double.POSITIVE_INFINITY;
                if (squares[k][i] < best) {
                    best = squares[k][i];
                    bestFit = fit;
                }
            }
        }
        if (!(best < Double.POSITIVE_INFINITY)) {
            return ThrustChange.weak(0, EngagementRules.LEAST_CHANGE_MPS2);
        }
        double variance = best / (samples.size() - 5);
        double size = Math.abs(bestFit.change());
        if (size < EngagementRules.LEAST_CHANGE_MPS2) {
            return ThrustChange.weak(size, EngagementRules.LEAST_CHANGE_MPS2);
        }
        // How far it stands out is told by the squares that it explains, wherever in the window it lies.
        double standsOut = Math.sqrt((Projection.dot(left, left) - best) / variance);
        return standsOut < EngagementRules.LEAST_SIGNIFICANCE
                ? ThrustChange.unclear(standsOut, EngagementRules.LEAST_SIGNIFICANCE)
                : weighed(squares, best, variance, bestFit.change());
    }

    /// Mean and spread of the begin and the end of the ramp over the grid, each place weighed by its likelihood.
    private ThrustChange.Found weighed(double[][] squares, double best, double variance, double change) {
        double sum = 0;
        double begin = 0;
        double beginSquares = 0;
        double end = 0;
        double endSquares = 0;
        for (int k = 0; k < squares.length; k++) {
            // The ramps of the list stand for unequal shares of what a ramp may be.
            double share = share(k);
            for (int i = 0; i < squares[k].length; i++) {
                double weight = share * StrictMath.exp(-(squares[k][i] - best) / (2 * variance));
                double beginS = i * GRID_S;
                double endS = beginS + EngagementRules.RAMPS_S[k];
                sum += weight;
                begin += weight * beginS;
                beginSquares += weight * beginS * beginS;
                end += weight * endS;
                endSquares += weight * endS * endS;
            }
        }
        double beginMean = begin / sum;
        double endMean = end / sum;
        double floor = GRID_S * GRID_S / 12;
        return new ThrustChange.Found(
                cranksS + beginMean,
                EngagementRules.WIDER_THAN_GRID
                        * Math.sqrt(Math.max(0, beginSquares / sum - beginMean * beginMean) + floor),
                cranksS + endMean,
                EngagementRules.WIDER_THAN_GRID * Math.sqrt(Math.max(0, endSquares / sum - endMean * endMean) + floor),
                change);
    }

    private static double share(int k) {
        double[] ramps = EngagementRules.RAMPS_S;
        double low = k == 0 ? 0 : (ramps[k - 1] + ramps[k]) / 2;
        double high = k == ramps.length - 1 ? ramps[k] : (ramps[k] + ramps[k + 1]) / 2;
        return high - low;
    }

    private Fit fit(double beginS, double rampS) {
        double[] own = Projection.without(Projection.without(ramp(beginS, rampS), constant), push);
        double square = Projection.dot(own, own);
        if (square < ALIKE * samples.size()) {
            return new Fit(Double.POSITIVE_INFINITY, 0);
        }
        double change = Projection.dot(own, left) / square;
        return new Fit(Math.max(0, Projection.dot(left, left) - change * change * square), change);
    }

    private double[] ramp(double beginS, double rampS) {
        double[] values = new double[samples.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.clamp((samples.timeS(i) - beginS) / rampS, 0, 1);
        }
        return values;
    }
}
