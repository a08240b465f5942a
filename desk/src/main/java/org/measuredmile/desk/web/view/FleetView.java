package org.measuredmile.desk.web.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/// The fleet: one row a bike, one column for each figure that speaks for its trial.
public record FleetView(
        List<Column> columns,
        List<Row> rows,
        List<String> categories,
        Map<String, String> orders,
        Wish wish,
        int hidden) {
    /// How many bikes there are, shown or not.
    public int bikes() {
        return rows.size() + hidden;
    }

    /// A column: what it is, how it was measured, and the axis that its small intervals share.
    public record Column(String title, String condition, String unit, String other, String axis, String href) {}

    /// A bike's row.
    public record Row(
            String href, String title, String kind, List<Optional<Cell>> cells, String days, String lastTested) {}

    /// A figure in a row.
    public record Cell(ValueView value, String tile) {}

    /// What the list was asked to show.
    public record Wish(String category, String order) {}
}
