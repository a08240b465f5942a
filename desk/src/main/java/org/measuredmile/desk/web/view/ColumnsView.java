package org.measuredmile.desk.web.view;

import java.util.List;

/// The page that says what the columns of an instrument's tables mean.
///
/// Shape: `told` says where the settings shown come from; `isKnown` whether day.yaml names the
/// instrument; `meanings` and `units` are what can be chosen.
public record ColumnsView(
        String day,
        String dayHref,
        String href,
        String instrument,
        boolean isKnown,
        String kind,
        List<RunView.Choice> kinds,
        String told,
        List<String> files,
        List<Row> rows,
        List<RunView.Choice> meanings,
        List<String> units,
        List<FindingView> findings) {
    /// A column: what was set (empty where the file is to say it), what it is read as, and its first values.
    public record Row(int number, String name, String meaning, String unit, String readAs, String first) {}

    /// An instrument on the test day's page, with the way to its columns.
    public record Link(String instrument, String href, String kind, String told) {}

    /// The instruments of a day that has tables; `wanted` where a table was read or anything is set.
    public record Panel(boolean wanted, String href, List<Link> links, List<RunView.Choice> kinds) {}
}
