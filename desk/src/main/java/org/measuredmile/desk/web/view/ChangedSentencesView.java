package org.measuredmile.desk.web.view;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.measuredmile.archive.SeenSentence;
import org.measuredmile.comparison.sentence.Sentence;
import org.measuredmile.comparison.sentence.SentenceChange;
import org.measuredmile.quantity.UnitSystem;

/// The page of sentences that say something else than an editor last saw.
///
/// Shape: `seen` is empty where nobody has looked yet; of new sentences the first [#MOST_NEW] are shown.
public record ChangedSentencesView(
        String bike,
        String seen,
        List<Line> changed,
        List<Line> gone,
        List<Line> fresh,
        int freshInAll,
        String fault,
        String who) {
    private static final int MOST_NEW = 100;

    /// One sentence: what it said, what it says now, and why.
    public record Line(String reference, String before, String now, String causes) {}

    public static ChangedSentencesView of(
            String bike,
            List<SentenceChange> changes,
            Optional<SeenSentence> lastSeen,
            String fault,
            String who,
            UnitSystem system) {
        List<Line> fresh = lines(changes, SentenceChange.Kind.NEW, system);
        return new ChangedSentencesView(
                bike,
                lastSeen.map(one -> Printing.moment(one.since(), ZoneOffset.UTC) + " by " + one.who())
                        .orElse(""),
                lines(changes, SentenceChange.Kind.CHANGED, system),
                lines(changes, SentenceChange.Kind.GONE, system),
                fresh.stream().limit(MOST_NEW).toList(),
                fresh.size(),
                fault,
                who);
    }

    /// Whether nothing differs.
    public boolean isNothing() {
        return changed.isEmpty() && gone.isEmpty() && fresh.isEmpty();
    }

    private static List<Line> lines(List<SentenceChange> changes, SentenceChange.Kind kind, UnitSystem system) {
        return changes.stream()
                .filter(change -> change.kind() == kind)
                .map(change -> new Line(
                        change.now()
                                .map(Sentence::reference)
                                .orElseGet(() -> change.id() + "#"
                                        + change.before()
                                                .map(SentenceChange.Seen::hash)
                                                .orElse("")),
                        change.before()
                                .map(one -> (system == UnitSystem.METRIC ? one.metric() : one.imperial()).written())
                                .orElse(""),
                        change.now().map(one -> one.in(system).written()).orElse(""),
                        change.causes().stream()
                                .map(SentenceChange.Cause::words)
                                .collect(Collectors.joining(", "))))
                .toList();
    }
}
