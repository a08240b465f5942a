package org.measuredmile.comparison.verdict;

import java.math.BigDecimal;

/// The rule by which a measured value is called against a claim.
///
/// Meets when the whole 95 % interval of any day lies on the claim's good side, ends included; falls short when
/// the whole interval lies on its bad side; can't tell otherwise. Both calls are guarded: a claim called so is
/// so with at least 97.5 % probability, one-sided. Compared as decimals, as printed, never as binary fractions.
/// The claim is taken as written; its own rounding widens nothing.
///
/// Source: JCGM 106:2012, 8.3.2 (guarded acceptance) and 8.3.3 (guarded rejection), guard band w = U.
public final class DecisionRule {
    /// The rule in words, for whoever reads a verdict.
    public static final String WORDS = "A claim is met when the whole 95 % interval of any day lies on its good side, "
            + "ends included; it falls short when the whole interval lies on its bad side; otherwise the data can’t "
            + "tell. Either call is wrong at most once in forty (JCGM 106:2012, 8.3, guard band U). Numbers are "
            + "compared as decimals, as printed; a claim is taken as written.";

    private DecisionRule() {}

    /// What the rule says.
    public static Verdict judge(Stated measured, Limit limit) {
        return switch (limit) {
            case Limit.AtMost(var most) -> atMost(measured, most);
            case Limit.AtLeast(var least) -> atLeast(measured, least);
            case Limit.Between(var low, var high) -> between(measured, low, high);
            case Limit.Exactly(var value) ->
                measured.low().compareTo(value) > 0 || measured.high().compareTo(value) < 0
                        ? Verdict.FALLS_SHORT
                        : Verdict.CANNOT_TELL;
        };
    }

    private static Verdict atMost(Stated measured, BigDecimal most) {
        if (measured.high().compareTo(most) <= 0) {
            return Verdict.MEETS;
        }
        return measured.low().compareTo(most) > 0 ? Verdict.FALLS_SHORT : Verdict.CANNOT_TELL;
    }

    private static Verdict atLeast(Stated measured, BigDecimal least) {
        if (measured.low().compareTo(least) >= 0) {
            return Verdict.MEETS;
        }
        return measured.high().compareTo(least) < 0 ? Verdict.FALLS_SHORT : Verdict.CANNOT_TELL;
    }

    private static Verdict between(Stated measured, BigDecimal low, BigDecimal high) {
        if (measured.low().compareTo(low) >= 0 && measured.high().compareTo(high) <= 0) {
            return Verdict.MEETS;
        }
        return measured.high().compareTo(low) < 0 || measured.low().compareTo(high) > 0
                ? Verdict.FALLS_SHORT
                : Verdict.CANNOT_TELL;
    }
}
