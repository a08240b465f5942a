package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The page of a run: whether it counts and why, its trace, what was computed, and what may be done with it.
public record RunView(
        String title,
        String href,
        List<BikeView.Fact> facts,
        Validity validity,
        Optional<OriginView.TraceView> trace,
        List<ValueRow> values,
        List<ReadingRow> readings,
        List<FindingView> findings,
        List<DayView.Tick> fellows,
        List<Choice> causes,
        Ends ends,
        Line sum) {
    /// Whether it counts, in a word and a sentence.
    public record Validity(String mark, String word, String sentence, boolean proposed, boolean isVoid) {}

    /// One computed value.
    public record ValueRow(String title, ValueView value) {}

    /// One written reading, as it was written.
    public record ReadingRow(String title, String written, String by, String where) {}

    /// A cause that may be chosen.
    public record Choice(String value, String words) {}

    /// Where the run lies, in seconds of one of the day's recordings; both empty while it lies in none.
    public record Ends(List<Choice> recordings, String recording, String from, String to) {}

    /// The figures that the run is part of.
    public record Line(String trial, String trialHref, List<DayView.Line> figures) {}
}
