package org.measuredmile.desk.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.measuredmile.archive.json.Json;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.desk.SentenceBook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/// `mile sentences BIKE`: what can be said of a bike, to be copied.
@Command(
        name = "sentences",
        description = "What can be said of a bike: every figure, rank and verdict as a sentence, written and spoken.",
        mixinStandardHelpOptions = true)
final class SentencesCommand implements Callable<Integer> {
    @Mixin
    private Shown shown = new Shown();

    @Mixin
    private Chosen chosen = new Chosen();

    @Parameters(index = "0", arity = "0..1", paramLabel = "BIKE", description = "the bike's id")
    private String bike = "";

    @Option(names = "--spoken", description = "as it is said before a camera, numbers in words")
    private boolean spoken;

    @Override
    public Integer call() {
        try (var archive = chosen.open()) {
            var book = new SentenceBook(archive);
            var sentences = book.of(bike).orElseThrow(() -> new Trouble("no bike " + bike + " is in this archive"));
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
            var wording = sentence.in(shown.units());
            shown.line(spoken ? wording.spoken() : wording.written());
            shown.line("    " + sentence.reference());
        }
    }
}
