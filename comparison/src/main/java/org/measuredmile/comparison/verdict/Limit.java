package org.measuredmile.comparison.verdict;

import java.math.BigDecimal;

/// What a claim asks of a quantity, as decimals in the claim's own unit.
public sealed interface Limit {
    /// No more than this.
    record AtMost(BigDecimal limit) implements Limit {}

    /// No less than this.
    record AtLeast(BigDecimal limit) implements Limit {}

    /// Neither less than the one nor more than the other.
    record Between(BigDecimal low, BigDecimal high) implements Limit {
        public Between {
            if (low.compareTo(high) > 0) {
                throw new IllegalArgumentException("from " + low + " to " + high + " has no inside");
            }
        }
    }

    /// This value, where neither side of it is better: it can be contradicted, and never be shown to hold.
    record Exactly(BigDecimal value) implements Limit {}
}
