package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// Two to six bikes side by side; with fewer chosen only the form is filled.
///
/// Shape: `slots` hold the ids in the form's six fields, empty text where none is chosen. With `narrow` the strip and
/// what can be said share a column, since many bikes leave no room for two.
public record SideBySideView(
        String title,
        List<Option> options,
        List<String> slots,
        List<String> faults,
        List<Head> heads,
        List<Fact> facts,
        List<Part> parts,
        boolean narrow,
        String csvHref) {
    /// A bike that may be chosen.
    public record Option(String id, String title) {}

    /// A column's head: maker and model apart, and the mark of its series.
    public record Head(String maker, String model, String href, String key) {}

    /// A chapter: the rows that speak for their trials, and the rest.
    public record Part(String title, String id, List<Row> rows, List<Row> more) {}

    /// A figure in one variant; the strip is a finished drawing.
    public record Row(
            String title,
            String condition,
            String href,
            List<Cell> cells,
            String strip,
            String saying,
            List<Told> differences) {}

    /// A bike's value, or the word that stands in its place and why.
    public record Cell(String bike, Optional<ValueView> value, String word, String why) {}

    /// A difference of two bikes with its sign and without, and whether it is real.
    public record Told(String pair, String difference, String size, boolean real) {
        /// As it stands behind a sentence that says which way it is.
        public String alone() {
            return (real ? "by " : "difference ") + size;
        }

        public String word() {
            return real ? "real" : "can’t be told apart";
        }
    }

    /// A row of what makers state.
    public record Fact(String title, List<Stated> words) {}

    /// What is stated of one bike.
    public record Stated(String bike, String words) {}
}
