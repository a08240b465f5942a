package org.measuredmile.desk.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.measuredmile.comparison.legal.ClassOutcome;
import org.measuredmile.comparison.legal.ClassOutcome.RuleOutcome;
import org.measuredmile.comparison.legal.LegalClasses;

/// A bike's legal classes as a table: one line a rule, and the caution in every line.
///
/// Unit: value, interval and limit in the unit of the text, named in the line.
final class ClassesCsv {
    private static final String[] HEAD = {
        "bike",
        "jurisdiction",
        "rule",
        "basis",
        "section",
        "date",
        "outcome",
        "decided-by",
        "measured",
        "operator",
        "limit",
        "unit",
        "value",
        "low",
        "high",
        "rule-outcome",
        "rests-on",
        "wording",
        "caution"
    };

    private ClassesCsv() {}

    static String write(String bike, LegalClasses classes) {
        var text = new StringWriter();
        try (var csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeComment(" measured-mile legal-classes 1");
            csv.writeRecord(HEAD);
            for (var one : classes.outcomes()) {
                for (var rule : one.rules()) {
                    csv.writeRecord(line(bike, one, rule));
                }
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static String[] line(String bike, ClassOutcome one, RuleOutcome rule) {
        var legal = one.legalClass();
        return new String[] {
            bike,
            legal.jurisdiction(),
            legal.title(),
            legal.basis().words(),
            rule.rule().section(),
            legal.date(),
            one.outcome().id(),
            one.decidedBy().rule().measured().id(),
            rule.rule().measured().id(),
            rule.rule().operator().id(),
            rule.limit().map(limit -> limit.value().toPlainString()).orElse(""),
            rule.limit().map(limit -> limit.unit().symbol()).orElse(""),
            rule.beside().map(beside -> beside.value().toPlainString()).orElse(""),
            rule.beside().map(beside -> beside.low().toPlainString()).orElse(""),
            rule.beside().map(beside -> beside.high().toPlainString()).orElse(""),
            rule.outcome().id(),
            rule.basis().words(),
            rule.said(),
            LegalClasses.CAUTION
        };
    }
}
