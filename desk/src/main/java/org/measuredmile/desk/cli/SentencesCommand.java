package org.measuredmile.desk.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.comparison.sentence.SentenceChange;
import org.measuredmile.desk.SentenceBook;
import org.measuredmile.desk.SentenceChanges;
import org.measuredmile.quantity.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/// `mile sentences BIKE`: what can be said of a bike, to be copied; with `--changed` what says something else than
/// before.
///
/// Shape: ends with 1 where a bike has no sentence, and where a sentence that was seen has changed or is gone.
@Command(
        name = "sentences",
        description = "What can be said of a bike: every figure, rank and verdict as a sentence, written and spoken.",
        mixinStandardHelpOptions = true)
final class SentencesCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "BIKE",
            description = "the bike's id; with --changed every bike where none is given")
    private String bike = "";

    @Option(names = "--spoken", description = "as it is said before a camera, numbers in words")
    private boolean spoken;

    @Option(names = "--changed", description = "what differs from the sentences as they were last seen")
    private boolean changed;

    @Option(
            names = "--seen-by",
            paramLabel = "WHO",
            description = "with --changed: keep what differs as seen by this crew code")
    private String seenBy = "";

    @Override
    public Integer call() {
        if (bike.isEmpty() && !changed) {
            throw new Trouble("give a bike's id, or --changed for all bikes");
        }
        if (!seenBy.isEmpty() && !changed) {
            throw new Trouble("--seen-by goes with --changed");
        }
        try (var archive = chosen.open()) {
            if (!bike.isEmpty() && archive.bike(bike).isEmpty()) {
                throw new Trouble("no bike " + bike + " is in this archive");
            }
            var book = new SentenceBook(archive);
            if (changed) {
                return changes(new SentenceChanges(archive, book));
            }
            var sentences = book.of(bike).orElse(List.of());
            print(sentences);
            return sentences.isEmpty() ? Mile.DATA_SAY_NO : Mile.DONE;
        }
    }

    private void print(List<Sentence> sentences) {
        if (shown.asJson()) {
            shown.json(Json.array(sentences, SentencesJson::write));
            return;
        }
        for (var sentence : sentences) {
            shown.line(words(sentence.in(shown.units())));
            shown.line("    " + sentence.reference());
        }
    }

    private String words(Sentence.Wording wording) {
        return spoken ? wording.spoken() : wording.written();
    }

    private int changes(SentenceChanges changes) {
        var all = seenBy.isBlank() ? changes.of(bike) : changes.see(bike, seenBy.strip());
        if (shown.asJson()) {
            shown.json(Json.array(all, SentencesJson::change));
        } else {
            all.forEach(this::print);
            shown.line(all.isEmpty() ? "every sentence says what it said" : all.size() + " differ");
            if (!seenBy.isBlank() && !all.isEmpty()) {
                shown.line("kept as seen by " + seenBy.strip());
            }
        }
        boolean outdated = all.stream().anyMatch(change -> change.kind() != SentenceChange.Kind.NEW);
        return outdated ? Mile.DATA_SAY_NO : Mile.DONE;
    }

    private void print(SentenceChange change) {
        String causes =
                change.causes().stream().map(SentenceChange.Cause::words).collect(Collectors.joining(", "));
        shown.line(change.kind().word() + (causes.isEmpty() ? "" : ", " + causes) + ": " + change.id());
        boolean metric = shown.units() == UnitSystem.METRIC;
        change.before().ifPresent(seen -> shown.line("  was " + words(metric ? seen.metric() : seen.imperial())));
        change.now().ifPresent(sentence -> shown.line("  is  " + words(sentence.in(shown.units()))));
    }
}
