package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;
import org.measuredmile.desk.web.edit.Typed;

/// The form of a trial on a test day, made from its declaration, with what was typed and what became of it.
public record SheetView(
        String title,
        String bike,
        String dayHref,
        String href,
        String next,
        List<Choice> variants,
        boolean bothWays,
        String way,
        List<Field> readings,
        List<RunView.Choice> causes,
        Told told,
        List<DayView.Tick> runs,
        String count,
        String countWords,
        List<Line> so,
        Optional<Kept> kept,
        List<Field> ofDay,
        List<String> cautions,
        List<String> blockers,
        boolean timed,
        boolean hasRuns,
        Typed typed) {
    /// A variant to be chosen: one of few, or a word to be written.
    public record Choice(String name, String title, List<RunView.Choice> values, String chosen, String fault) {}

    /// A reading to be taken.
    ///
    /// Shape: `window` says which values count, `other` what the typed value is in the other system;
    /// `when` is the variant that asks for it, as `key=value`, empty for always; `only` is that in words.
    public record Field(
            String name,
            String title,
            String unit,
            String hint,
            String takenBy,
            boolean required,
            String window,
            String value,
            String other,
            String fault,
            List<String> choices,
            boolean decimal,
            String when,
            String only) {}

    /// The answer given at once: whether the run can count.
    ///
    /// Shape: `gauges` are finished charts; `frames` says what times told by a camera's frames come to; `bold`
    /// the first words; `outside` when it cannot count.
    public record Told(
            boolean said, boolean outside, List<String> gauges, List<String> frames, String bold, String more) {}

    /// A figure so far.
    public record Line(String title, String condition, ValueView value, String counted, String anyDay) {}

    /// A run just kept, and what it came to.
    public record Kept(
            String run, String href, boolean counted, String word, String reason, List<RunView.ValueRow> values) {}
}
