package org.measuredmile.comparison.legal;

import java.util.List;
import java.util.stream.Collectors;

/// The page on the legal classes, in Markdown, written from the data.
final class LegalPage {
    private static final String HEAD = """
            # Legal classes

            What texts of law and one product standard ask of an electric bike, as this program compares it. This
            page is written from the data (`rules.yaml` beside the package `comparison.legal`); a test holds it to
            them.

            > %s

            ## How a bike is compared
            - Each text is compared in its own unit, to its own digits, with its own operator: *below* forbids the
              limit itself, *at most* allows it. 20 mph are 32.18688 km/h; 32 km/h, 25 km/h and 15.5 mph are limits
              of their own.
            - *Under the limit* and *over the limit* are said only where the whole 95 % interval of any day lies on
              that side, so that either is right in 97.5 of 100 cases at worst (JCGM 106:2012, 8.3.2 and 8.3.3).
              Anything else is *can't tell*, which accuses nobody and clears nobody, with what would decide it. The
              ends of the interval are rounded outward to the printed digit.
            - A class is outside where one of its rules is, open where one is open, and within only where all are.
              What was measured decides before what is described, and that before what is claimed.
            - The cut-off speed is the one at which help was noted to fade. A speed that was pedalled is none. A
              speed that the motor holds alone shows that help had not ended there: it bounds the cut-off from below
              and can put a bike outside, never within.
            - The speed by the motor alone is brought to the rider that the text fixes, on the level in still air of
              1.225 kg/m³, at the power it had at the wheel; both are printed. Where a controller holds the speed
              nothing is corrected.
            - Motor power is never measured on the road. A rated power that is claimed or marked is compared as it
              stands; a peak, or a power of which nobody says what it is, leaves a limit below it open.
            - A law's limit and a product standard's tolerance are separate rows.
            - A label (`class-label` in the specification, what was seen on the bike before what is claimed) that a
              measurement contradicts by the guard band is the finding `label-contradicts`; one that only a claimed
              power contradicts is the note `label-and-claim-disagree`.

            ## The texts
            """;

    private LegalPage() {}

    static String of(List<LegalClass> classes) {
        return HEAD.replace("%s", LegalClasses.CAUTION)
                + classes.stream().map(LegalPage::of).collect(Collectors.joining("\n"));
    }

    private static String of(LegalClass one) {
        var page = new StringBuilder("### " + one.jurisdiction() + ": " + one.title() + "\n");
        page.append(one.section()).append(one.date().isEmpty() ? "" : ", text of " + one.date());
        page.append(one.isInForce() ? "" : ", in force until " + one.until() + " and not compared any more");
        page.append(" (")
                .append(one.basis().words())
                .append("; ")
                .append(one.known().words())
                .append(").");
        page.append(" Source: ").append(one.source()).append(".");
        page.append(one.note().isEmpty() ? "" : " " + one.note()).append("\n\n");
        page.append("| compared | limit | the text asks | section |\n| --- | --- | --- | --- |\n");
        for (var rule : one.rules()) {
            page.append("| ")
                    .append(String.join(" | ", rule.measured().words(), rule.limitWords(), rule.asks(), rule.section()))
                    .append(" |\n");
        }
        return page.toString();
    }
}
