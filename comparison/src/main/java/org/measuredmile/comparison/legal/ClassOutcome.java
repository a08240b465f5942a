package org.measuredmile.comparison.legal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike.Result;

/// What the data say about one class, and which of its rules decided.
///
/// Shape: outside where any rule is; else can't tell where any rule is open; else not measured where any is; within
/// only
/// where every rule is. What was measured decides before what is fitted, and that before what is claimed.
public record ClassOutcome(
        LegalClass legalClass, LegalOutcome outcome, RuleOutcome decidedBy, List<RuleOutcome> rules) {
    private static final List<LegalOutcome> WEIGHT =
            List.of(LegalOutcome.OUTSIDE, LegalOutcome.CANNOT_TELL, LegalOutcome.NOT_MEASURED, LegalOutcome.WITHIN);

    public ClassOutcome {
        rules = List.copyOf(rules);
    }

    /// What one rule's evidence came to.
    ///
    /// Shape: `said` is one sentence with the numbers; `beside` the measured or claimed value in the rule's own
    /// unit; `limit` the limit that was applied; `also` the same quantity under other conditions; `result` the
    /// figure it rests on; `wouldDecide` what would settle an open one.
    public record RuleOutcome(
            LegalRule rule,
            LegalOutcome outcome,
            Basis basis,
            String said,
            Optional<Beside> beside,
            Optional<LegalLimit> limit,
            List<Also> also,
            Optional<Result> result,
            List<String> wouldDecide) {
        public RuleOutcome {
            also = List.copyOf(also);
            wouldDecide = List.copyOf(wouldDecide);
        }

        /// What was compared and what came of it, in one sentence.
        public String sentence() {
            return rule.measured().words() + ": " + said;
        }

        static RuleOutcome plain(LegalRule rule, LegalOutcome outcome, Basis basis, String said) {
            return new RuleOutcome(
                    rule, outcome, basis, said, Optional.empty(), rule.limit(), List.of(), Optional.empty(), List.of());
        }
    }

    /// What the answer to a rule rests on.
    public enum Basis {
        MEASURED("measured"),
        /// What the bike's folder says of it.
        DESCRIBED("as described"),
        /// A mark on the bike or its maker's word: never measured on the road.
        CLAIMED("as claimed, not measured"),
        NOTHING("nothing");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// The same quantity under other conditions.
    public record Also(String conditions, Beside value) {}

    static ClassOutcome of(LegalClass legalClass, List<RuleOutcome> rules) {
        var decided = rules.stream()
                .min(Comparator.comparingInt((RuleOutcome one) -> WEIGHT.indexOf(one.outcome()))
                        .thenComparing(RuleOutcome::basis))
                .orElseThrow();
        return new ClassOutcome(legalClass, decided.outcome(), decided, rules);
    }
}
