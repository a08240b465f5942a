package org.measuredmile.trial;

/// How a figure is said in a sentence, declared once by its trial; sentences in writing and in speech follow from it.
///
/// Shape: `sentence`, `reckoned` (of the same figure at reference conditions) and `noun` (what is ranked) hold slots in
/// braces: `{bike}`, `{bike’s}`, `{value}`, `{MASS 80}` for a quantity in SI units, `{ride}` for drive and level as
/// they are said together, and any variant key for its words. A slot without a value drops out. `unshown` is said
/// instead where the interval holds zero. `least` and `most` name the two ends of an order; empty for those of the
/// quantity.
public record Saying(
        String sentence,
        String reckoned,
        String noun,
        String unshown,
        Runs runs,
        Bound bound,
        String least,
        String most) {
    /// A figure whose trial has not said how: its title and variant make the sentence.
    public static final Saying NONE =
            new Saying("", "", "", "", new Runs("measurement", "measurements", true), Bound.NONE, "", "");

    /// What a run is called, and whether the figure is the mean of them.
    public record Runs(String one, String many, boolean mean) {}

    /// Whether the value is only a bound of the true one.
    public enum Bound {
        NONE,
        AT_LEAST
    }

    /// A sentence, and what is ranked in it.
    public static Saying of(String sentence, String noun) {
        return new Saying(sentence, "", noun, "", NONE.runs, Bound.NONE, "", "");
    }

    /// The sentence at reference conditions, which nobody rode.
    public Saying atReference(String reckonedSentence) {
        return new Saying(sentence, reckonedSentence, noun, unshown, runs, bound, least, most);
    }

    /// A figure that is the mean of runs so called.
    public Saying meanOf(String one, String many) {
        return new Saying(sentence, reckoned, noun, unshown, new Runs(one, many, true), bound, least, most);
    }

    /// A figure that is found from runs so called, but is no mean of them.
    public Saying from(String one, String many) {
        return new Saying(sentence, reckoned, noun, unshown, new Runs(one, many, false), bound, least, most);
    }

    /// What is said where the interval holds zero.
    public Saying whereNothingShows(String words) {
        return new Saying(sentence, reckoned, noun, words, runs, bound, least, most);
    }

    /// A figure whose truth is its value or more.
    public Saying atLeast() {
        return new Saying(sentence, reckoned, noun, unshown, runs, Bound.AT_LEAST, least, most);
    }

    /// The words for the two ends of an order, where those of the quantity read badly.
    public Saying ends(String leastWord, String mostWord) {
        return new Saying(sentence, reckoned, noun, unshown, runs, bound, leastWord, mostWord);
    }

    public boolean isSaid() {
        return !sentence.isEmpty();
    }
}
