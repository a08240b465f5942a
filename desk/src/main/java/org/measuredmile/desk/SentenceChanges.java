package org.measuredmile.desk;

import java.util.List;
import java.util.Optional;
import org.measuredmile.archive.Act;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.SeenSentence;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.comparison.sentence.SentenceChange;

/// What became of sentences since somebody last saw them, and that somebody has seen it now.
public final class SentenceChanges {
    private final Archive archive;
    private final SentenceBook book;

    public SentenceChanges(Archive archive, SentenceBook book) {
        this.archive = archive;
        this.book = book;
    }

    /// When an editor last looked, and who.
    public Optional<SeenSentence> lastSeen(String bike) {
        return archive.seenSentences(bike).stream().max(java.util.Comparator.comparing(SeenSentence::since));
    }

    /// The differences of one bike's sentences, or of all where the bike is empty.
    public List<SentenceChange> of(String bike) {
        var seen = archive.seenSentences(bike).stream()
                .filter(SeenSentence::said)
                .map(SentenceChanges::seen)
                .toList();
        return SentenceChange.between(
                seen, bike.isEmpty() ? book.all() : book.of(bike).orElse(List.of()));
    }

    /// Keeps the differences as seen: rows are added, nothing is overwritten.
    public List<SentenceChange> see(String bike, String who) {
        var changes = of(bike);
        archive.seeSentences(changes.stream().map(SentenceChanges::row).toList(), new Act(who, "sentences seen"));
        return changes;
    }

    private static SentenceChange.Seen seen(SeenSentence row) {
        var texts = row.texts();
        return new SentenceChange.Seen(
                row.id(),
                row.bike(),
                row.hash(),
                new Sentence.Wording(texts.writtenMetric(), texts.spokenMetric()),
                new Sentence.Wording(texts.writtenImperial(), texts.spokenImperial()),
                new Sentence.Basis(
                        row.basis().method(), row.basis().figure(), row.basis().population()));
    }

    private static SeenSentence row(SentenceChange change) {
        boolean said = change.now().isPresent();
        var seen = change.now().map(SentenceChange.Seen::of).or(change::before).orElseThrow();
        return SeenSentence.now(
                seen.id(),
                seen.bike(),
                said,
                seen.hash(),
                new SeenSentence.Texts(
                        seen.metric().written(),
                        seen.imperial().written(),
                        seen.metric().spoken(),
                        seen.imperial().spoken()),
                new SeenSentence.Basis(
                        seen.basis().method(),
                        seen.basis().figure(),
                        seen.basis().population()));
    }
}
