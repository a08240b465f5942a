package org.measuredmile.desk.web.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.legal.Beside;
import org.measuredmile.comparison.legal.ClassOutcome;
import org.measuredmile.comparison.legal.ClassOutcome.Basis;
import org.measuredmile.comparison.legal.ClassOutcome.RuleOutcome;
import org.measuredmile.comparison.legal.LegalClasses;
import org.measuredmile.comparison.legal.LegalOutcome;
import org.measuredmile.comparison.legal.RuleWords;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.UnitSystem;

/// What the data say about a bike's legal classes, as a section of a page.
///
/// Shape: `caution` goes wherever an outcome goes; `findings` are what the bike's own labels get wrong; `csv` is where
/// the same stands as a table.
public record ClassesView(String caution, List<Place> places, List<FindingView> findings, String csv) {
    /// The classes as a page of their own, with the bike that they are about.
    public record Page(String title, String bikeHref, ClassesView classes) {}

    /// One jurisdiction and its classes.
    public record Place(String name, List<Row> classes) {}

    /// One class: its text, the word for it, what decided, and each rule.
    ///
    /// Shape: `style` is the verdict's own class in the style sheet.
    public record Row(
            String title, String text, String word, String style, String decidedBy, String note, List<Rule> rules) {}

    /// One rule: what it asks, what was found, in the text's own unit and in the other system.
    public record Rule(
            String measured,
            String asks,
            String limit,
            String word,
            String style,
            String said,
            String other,
            String basis,
            String would) {}

    public static ClassesView of(TestedBike bike) {
        var classes = LegalClasses.of(bike);
        Map<String, List<Row>> byPlace = classes.outcomes().stream()
                .collect(Collectors.groupingBy(
                        one -> one.legalClass().jurisdiction(),
                        LinkedHashMap::new,
                        Collectors.mapping(ClassesView::row, Collectors.toList())));
        return new ClassesView(
                LegalClasses.CAUTION,
                byPlace.entrySet().stream()
                        .map(one -> new Place(one.getKey(), one.getValue()))
                        .toList(),
                FindingView.of(classes.findings()),
                Paths.bike(bike.bike().id()) + "/classes.csv");
    }

    private static Row row(ClassOutcome one) {
        var legal = one.legalClass();
        String text = legal.section() + (legal.date().isEmpty() ? "" : ", text of " + legal.date()) + " ("
                + legal.basis().words() + ")";
        return new Row(
                Printing.capital(legal.title()),
                text,
                RuleWords.of(one.outcome(), one.decidedBy().rule()),
                style(one.outcome()),
                decidedBy(one.decidedBy()),
                legal.caveat(),
                one.rules().stream().map(ClassesView::rule).toList());
    }

    private static String decidedBy(RuleOutcome rule) {
        return Printing.capital(rule.sentence()) + ".";
    }

    private static Rule rule(RuleOutcome one) {
        return new Rule(
                Printing.capital(one.rule().measured().words()),
                one.rule().asks(),
                one.rule().limitWords(),
                RuleWords.of(one.outcome(), one.rule()),
                style(one.outcome()),
                one.said(),
                one.beside().map(ClassesView::other).orElse(""),
                one.basis() == Basis.NOTHING ? "" : one.basis().words(),
                one.wouldDecide().isEmpty() ? "" : "Would decide: " + String.join("; or ", one.wouldDecide()) + ".");
    }

    /// A speed in the system that its text does not use.
    private static String other(Beside beside) {
        QuantityKind kind = switch (beside.unit()) {
            case MILE_PER_HOUR, KILOMETRE_PER_HOUR -> QuantityKind.SPEED;
            case METRE -> QuantityKind.LENGTH;
            default -> QuantityKind.POWER;
        };
        var system = kind.shown(UnitSystem.METRIC) == beside.unit() ? UnitSystem.IMPERIAL : UnitSystem.METRIC;
        if (kind.shown(system) == beside.unit()) {
            return "";
        }
        double half = beside.unit().differenceToSi(beside.halfWidth().doubleValue());
        return QuantityPrinter.desk(system)
                .figure(beside.unit().toSi(beside.value().doubleValue()), half, kind)
                .text();
    }

    private static String style(LegalOutcome outcome) {
        return switch (outcome) {
            case WITHIN -> "verdict meets";
            case OUTSIDE -> "verdict short";
            case CANNOT_TELL -> "verdict cant";
            case NOT_MEASURED -> "no-value";
        };
    }
}
