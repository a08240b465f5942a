package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The order of a population in one figure and variant.
public record StandingsView(
        String title,
        String condition,
        String href,
        String unit,
        String other,
        String direction,
        String count,
        String population,
        List<Choice> variants,
        Wish wish,
        List<String> categories,
        String head,
        String foot,
        String combHead,
        String tallest,
        int columns,
        List<Row> rows,
        List<BikeView.Missing> leftOut,
        List<String> faults,
        String csvHref) {
    /// A bike's line; its charts are finished.
    public record Row(
            String rank,
            String title,
            String href,
            String kind,
            String date,
            ValueView value,
            String tile,
            List<GroupMark> groups,
            String comb,
            String span,
            boolean ledger,
            boolean notApart,
            boolean subject) {}

    /// What a group's upright bar does in a row: begins, goes on, ends, or is not there.
    public enum GroupMark {
        NONE,
        BEGINS,
        GOES_ON,
        ENDS
    }

    /// Another variant that has results.
    public record Choice(String words, String href, boolean current) {}

    /// The population as asked for.
    public record Wish(String category, String drive, boolean ledger, String among) {}

    /// The list of all figures that have a standing.
    public record Contents(List<Part> parts) {}

    /// One chapter of that list.
    public record Part(String title, List<Entry> entries) {}

    /// One standing: figure, variant, how many bikes.
    public record Entry(String title, String condition, String count, String href, Optional<String> unit) {}
}
