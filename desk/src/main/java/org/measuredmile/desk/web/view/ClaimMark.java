package org.measuredmile.desk.web.view;

import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.Verdict;

/// A verdict as a page sets it: word and mark, what is claimed, and where more is said.
///
/// Shape: `kind` is `meets`, `short` or `cant`, for the look and for the mark of that name.
public record ClaimMark(String kind, String word, String said, String href) {
    static ClaimMark of(String bike, ClaimVerdict verdict) {
        return new ClaimMark(
                kind(verdict.verdict()),
                verdict.verdict().words(),
                "“" + verdict.claim().words() + "”",
                Paths.claims(bike) + "#" + anchor(verdict));
    }

    static String kind(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "short";
            case CANNOT_TELL -> "cant";
        };
    }

    static String anchor(ClaimVerdict verdict) {
        return "claim-" + verdict.item().id();
    }
}
