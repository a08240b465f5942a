package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Limit;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.Trials;

/// A trial's page of the method handbook, out of its declaration.
public record HandbookView(
        Declaration trial, List<Row> readings, List<Row> limits, List<Row> figures, List<String> recordings) {
    private static final Pattern LOW = Pattern.compile("_([\\p{Ll}\\p{N}]+)");

    /// A line: what it is, and what is to be said of it.
    public record Row(String title, String words) {}

    /// The handbook's table of contents: each trial with its purpose.
    public record Contents(List<Declaration> trials) {
        public static Contents all() {
            return new Contents(
                    Trials.ALL.stream().map(trial -> trial.declaration()).toList());
        }
    }

    public static HandbookView of(Printing printing, Declaration trial) {
        return new HandbookView(
                trial,
                trial.readings().stream()
                        .map(one -> reading(printing, trial, one))
                        .toList(),
                trial.limits().stream().map(one -> limit(printing, trial, one)).toList(),
                trial.figures().stream().map(HandbookView::figure).toList(),
                trial.recordings().stream()
                        .map(one -> Printing.capital(one.title()) + "; at least "
                                + Printing.count(Math.round(one.leastRateHz()), "sample", "samples")
                                + " a second. Below that: " + one.remedy() + ".")
                        .toList());
    }

    /// A formula cut where a sign is set low: `v_0` gives `v`, then a low `0`.
    public List<Piece> formula() {
        var pieces = new ArrayList<Piece>();
        String text = trial.handbook().formula();
        var low = LOW.matcher(text);
        int done = 0;
        while (low.find()) {
            pieces.add(new Piece(text.substring(done, low.start()), low.group(1)));
            done = low.end();
        }
        pieces.add(new Piece(text.substring(done), ""));
        return pieces;
    }

    /// Signs of a formula, and those set low after them.
    public record Piece(String signs, String low) {}

    private static Row reading(Printing printing, Declaration trial, ReadingSpec spec) {
        var words = new ArrayList<String>();
        words.add(spec.scope() == ReadingSpec.Scope.DAY ? "once a day" : "every run");
        words.add("by the " + spec.takenBy());
        if (spec.required()) {
            words.add("needed");
        }
        if (!spec.when().text().isEmpty()) {
            words.add("only " + trial.words(spec.when()));
        }
        if (!spec.choices().isEmpty()) {
            words.add("one of " + String.join(", ", spec.choices()));
        } else if (Double.isFinite(spec.plausible().low())
                && Double.isFinite(spec.plausible().high())) {
            var unit = spec.kind().shown(printing.system());
            words.add("believed from "
                    + QuantityPrinter.in(unit, spec.plausible().low(), 1).value() + " to "
                    + QuantityPrinter.in(unit, spec.plausible().high(), 1).text());
        }
        String hint = spec.hint().isEmpty() ? "" : ". " + Printing.capital(spec.hint());
        return new Row(Printing.capital(spec.title()), Printing.capital(String.join(", ", words)) + hint + ".");
    }

    private static Row limit(Printing printing, Declaration trial, Limit limit) {
        var kind = trial.reading(limit.reading())
                .map(ReadingSpec::kind)
                .orElse(org.measuredmile.quantity.QuantityKind.RATIO);
        var unit = kind.shown(printing.system());
        String follows = switch (limit.broken()) {
            case RUN_DOES_NOT_COUNT -> "outside it the run is shown and does not count";
            case NO_FIGURE -> "outside it there is no figure";
            case WIDER -> "outside it the interval is wider";
        };
        String when = limit.when().text().isEmpty() ? "" : " (" + trial.words(limit.when()) + ")";
        return new Row(
                Printing.capital(limit.title()) + when,
                "From " + QuantityPrinter.in(unit, limit.allowed().low(), 2).value() + " to "
                        + QuantityPrinter.in(unit, limit.allowed().high(), 2).text() + "; " + follows + ". "
                        + Printing.capital(limit.source()) + ".");
    }

    private static Row figure(FigureSpec spec) {
        String better = switch (spec.better()) {
            case LESS -> "less is better";
            case MORE -> "more is better";
            case NEITHER -> "neither end is better";
        };
        String meaning = spec.meaning().isEmpty() ? "" : Printing.capital(spec.meaning()) + "; ";
        return new Row(Printing.capital(spec.title()), meaning + better + ".");
    }
}
