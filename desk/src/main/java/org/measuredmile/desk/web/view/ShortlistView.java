package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;
import org.measuredmile.comparison.shortlist.WishList;

/// A reader's wishes and what came of them.
///
/// Shape: `wish` is what was typed, `expression` how it was understood; `groups` are empty until something was asked
/// and understood.
public record ShortlistView(
        String wish,
        String expression,
        List<String> faults,
        List<Heading> headings,
        List<Group> groups,
        String besideHref,
        List<Example> examples) {
    /// How a wish about any figure is written.
    public String figureExample() {
        return WishList.FIGURE_EXAMPLE;
    }

    /// A wish as a column's head, and in which variant it is answered.
    public record Heading(String wish, String condition) {}

    /// The bikes of one answer.
    public record Group(String word, String count, String meaning, List<Row> rows) {}

    /// A bike with its replies, in the order of the headings.
    public record Row(String title, String href, String kind, List<Reply> replies) {}

    /// What is said to one wish.
    ///
    /// Shape: `chance` is empty where nothing would decide; `weight` is `sure`, `maybe` or `no`.
    public record Reply(String wish, String weight, String chance, Optional<ValueView> value, String words) {
        /// The class by which its weight of ink is set.
        public String mark() {
            return switch (weight) {
                case "no" -> "heavy";
                case "maybe" -> "outlined";
                default -> "apart";
            };
        }
    }

    /// A list to begin with.
    public record Example(String words, String href) {}
}
