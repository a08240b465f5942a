package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.measuredmile.comparison.verdict.ClaimVerdict;
import org.measuredmile.comparison.verdict.DecisionRule;
import org.measuredmile.comparison.verdict.Tried;
import org.measuredmile.comparison.verdict.Verdict;
import org.measuredmile.comparison.verdict.Wording;
import org.measuredmile.desk.BikeClaims;
import org.measuredmile.desk.CsvText;
import org.measuredmile.publication.chart.ClaimStrip;
import org.measuredmile.publication.chart.Strip;
import org.measuredmile.quantity.QuantityPrinter;

/// Makes the page of a bike's claims, and its table.
public final class BikeClaimsPage {
    private final BikeClaims claims;
    private final Printing printing;
    private final Wording wording;

    public BikeClaimsPage(BikeClaims claims, Printing printing) {
        this.claims = claims;
        this.printing = printing;
        this.wording = new Wording(printing.system());
    }

    public ClaimsView view() {
        var bike = claims.bike().bike();
        return new ClaimsView(
                bike.title(),
                Paths.bike(bike.id()),
                counts(claims.verdicts()),
                DecisionRule.WORDS,
                claims.verdicts().stream().map(this::row).toList(),
                Paths.claims(bike.id()) + "/csv",
                Paths.reply(bike.id()),
                ClassesView.of(claims.bike()));
    }

    /// How many claims came out how: `2 meet, 1 falls short, 3 can’t tell`.
    static String counts(List<ClaimVerdict> verdicts) {
        var words = new ArrayList<String>();
        for (var verdict : Verdict.values()) {
            long number =
                    verdicts.stream().filter(one -> one.verdict() == verdict).count();
            String verb = switch (verdict) {
                case MEETS -> number == 1 ? "meets" : "meet";
                case FALLS_SHORT -> number == 1 ? "falls short" : "fall short";
                case CANNOT_TELL -> "can’t tell";
            };
            if (number > 0) {
                words.add(number + "\u00a0" + verb);
            }
        }
        return String.join(", ", words);
    }

    private ClaimsView.Row row(ClaimVerdict verdict) {
        String id = claims.bike().bike().id();
        return new ClaimsView.Row(
                ClaimMark.anchor(verdict),
                Printing.capital(verdict.item().words()),
                ClaimMark.of(id, verdict),
                Wording.conditions(verdict.claim()),
                source(verdict),
                verdict.probability().isPresent()
                        ? QuantityPrinter.chance(verdict.probability().getAsDouble())
                        : "",
                strip(verdict),
                held(verdict),
                wording.of(claims.bike().bike().title(), verdict));
    }

    private static String source(ClaimVerdict verdict) {
        String date = verdict.line().date();
        return verdict.line().source() + (date.isEmpty() ? "" : ", " + date);
    }

    private String strip(ClaimVerdict verdict) {
        var results = new ArrayList<ClaimStrip.Held>();
        verdict.measured().ifPresent(tried -> results.add(held(tried, "as measured")));
        verdict.atConditions().ifPresent(tried -> results.add(held(tried, "at the claim’s conditions")));
        if (results.isEmpty()) {
            return "";
        }
        var kind = verdict.claim().kind();
        double[] named = verdict.claim().wanted().named();
        var flag = new Strip.Flag(named[0], "claim, " + verdict.claim().words());
        return new ClaimStrip(printing.scale(kind), verdict.item().better(), results, flag)
                .svg(Printing.capital(verdict.item().words()));
    }

    private static ClaimStrip.Held held(Tried tried, String words) {
        return new ClaimStrip.Held(tried.value(), tried.known().interval95(), words);
    }

    /// What each line of the picture is, top down.
    private List<String> held(ClaimVerdict verdict) {
        var kind = verdict.claim().kind();
        var lines = new ArrayList<String>();
        verdict.measured().ifPresent(tried -> {
            String how = Wording.how(tried.result());
            lines.add("As measured" + (how.isEmpty() ? "" : ", " + how) + ": "
                    + wording.value(tried.value(), tried.known(), kind));
        });
        verdict.atConditions()
                .ifPresent(tried -> lines.add("Brought to "
                        + tried.under().map(wording::under).orElse("") + ": "
                        + wording.value(tried.value(), tried.known(), kind)));
        return lines;
    }

    /// The claims as a table: one row a claim, numbers in the SI unit named beside them.
    public String csv() {
        var out = new StringBuilder("item,claimed,conditions,source,date,measured,measured-low,measured-high,"
                + "at-conditions,at-conditions-low,at-conditions-high,unit,verdict,probability,agrees-with,wording\n");
        for (var one : claims.verdicts()) {
            var cells = new ArrayList<String>(List.of(
                    one.item().id(),
                    one.claim().words(),
                    one.line().conditions(),
                    one.line().source(),
                    one.line().date()));
            cells.addAll(one.measured().map(BikeClaimsPage::numbers).orElse(List.of("", "", "")));
            cells.addAll(one.atConditions().map(BikeClaimsPage::numbers).orElse(List.of("", "", "")));
            cells.add(one.claim().kind().si().symbol());
            cells.add(one.verdict().id());
            cells.add(
                    one.probability().isPresent()
                            ? String.format(
                                    Locale.ROOT, "%.4f", one.probability().getAsDouble())
                            : "");
            cells.add(one.agreesWith().stream()
                    .map(other -> other.result().figure().key().text())
                    .collect(Collectors.joining("; ")));
            cells.add(wording.of(claims.bike().bike().title(), one).replace('\u00a0', ' '));
            out.append(cells.stream().map(CsvText::cell).collect(Collectors.joining(",")))
                    .append('\n');
        }
        return out.toString();
    }

    private static List<String> numbers(Tried tried) {
        return List.of(
                Double.toString(tried.value()),
                Double.toString(tried.known().interval95().low()),
                Double.toString(tried.known().interval95().high()));
    }
}
