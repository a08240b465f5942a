package org.measuredmile.comparison.legal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.measuredmile.comparison.legal.ClassOutcome.Basis;
import org.measuredmile.comparison.legal.ClassOutcome.RuleOutcome;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.day.SpecLine;

/// Where a bike's own label names a class whose rules the measurement lies outside of.
///
/// Shape: a label is the spec line `class-label`; what was seen on the bike goes before what its page claims. Only what
/// lies beyond a limit by the guard band contradicts; what is claimed against it is a note.
final class LabelFindings {
    static final String CONTRADICTS = "label-contradicts";
    static final String DISAGREES = "label-and-claim-disagree";

    private LabelFindings() {}

    static List<Finding> of(Evidence evidence, List<ClassOutcome> outcomes) {
        var findings = new ArrayList<Finding>();
        for (var line : evidence.labels()) {
            String label = line.seen().isBlank() ? line.claimed() : line.seen();
            of(line, label, outcomes, findings);
        }
        return findings;
    }

    private static void of(SpecLine line, String label, List<ClassOutcome> outcomes, List<Finding> findings) {
        // One measurement contradicts a label once, however many texts know the class by that name.
        Map<String, List<ClassOutcome>> bySaid = new LinkedHashMap<>();
        Map<String, RuleOutcome> rules = new LinkedHashMap<>();
        for (var outcome : outcomes) {
            if (names(label, outcome.legalClass())) {
                for (var rule : outcome.rules()) {
                    if (rule.outcome() == LegalOutcome.OUTSIDE && rule.basis() != Basis.DESCRIBED) {
                        String said = rule.said() + "\n" + rule.rule().limitWords();
                        bySaid.computeIfAbsent(said, _ -> new ArrayList<>()).add(outcome);
                        rules.putIfAbsent(said, rule);
                    }
                }
            }
        }
        rules.forEach((said, rule) -> findings.add(finding(line, label, rule, bySaid.getOrDefault(said, List.of()))));
    }

    private static Finding finding(SpecLine line, String label, RuleOutcome rule, List<ClassOutcome> classes) {
        String where = line.seen().isBlank() ? "claimed" : "on the bike";
        String texts = String.join(
                "; ",
                classes.stream()
                        .map(one -> one.legalClass().jurisdiction() + ", "
                                + one.legalClass().section())
                        .toList());
        String message = "the label " + where + " says “" + label.strip() + "”, which asks: "
                + rule.rule().asks() + " (" + texts + "); "
                + rule.rule().measured().words() + ": " + rule.said();
        boolean isMeasured = rule.basis() == Basis.MEASURED;
        return isMeasured
                ? Finding.warning(
                        CONTRADICTS,
                        line.place(),
                        message,
                        "look at the label and its photo again, then put both to the maker. " + LegalClasses.CAUTION)
                : Finding.note(DISAGREES, line.place(), message + ". " + LegalClasses.CAUTION);
    }

    /// Whether a label calls a class by one of its names.
    static boolean names(String label, LegalClass legalClass) {
        String plain = label.toLowerCase(Locale.ROOT).replace('-', ' ');
        return legalClass.labels().stream()
                .map(name ->
                        Pattern.compile("(?<![\\p{L}\\d])" + Pattern.quote(name.replace('-', ' ')) + "(?![\\p{L}\\d])"))
                .anyMatch(name -> name.matcher(plain).find());
    }
}
