package org.measuredmile.desk.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.shortlist.Answer;
import org.measuredmile.comparison.shortlist.Answer.Basis;
import org.measuredmile.comparison.shortlist.Answer.Verdict;
import org.measuredmile.comparison.shortlist.Shortlist;
import org.measuredmile.comparison.shortlist.WishList;
import org.measuredmile.desk.TestedBikes;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.recording.Finding;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/// `mile shortlist "WISHES"`: of every bike whether it is what a reader wishes for.
@Command(
        name = "shortlist",
        description = "Say of every bike whether it surely does what a reader wishes, may do, or does not.",
        mixinStandardHelpOptions = true)
final class ShortlistCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(
            arity = "1..*",
            paramLabel = "WISHES",
            description = "in quotes, as in \"climbs=10%% rider=110kg price<2000 carries>=40kg\"")
    private List<String> words = List.of();

    @Override
    public Integer call() {
        var wishes = wishes();
        try (var archive = chosen.open()) {
            var shortlist = switch (Shortlist.of(wishes, TestedBikes.all(archive, wishes.figures()))) {
                case Shortlist.Outcome.Drawn(Shortlist drawn) -> drawn;
                case Shortlist.Outcome.Unclear(List<Finding> faults) -> throw trouble(faults);
            };
            if (shown.asJson()) {
                shown.json(Json.array().add(ShortlistJson.write(shortlist)));
            } else {
                print(shortlist);
            }
            boolean isAny = shortlist.answers().stream().anyMatch(one -> one.verdict() != Verdict.NO);
            return isAny ? Mile.DONE : Mile.DATA_SAY_NO;
        }
    }

    private WishList wishes() {
        return switch (WishList.parse(String.join(" ", words))) {
            case WishList.Read.Stated(WishList list) -> list;
            case WishList.Read.Unclear(List<Finding> faults) -> throw trouble(faults);
        };
    }

    private static Trouble trouble(List<Finding> faults) {
        return new Trouble(faults.stream().map(Finding::line).collect(Collectors.joining("\n")));
    }

    private void print(Shortlist shortlist) {
        shown.line("wished for: " + shortlist.wishes().expression());
        for (int i = 0; i < shortlist.conditions().size(); i++) {
            String condition = shortlist.conditions().get(i);
            if (!condition.isEmpty()) {
                shown.line("  " + shortlist.wishes().wishes().get(i).text() + ": " + condition);
            }
        }
        shown.line("sure: every wish kept with at least 97.5 %; no: some wish kept with at most 2.5 %; maybe: else");
        for (Verdict verdict : Verdict.values()) {
            var answers = shortlist.answers().stream()
                    .filter(one -> one.verdict() == verdict)
                    .toList();
            shown.line("");
            shown.line(verdict.word() + ": " + answers.size() + (answers.size() == 1 ? " bike" : " bikes"));
            answers.forEach(this::answer);
        }
    }

    private void answer(Answer answer) {
        shown.line("  " + answer.bike().bike().title());
        var table = new Table("", "", "", "", "");
        for (var reply : answer.replies()) {
            table.row(" ", reply.wish().text(), reply.verdict().word(), chance(reply), words(reply.basis()));
        }
        table.lines().stream().skip(1).forEach(line -> shown.line("  " + line));
    }

    /// The probability of a wish about something measured; what is stated either fits or does not.
    private static String chance(Answer.Reply reply) {
        return reply.basis() instanceof Basis.Measured
                ? QuantityPrinter.chance(reply.probability().orElse(0))
                : "";
    }

    private String words(Basis basis) {
        return switch (basis) {
            case Basis.Measured measured ->
                shown.printer()
                                .figure(measured.si(), measured.interval95().halfWidth(), measured.kind())
                                .text()
                        + (measured.words().isEmpty() ? "" : ", " + measured.words());
            case Basis.Stated(String words) -> words;
            case Basis.Missing(String why) -> why;
        };
    }
}
