package org.measuredmile.comparison.verdict;

/// What the data say about a claim.
public enum Verdict {
    MEETS("meets", "meets"),
    FALLS_SHORT("falls-short", "falls short"),
    CANNOT_TELL("cannot-tell", "can’t tell");

    private final String id;
    private final String words;

    Verdict(String id, String words) {
        this.id = id;
        this.words = words;
    }

    /// As JSON and tables have it: `falls-short`.
    public String id() {
        return id;
    }

    /// As people read it: `falls short`.
    public String words() {
        return words;
    }
}
