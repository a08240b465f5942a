package org.measuredmile.comparison.verdict;

import java.util.OptionalDouble;
import org.measuredmile.comparison.spec.Wanted;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.trial.Better;

/// A measured value held against what a claim asks for.
///
/// Shape: `measured` and `limit` are the decimals that were compared, in the claim's unit; `probability` is
/// that of the claim being true, empty where a single value has no good side.
public record Judgement(Verdict verdict, OptionalDouble probability, Stated measured, Limit limit) {
    /// What is asked, of a quantity of which one way is better, in a unit.
    ///
    /// Unit: `toleranceSi` as a difference in SI; empty where the claim states none.
    record Asked(Wanted wanted, Better better, Unit unit, OptionalDouble toleranceSi) {
        /// The same claim as an interval on one or both sides, in SI.
        ///
        /// The end of a range that the maker would be held to is the one on the bad side; a claim
        /// without a better side stands as it is written.
        private double[] boundsSi() {
            boolean isLess = better == Better.LESS;
            boolean isMore = better == Better.MORE;
            return switch (wanted) {
                case Wanted.Exactly(double si) -> {
                    double tolerance = toleranceSi.orElse(0);
                    yield new double[] {
                        isLess ? Double.NEGATIVE_INFINITY : si - tolerance,
                        isMore ? Double.POSITIVE_INFINITY : si + tolerance
                    };
                }
                case Wanted.Between(double low, double high) ->
                    new double[] {isLess ? Double.NEGATIVE_INFINITY : low, isMore ? Double.POSITIVE_INFINITY : high};
                case Wanted.UpTo(double si) ->
                    isMore ? new double[] {si, Double.POSITIVE_INFINITY} : new double[] {Double.NEGATIVE_INFINITY, si};
                case Wanted.AtLeast(double si) -> new double[] {si, Double.POSITIVE_INFINITY};
                case Wanted.AtMost(double si) -> new double[] {Double.NEGATIVE_INFINITY, si};
            };
        }

        Limit limit() {
            double[] bounds = boundsSi();
            if (bounds[0] == Double.NEGATIVE_INFINITY) {
                return new Limit.AtMost(Stated.decimal(bounds[1], unit));
            }
            if (bounds[1] == Double.POSITIVE_INFINITY) {
                return new Limit.AtLeast(Stated.decimal(bounds[0], unit));
            }
            return bounds[0] == bounds[1]
                    ? new Limit.Exactly(Stated.decimal(bounds[0], unit))
                    : new Limit.Between(Stated.decimal(bounds[0], unit), Stated.decimal(bounds[1], unit));
        }

        OptionalDouble probability(double value, Uncertainty known) {
            double[] bounds = boundsSi();
            if (bounds[0] == bounds[1]) {
                return OptionalDouble.empty();
            }
            double below = bounds[1] == Double.POSITIVE_INFINITY ? 1 : Conformance.atMost(value, known, bounds[1]);
            double above = bounds[0] == Double.NEGATIVE_INFINITY ? 0 : 1 - Conformance.atLeast(value, known, bounds[0]);
            return OptionalDouble.of(Math.clamp(below - above, 0, 1));
        }

        /// How far a value lies from the nearest end of the claim, in SI.
        double distanceSi(double value) {
            double[] bounds = boundsSi();
            return Math.min(Math.abs(value - bounds[0]), Math.abs(value - bounds[1]));
        }

        /// By how much a value misses the claim, negative where it is under it; 0 inside.
        double missedBySi(double value) {
            double[] bounds = boundsSi();
            return value < bounds[0] ? value - bounds[0] : value > bounds[1] ? value - bounds[1] : 0;
        }

        Judgement judge(double value, Uncertainty known) {
            var stated = Stated.of(value, known.interval95(), unit);
            return new Judgement(DecisionRule.judge(stated, limit()), probability(value, known), stated, limit());
        }
    }
}
