package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Optional;

/// The page of a test day: circumstances, check, run sheets, files, figures, findings, history.
public record DayView(
        String id,
        String href,
        String title,
        boolean usable,
        List<BikeView.Fact> facts,
        Check check,
        List<Sheet> sheets,
        List<FileRow> files,
        ColumnsView.Panel columns,
        List<Proposals> proposals,
        List<Line> figures,
        List<FindingView> findings,
        List<BikeView.Missing> notRidden,
        List<HistoryView.Row> history,
        List<String> problems) {
    /// The check of the assembled bike by two people; all empty until somebody ticked it.
    public record Check(boolean ticked, String by, String secondPerson, String time, boolean wanted) {}

    /// A trial's part of the run sheet: its runs, how many count, how many more were found, and the way to its
    /// form.
    public record Sheet(String title, String href, String count, String found, List<Tick> runs, boolean begun) {}

    /// A run on the sheet.
    public record Tick(String number, String href, String word, String css) {}

    /// A file of the day and what was found in it; `href` leads to its page, empty where it could not be read.
    public record FileRow(
            String mark,
            String state,
            String name,
            String href,
            String download,
            String format,
            String channels,
            String rate,
            String span,
            String size,
            Optional<FileView.Picture> trace,
            Optional<FileView.Picture> track,
            List<FoundIn> found,
            List<FindingView> findings,
            boolean isNew) {}

    /// The runs of one trial that lie in a file: the first of them, and how many more.
    public record FoundIn(String trial, List<FoundRun> runs, int more) {}

    /// A run in a file: its state by mark and word, and the way to it on the file's plot.
    public record FoundRun(String label, String word, String mark, String href) {}

    /// The runs of one trial that were found.
    public record Proposals(String trial, String title, List<Proposal> runs) {}

    /// A run that was found and waits for a person.
    public record Proposal(
            String run, String href, String how, String where, String values, boolean counts, String why) {}

    /// A figure of the day.
    public record Line(String title, String condition, ValueView anyDay, String thisDay, String counted) {}
}
