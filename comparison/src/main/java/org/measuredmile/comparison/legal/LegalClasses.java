package org.measuredmile.comparison.legal;

import java.util.List;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.recording.Finding;

/// Every class in force beside what is known of a bike, and what its own labels get wrong.
public record LegalClasses(List<ClassOutcome> outcomes, List<Finding> findings) {
    /// Goes with every outcome, on a page, in JSON, in a row of a table.
    public static final String CAUTION =
            "Local law decides, and it changes: each text is compared as it stood on its date. This is one bike's road "
                    + "measurement beside a text, no certificate and no legal advice; ask those who know the law where "
                    + "you ride.";

    public LegalClasses {
        outcomes = List.copyOf(outcomes);
        findings = List.copyOf(findings);
    }

    public static LegalClasses of(TestedBike bike) {
        var evidence = new Evidence(bike);
        var outcomes =
                LegalRules.inForce().stream().map(one -> outcome(evidence, one)).toList();
        return new LegalClasses(outcomes, LabelFindings.of(evidence, outcomes));
    }

    /// One class, in force or not.
    public static ClassOutcome outcome(TestedBike bike, LegalClass legalClass) {
        return outcome(new Evidence(bike), legalClass);
    }

    private static ClassOutcome outcome(Evidence evidence, LegalClass legalClass) {
        return ClassOutcome.of(
                legalClass,
                legalClass.rules().stream()
                        .map(rule -> RuleCheck.of(evidence, rule))
                        .toList());
    }
}
