package org.measuredmile.trial;

import java.util.Arrays;
import java.util.List;

/// One way in which runs of a trial, or its figures, may differ: `method=tape`.
///
/// Shape: `values` are all that is allowed, each with the word people use; empty when any value may stand (a level's
/// number). `usual` is taken when a run does not say; empty when it must say. Only figures with equal values are ranked
/// together. `asked` is false where the trial finds the value itself out of the others.
public record VariantKey(String name, String title, List<Choice> values, String usual, boolean asked) {
    /// A value and its words: `20-mph`, "from 20 mph"; no words where nothing is to be said.
    public record Choice(String value, String words) {}

    public VariantKey {
        values = List.copyOf(values);
    }

    /// A key that whoever rides says.
    public VariantKey(String name, String title, List<Choice> values, String usual) {
        this(name, title, values, usual, true);
    }

    /// A key whose values are their own words, shown after the key's title: `in` as "battery in".
    public static VariantKey of(String name, String title, String... values) {
        return new VariantKey(
                name,
                title,
                Arrays.stream(values)
                        .map(value -> new Choice(value, title + " " + value))
                        .toList(),
                "");
    }

    /// The same, with a value taken when a run does not say.
    public VariantKey usually(String value) {
        return new VariantKey(name, title, values, value, asked);
    }

    /// The same, where the trial finds the value itself, so that nobody is asked.
    public VariantKey foundByTheTrial() {
        return new VariantKey(name, title, values, usual, false);
    }

    /// Whether the value has words of its own.
    public boolean names(String value) {
        return values.stream().anyMatch(choice -> choice.value().equals(value));
    }

    /// Whether a run may say so.
    public boolean admits(String value) {
        return values.isEmpty() || names(value);
    }

    /// The words for a value; the value itself when it has none.
    public String words(String value) {
        return values.stream()
                .filter(choice -> choice.value().equals(value))
                .map(Choice::words)
                .findFirst()
                .orElse(title + " " + value);
    }
}
