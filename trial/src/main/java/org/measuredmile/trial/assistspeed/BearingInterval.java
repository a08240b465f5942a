package org.measuredmile.trial.assistspeed;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.RealDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Uncertainty;

/// The 95 % interval of a speed that carries a wind of known strength and unknown bearing.
///
/// The wind's part is A·cos φ with φ uniform: it is bounded, and treating it as normal would make the interval a third
/// too wide where it dominates. What else is in the budget is t-distributed; the two are convolved by the trapezoidal
/// rule over φ, which is exact for smooth periodic integrands.
/// Source: JCGM 101:2008, 5.3.3 (propagation of distributions), 6.4.6 (arcsine distribution).
final class BearingInterval {
    private static final int POINTS = 64;
    private static final double NORMAL_FROM = 1e8;

    private BearingInterval() {}

    /// The budget's uncertainty around a value; its own where no wind of unknown bearing is in it.
    static Uncertainty around(Budget budget, double value) {
        var along = budget.contributions().stream()
                .filter(part -> part.input().equals(WindPart.ALONG))
                .findFirst();
        if (along.isEmpty() || along.get().standardUncertainty() == 0) {
            return budget.around(value);
        }
        double amplitude = Math.sqrt(2) * along.get().standardUncertainty();
        var rest = new Budget(budget.contributions().stream()
                .filter(part -> !part.equals(along.get()))
                .toList());
        double halfWidth = halfWidth(amplitude, rest.standardUncertainty(), rest.effectiveDegreesOfFreedom());
        return new Uncertainty(
                budget.standardUncertainty(), budget.effectiveDegreesOfFreedom(), Interval.around(value, halfWidth));
    }

    /// The half-width that holds 95 % of A·cos φ plus a scaled t variable, by bisection to a millionth.
    static double halfWidth(double amplitude, double scale, double degreesOfFreedom) {
        RealDistribution rest =
                degreesOfFreedom > NORMAL_FROM ? new NormalDistribution() : new TDistribution(degreesOfFreedom);
        DoubleUnaryOperator held = h -> {
            double sum = 0;
            for (int i = 0; i < POINTS; i++) {
                double shift = amplitude * StrictMath.cos(2 * Math.PI * (i + 0.5) / POINTS);
                sum += rest.cumulativeProbability((h - shift) / scale)
                        - rest.cumulativeProbability((-h - shift) / scale);
            }
            return sum / POINTS;
        };
        double low = 0;
        double high = amplitude + 14 * scale;
        while (high - low > 1e-6 * high) {
            double middle = (low + high) / 2;
            if (held.applyAsDouble(middle) < 0.95) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
