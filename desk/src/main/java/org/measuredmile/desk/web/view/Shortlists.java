package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.measuredmile.archive.Archive;
import org.measuredmile.comparison.shortlist.Answer;
import org.measuredmile.comparison.shortlist.Answer.Basis;
import org.measuredmile.comparison.shortlist.Answer.Reply;
import org.measuredmile.comparison.shortlist.Answer.Verdict;
import org.measuredmile.comparison.shortlist.Shortlist;
import org.measuredmile.comparison.shortlist.WishList;
import org.measuredmile.comparison.sidebyside.SideBySide;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.Finding;

/// Makes the page of a reader's shortlist.
public final class Shortlists {
    private static final List<String> EXAMPLES = List.of(
            "climbs=10% rider=110kg price<4000 carries>=40kg",
            "mass<20kg range>=30mi", "category=cargo throttle=yes stops<=22ft");

    private final Archive archive;
    private final Printing printing;

    public Shortlists(Archive archive, Printing printing) {
        this.archive = archive;
        this.printing = printing;
    }

    /// The page for a list as it was typed; without one, only the form.
    public ShortlistView view(String wish) {
        if (wish.isBlank()) {
            return unanswered("", List.of());
        }
        return switch (WishList.parse(wish)) {
            case WishList.Read.Unclear(List<Finding> faults) -> unanswered(wish, faults);
            case WishList.Read.Stated(WishList list) ->
                switch (Shortlist.of(list, TestedBikes.all(archive, list.figures()))) {
                    case Shortlist.Outcome.Unclear(List<Finding> faults) -> unanswered(wish, faults);
                    case Shortlist.Outcome.Drawn(Shortlist shortlist) -> answered(wish, shortlist);
                };
        };
    }

    private static ShortlistView unanswered(String wish, List<Finding> faults) {
        return new ShortlistView(
                wish, "", faults.stream().map(Finding::line).toList(), List.of(), List.of(), "", examples());
    }

    private static List<ShortlistView.Example> examples() {
        return EXAMPLES.stream()
                .map(one -> new ShortlistView.Example(one, "/shortlist?wish=" + Paths.query(one)))
                .toList();
    }

    private ShortlistView answered(String wish, Shortlist shortlist) {
        var wishes = shortlist.wishes().wishes();
        return new ShortlistView(
                wish,
                shortlist.wishes().expression(),
                List.of(),
                IntStream.range(0, wishes.size())
                        .mapToObj(i -> new ShortlistView.Heading(
                                wishes.get(i).text(), shortlist.conditions().get(i)))
                        .toList(),
                Arrays.stream(Verdict.values())
                        .map(verdict -> group(verdict, shortlist))
                        .toList(),
                besideHref(shortlist),
                examples());
    }

    private ShortlistView.Group group(Verdict verdict, Shortlist shortlist) {
        var answers = shortlist.answers().stream()
                .filter(one -> one.verdict() == verdict)
                .toList();
        String meaning = switch (verdict) {
            case SURE -> "Every wish is kept with a probability of at least 97.5 %.";
            case MAYBE -> "The data do not decide, or nobody measured it.";
            case NO -> "Some wish is kept with a probability of at most 2.5 %.";
        };
        return new ShortlistView.Group(
                Printing.capital(verdict.word()),
                Printing.count(answers.size(), "bike", "bikes"),
                meaning,
                answers.stream().map(this::row).toList());
    }

    private ShortlistView.Row row(Answer answer) {
        var bike = answer.bike().bike();
        return new ShortlistView.Row(
                bike.title(),
                Paths.bike(bike.id()),
                bike.category(),
                answer.replies().stream().map(this::reply).toList());
    }

    private ShortlistView.Reply reply(Reply reply) {
        String chance = reply.probability().isPresent()
                ? QuantityPrinter.chance(reply.probability().getAsDouble())
                : "";
        String weight = reply.verdict().word();
        String wish = reply.wish().text();
        return switch (reply.basis()) {
            case Basis.Measured measured ->
                new ShortlistView.Reply(
                        wish,
                        weight,
                        chance,
                        Optional.of(ValueView.of(printing.printer()
                                .figureInBoth(
                                        measured.si(), measured.interval95().halfWidth(), measured.kind()))),
                        measured.words());
            case Basis.Stated(String words) -> new ShortlistView.Reply(wish, weight, "", Optional.empty(), words);
            case Basis.Missing(String why) -> new ShortlistView.Reply(wish, weight, "", Optional.empty(), why);
        };
    }

    /// The first bikes of the list side by side; nowhere when there are not two.
    private static String besideHref(Shortlist shortlist) {
        var ids = new ArrayList<String>();
        shortlist.answers().stream()
                .filter(one -> one.verdict() != Verdict.NO)
                .limit(SideBySide.MOST)
                .forEach(one -> ids.add(one.bike().bike().id()));
        return ids.size() < SideBySide.FEWEST
                ? ""
                : "/side-by-side?"
                        + ids.stream().map(id -> "bike=" + Paths.query(id)).collect(Collectors.joining("&"));
    }
}
