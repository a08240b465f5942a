package org.measuredmile.comparison.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.measuredmile.quantity.Interval;

/// The spreads under which the values are most likely, each with the interval that the likelihood leaves
/// it.
///
/// Shape: `spreads` in the order of the model's random factors, as standard deviations; 0 is an answer.
/// Their intervals hold every spread that the profile of the likelihood does not exclude at 95 %, and begin
/// at 0 where it does not exclude that.
/// Source: profile likelihood, drop of 3.841 (95 % of χ² with one degree of freedom); solved by the
/// optimisation library.
record RemlEstimate(
        List<Double> spreads, List<Interval> intervals95, double runSpread, double criterion, Reml.Fit fit) {
    private static final double DROP = 3.841458820694124;
    private static final double MOST = 1e3;
    private static final int EVALUATIONS = 4000;
    private static final int STEPS = 40;
    /// An interval is printed to two digits.
    private static final double CLOSE = 5e-4;

    RemlEstimate {
        spreads = List.copyOf(spreads);
        intervals95 = List.copyOf(intervals95);
    }

    static RemlEstimate of(MixedModel model) {
        var reml = new Reml(model);
        double[] best = best(reml, model.random().size(), -1, 0);
        var fit = reml.fit(best);
        double run = Math.sqrt(fit.runVariance());
        var spreads = new ArrayList<Double>();
        var intervals = new ArrayList<Interval>();
        for (int k = 0; k < best.length; k++) {
            spreads.add(best[k] * run);
            intervals.add(profile(reml, best, k, fit.criterion()));
        }
        return new RemlEstimate(spreads, intervals, run, fit.criterion(), fit);
    }

    /// The best ratios; with `held` of 0 and more, that one stays at `at`.
    private static double[] best(Reml reml, int count, int held, double at) {
        int free = held < 0 ? count : count - 1;
        double[] found =
                free == 0 ? new double[0] : free == 1 ? line(reml, held, at, count) : simplex(reml, count, held, at);
        return atZeroWhereNoWorse(reml, complete(found, count, held, at), held);
    }

    private static double[] complete(double[] free, int count, int held, double at) {
        double[] all = new double[count];
        int next = 0;
        for (int k = 0; k < count; k++) {
            all[k] = k == held ? at : Math.abs(free[next++]);
        }
        return all;
    }

    private static double[] line(Reml reml, int held, double at, int count) {
        // In the logarithm one search reaches ratios of every size.
        var found = new BrentOptimizer(1e-8, 1e-10)
                .optimize(
                        new MaxEval(EVALUATIONS),
                        GoalType.MINIMIZE,
                        new UnivariateObjectiveFunction(
                                log -> reml.criterion(complete(new double[] {StrictMath.exp(log)}, count, held, at))),
                        new SearchInterval(StrictMath.log(1e-4), StrictMath.log(MOST), 0));
        return new double[] {StrictMath.exp(found.getPoint())};
    }

    private static double[] simplex(Reml reml, int count, int held, double at) {
        int free = held < 0 ? count : count - 1;
        double[] start = new double[free];
        Arrays.fill(start, 1);
        for (int round = 0; round < 2; round++) {
            start = new SimplexOptimizer(new SimpleValueChecker(1e-13, 1e-11))
                    .optimize(
                            new MaxEval(EVALUATIONS),
                            new ObjectiveFunction(free1 -> reml.criterion(complete(free1, count, held, at))),
                            GoalType.MINIMIZE,
                            new InitialGuess(start),
                            new NelderMeadSimplex(free, 0.5))
                    .getPoint();
        }
        return start;
    }

    private static double[] atZeroWhereNoWorse(Reml reml, double[] ratios, int held) {
        double[] now = ratios.clone();
        for (int k = 0; k < now.length; k++) {
            if (k == held) {
                continue;
            }
            double[] without = now.clone();
            without[k] = 0;
            if (reml.criterion(without) <= reml.criterion(now) + 1e-7) {
                now = without;
            }
        }
        return now;
    }

    private static Interval profile(Reml reml, double[] best, int factor, double criterion) {
        double limit = criterion + DROP;
        double low = 0;
        if (held(reml, best, factor, 0) > limit) {
            low = cross(reml, best, factor, 0, best[factor], limit);
        }
        double beyond = Math.max(2 * best[factor], 0.5);
        while (beyond < MOST && held(reml, best, factor, beyond) <= limit) {
            beyond *= 2;
        }
        double high = cross(reml, best, factor, beyond, best[factor], limit);
        return new Interval(spread(reml, best, factor, low), spread(reml, best, factor, high));
    }

    private static double held(Reml reml, double[] best, int factor, double at) {
        return reml.criterion(best(reml, best.length, factor, at));
    }

    /// Where the profile passes the limit, between a ratio outside and one inside.
    private static double cross(Reml reml, double[] best, int factor, double outside, double inside, double limit) {
        double out = outside;
        double in = inside;
        for (int step = 0; step < STEPS && Math.abs(out - in) > CLOSE * (out + in); step++) {
            double middle = (out + in) / 2;
            if (held(reml, best, factor, middle) > limit) {
                out = middle;
            } else {
                in = middle;
            }
        }
        return (out + in) / 2;
    }

    private static double spread(Reml reml, double[] best, int factor, double ratio) {
        return ratio
                * Math.sqrt(reml.fit(best(reml, best.length, factor, ratio)).runVariance());
    }
}
