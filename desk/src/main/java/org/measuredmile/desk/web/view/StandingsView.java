package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/// The order of a population in one figure and variant.
///
/// Shape: `many` where so many stand in it that neither combs nor bars are drawn and the table scrolls in itself;
/// `rival` is the title of the bike that the others are held against, empty without one.
public record StandingsView(
        Heading heading,
        Form form,
        Plot plot,
        String direction,
        String than,
        String rule,
        String count,
        String population,
        boolean many,
        String rival,
        List<Row> rows,
        List<Fact> spread,
        List<BikeView.Missing> leftOut,
        List<String> faults,
        Links links) {
    /// What it is of: figure, variant, units.
    public record Heading(
            String title, String condition, String href, String unit, String other, List<Choice> variants) {}

    /// The drawn columns' heads; empty text where a column is not drawn.
    public record Plot(String head, String foot, String combHead, String tallest, int columns) {}

    /// Where the table can be had as a file.
    public record Links(String csv, String json) {}

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
            Chances chances,
            boolean ledger,
            boolean notApart,
            boolean subject) {}

    /// What the draws say of a bike, in words.
    ///
    /// Shape: `beats` is empty without a rival, and in the rival's own row.
    public record Chances(String span, String likely, String best, String topThree, String betterThan, String beats) {}

    /// A number of the population with its name.
    public record Fact(String name, String value, String other) {}

    /// What a group's upright bar does in a row: begins, goes on, ends, or is not there.
    public enum GroupMark {
        NONE,
        BEGINS,
        GOES_ON,
        ENDS
    }

    /// Another variant that has results.
    public record Choice(String words, String href, boolean current) {}

    /// The form that states the population, and what may be chosen in it.
    public record Form(
            Wish wish,
            Map<String, String> variant,
            List<String> categories,
            List<String> wheels,
            List<String> currencies,
            List<Rival> rivals) {}

    /// A bike to hold the others against.
    public record Rival(String id, String title) {}

    /// The population as asked for: what the fields say, by key, and an expression beside them.
    public record Wish(Map<String, String> fields, String among, String against) {
        /// What a field says; empty where it says nothing.
        public String of(String key) {
            return fields.getOrDefault(key, "");
        }

        /// Whether a field says so.
        public boolean is(String key, String value) {
            return of(key).equals(value);
        }

        /// Whether anything is asked beyond category, drive and ledger.
        public boolean isNarrow() {
            return !among.isEmpty()
                    || !against.isEmpty()
                    || fields.keySet().stream()
                            .anyMatch(key ->
                                    !List.of("category", "drive", "ledger").contains(key));
        }
    }

    /// The list of all figures that have a standing.
    public record Contents(List<Part> parts) {}

    /// One chapter of that list.
    public record Part(String title, List<Entry> entries) {}

    /// One standing: figure, variant, how many bikes.
    public record Entry(String title, String condition, String count, String href, Optional<String> unit) {}
}
