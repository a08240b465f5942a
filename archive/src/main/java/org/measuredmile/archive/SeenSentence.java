package org.measuredmile.archive;

import java.time.Instant;

/// A sentence as somebody saw it: what it said in both systems, and what it rested on.
///
/// Shape: `said` is false where it was seen that it can no longer be said; the texts are then those of before. `since`
/// and `who` are filled in by the archive when it is kept.
public record SeenSentence(
        String id, String bike, boolean said, String hash, Texts texts, Basis basis, Instant since, String who) {
    /// The sentence written and spoken, in each system.
    public record Texts(String writtenMetric, String writtenImperial, String spokenMetric, String spokenImperial) {}

    /// Method, figure and population that it rested on, as its own words for comparing.
    public record Basis(String method, String figure, String population) {}

    /// One that has not been kept yet.
    public static SeenSentence now(String id, String bike, boolean said, String hash, Texts texts, Basis basis) {
        return new SeenSentence(id, bike, said, hash, texts, basis, Instant.EPOCH, "");
    }
}
