package org.measuredmile.comparison.sentence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/// How a sentence differs from what an editor last saw under its id.
///
/// Shape: `before` is empty for a new one, `now` for one that can no longer be said; `causes` are empty for both.
public record SentenceChange(String id, Optional<Seen> before, Optional<Sentence> now, List<Cause> causes) {
    /// A sentence as it was seen.
    public record Seen(
            String id,
            String bike,
            String hash,
            Sentence.Wording metric,
            Sentence.Wording imperial,
            Sentence.Basis basis) {
        public static Seen of(Sentence sentence) {
            return new Seen(
                    sentence.id(),
                    sentence.bike(),
                    sentence.hash(),
                    sentence.metric(),
                    sentence.imperial(),
                    sentence.basis());
        }
    }

    /// Why a sentence says something else.
    public enum Cause {
        METHOD("the method changed"),
        FIGURE("the figure changed"),
        POPULATION("the population changed"),
        WORDING("only the wording changed");

        private final String words;

        Cause(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /// What became of a sentence.
    public enum Kind {
        NEW("new"),
        CHANGED("changed"),
        GONE("gone");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public SentenceChange {
        causes = List.copyOf(causes);
        if (before.isEmpty() && now.isEmpty()) {
            throw new IllegalArgumentException(id + " is no change");
        }
    }

    public Kind kind() {
        return before.isEmpty() ? Kind.NEW : now.isEmpty() ? Kind.GONE : Kind.CHANGED;
    }

    /// Every difference, changed ones first, then gone, then new, each in the order of its list.
    ///
    /// Shape: `seen` holds what was last seen of each id, without those seen to be gone.
    public static List<SentenceChange> between(List<Seen> seen, List<Sentence> now) {
        Map<String, Seen> open = new TreeMap<>();
        seen.forEach(one -> open.put(one.id(), one));
        var changed = new ArrayList<SentenceChange>();
        var fresh = new ArrayList<SentenceChange>();
        for (var sentence : now) {
            var before = Optional.ofNullable(open.remove(sentence.id()));
            if (before.isEmpty()) {
                fresh.add(new SentenceChange(sentence.id(), before, Optional.of(sentence), List.of()));
            } else if (!before.get().hash().equals(sentence.hash())) {
                changed.add(new SentenceChange(
                        sentence.id(),
                        before,
                        Optional.of(sentence),
                        causes(before.get().basis(), sentence.basis())));
            }
        }
        open.values()
                .forEach(gone ->
                        changed.add(new SentenceChange(gone.id(), Optional.of(gone), Optional.empty(), List.of())));
        changed.addAll(fresh);
        return List.copyOf(changed);
    }

    private static List<Cause> causes(Sentence.Basis before, Sentence.Basis now) {
        var causes = new ArrayList<Cause>();
        if (!before.method().equals(now.method())) {
            causes.add(Cause.METHOD);
        }
        if (!before.figure().equals(now.figure())) {
            causes.add(Cause.FIGURE);
        }
        if (!before.population().equals(now.population())) {
            causes.add(Cause.POPULATION);
        }
        return causes.isEmpty() ? List.of(Cause.WORDING) : causes;
    }
}
