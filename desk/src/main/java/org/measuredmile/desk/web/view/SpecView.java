package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// A bike's spec sheet as its page shows it.
public record SpecView(
        String title,
        String href,
        List<BikeTab.Link> tabs,
        List<Count> counts,
        List<Part> parts,
        List<String> sums,
        List<FindingView> findings,
        List<String> missing,
        String sheetHref,
        String dayWords,
        Form form) {
    /// How many lines have a status.
    public record Count(String mark, String word, long lines) {}

    /// The lines of one part of the bike.
    public record Part(String title, String anchor, List<Line> lines) {}

    /// One item.
    ///
    /// Shape: `claimed`, `seen` and `measured` are each empty where there is none; `under` is the second line: the
    /// claim's conditions, source and date; `href` leads to the form with this line in it.
    public record Line(
            String item,
            String mark,
            String status,
            String css,
            String why,
            String claimed,
            String under,
            String seen,
            String photo,
            Optional<ValueView> measured,
            String measuredHow,
            String measuredHref,
            String derived,
            String note,
            String href) {}

    /// The form: a line to be added, or one that is there already.
    public record Form(String heading, List<RunView.Choice> items, boolean isChange) {}
}
