package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The numbers said in a clip, each beside the trace, with the form of the one that a person looks at.
///
/// Shape: `unset` holds the recordings that the clip does not fit, apart where another one does fit.
public record ClipView(
        String title,
        String dayHref,
        String href,
        String span,
        List<Clock> clocks,
        List<Clock> unset,
        String unsetWords,
        List<Row> rows,
        String none) {
    /// The clip's clock against one recording: how far it is off, or why that cannot be told.
    public record Clock(String mark, String word, String recording, String sentence) {}

    /// A number said.
    ///
    /// Shape: `proposal` is the reading it may be, empty when nothing fits; `form` is there for the one that
    /// was opened.
    public record Row(
            String at,
            String time,
            String clock,
            String words,
            String quantity,
            String value,
            String other,
            String sure,
            String mark,
            String agreement,
            String proposal,
            List<Taken> taken,
            Optional<Form> form) {}

    /// A reading that was made of it.
    public record Taken(String words, String href) {}

    /// What there is to choose from, and what is proposed.
    public record Form(
            List<RunView.Choice> readings,
            List<RunView.Choice> runs,
            List<RunView.Choice> riders,
            String reading,
            String run,
            String value,
            String bare) {}
}
