package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The page of one of a day's files: what it is, the plot on which its runs are decided, where it went, what was
/// noticed, what was done.
///
/// Shape: `plot` and `track` are absent where the file holds nothing to draw; `kept` is the act that led here.
public record FileView(
        String name,
        String day,
        String dayHref,
        String href,
        String download,
        List<BikeView.Fact> facts,
        Optional<Plot> plot,
        Optional<Picture> track,
        List<RunRow> runs,
        NewRun fresh,
        List<FindingView> findings,
        List<HistoryView.Row> history,
        Optional<HistoryView.Row> kept) {
    /// The curve and what a script needs to lay handles over it.
    ///
    /// Unit: `spanS`, `stepS`, `fromS`, `toS` in seconds of the recording; `startMs` since 1970, empty without
    /// a clock.
    public record Plot(
            String wide,
            String narrow,
            String svg,
            String caption,
            String startMs,
            String zone,
            String spanS,
            String stepS,
            String fromS,
            String toS,
            List<Step> steps) {}

    /// A way to another view of the plot.
    public record Step(String id, String words, String href) {}

    /// A drawing by its address, with its size and its words.
    public record Picture(String wide, String narrow, Size wideSize, Size narrowSize, String words) {}

    /// Unit: pixels of the page.
    public record Size(long width, long height) {}

    /// A run in the file, and the fields by which it is decided.
    ///
    /// Shape: `key` ends the ids of its fields.
    /// Unit: `from`, `to` and `cut` in seconds of the recording, as text.
    public record RunRow(
            String key,
            String run,
            String label,
            String trial,
            String how,
            String mark,
            String word,
            String why,
            String from,
            String to,
            String cut,
            String fromClock,
            String toClock,
            String length,
            String href,
            boolean proposed,
            boolean isVoid,
            boolean chosen,
            List<RunView.Choice> causes) {
        /// What it is called in a sentence.
        public String name() {
            return trial + ", run " + label;
        }
    }

    /// The form of a run that is not there yet.
    public record NewRun(String from, String to, boolean chosen, List<TrialChoice> trials) {}

    /// A trial that a new run may belong to, with what is asked of its runs.
    public record TrialChoice(String id, String title, List<VariantField> fields) {}

    /// One question about a run's kind; free text where there are no choices.
    public record VariantField(String name, String title, String usual, List<RunView.Choice> choices) {}
}
