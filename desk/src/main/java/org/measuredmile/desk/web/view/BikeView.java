package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The page of a bike: its figures by the questions a reader asks, what was not ridden, and what was done.
public record BikeView(
        String title,
        List<BikeTab.Link> tabs,
        List<Fact> facts,
        List<ChapterPart> chapters,
        List<Missing> notRidden,
        List<HistoryView.Row> history,
        List<DayLink> days,
        String claimsHref,
        String claimCounts) {
    /// One circumstance under the heading.
    public record Fact(String name, String words) {}

    /// A test day of the bike.
    public record DayLink(String href, String words) {}

    /// One chapter: remarks for the margin, results, what has no result yet, and further results behind a fold.
    public record ChapterPart(
            String title,
            String anchor,
            List<String> remarks,
            List<Result> results,
            List<LevelsOfDays> levels,
            List<Missing> missing,
            List<Result> more) {}

    /// A figure by level: the standing day's, and those of other days.
    public record LevelsOfDays(Levels standing, List<Levels> others) {}

    /// One result, and what was measured of the same on other days.
    ///
    /// Shape: `strip` is a finished chart; `standingHref` leads to the order it stands in; `proposed` when a run of
    /// it was not yet confirmed by a person; `claim` what the data say of a claim that it answers.
    public record Result(
            String title,
            String condition,
            ValueView value,
            String strip,
            String standingHref,
            String place,
            boolean proposed,
            Optional<ClaimMark> claim,
            Optional<OriginView> origin,
            List<Other> others) {}

    /// The same figure of another day, in one line, and where that comes from.
    public record Other(String words, Optional<OriginView> origin) {}

    /// A figure measured at several levels: one plot, then a line a level.
    ///
    /// Shape: `place` is the day, and the configuration where there is more than one.
    public record Levels(
            String title, String condition, String place, String wide, String narrow, List<Result> results) {}

    /// What is not there, and why, and what would do.
    public record Missing(String title, String word, String reason) {}
}
