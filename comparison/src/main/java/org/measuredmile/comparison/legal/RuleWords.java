package org.measuredmile.comparison.legal;

import org.measuredmile.comparison.legal.LegalRule.Operator;

/// The words for an outcome: an open one is never worded as a pass or a fail.
public final class RuleWords {
    private RuleWords() {}

    /// What stands beside a class or a rule: `under the limit`, `over the limit`, `can't tell`, `not measured`;
    /// for what has no number, whether it is as the text asks.
    public static String of(LegalOutcome outcome, LegalRule rule) {
        boolean isNumber = rule.operator() == Operator.BELOW || rule.operator() == Operator.AT_MOST;
        return switch (outcome) {
            case WITHIN -> isNumber ? "under the limit" : "as the text asks";
            case OUTSIDE -> isNumber ? "over the limit" : "not as the text asks";
            case CANNOT_TELL -> "can’t tell";
            case NOT_MEASURED -> "not measured";
        };
    }

    /// How close a value lies to its limit.
    static String closeness(LegalOutcome outcome, LegalLimit limit, Beside beside) {
        String gap =
                limit.excess(beside).abs().toPlainString() + " " + limit.unit().symbol();
        return switch (outcome) {
            case WITHIN -> gap + " under " + limit.text() + ", with its whole interval";
            case OUTSIDE -> gap + " over " + limit.text() + ", with its whole interval";
            default -> limit.text() + " lies inside the interval, so the data accuse nobody and clear nobody";
        };
    }
}
