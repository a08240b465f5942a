package org.measuredmile.desk.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.measuredmile.comparison.standing.StandingRow;

/// The upright bars through rows that can't be told apart, set into as few columns as they need not to overlap.
///
/// Shape: for each column the bars in it, each from a first to a last row.
record GroupColumns(List<List<Bar>> columns) {
    /// A bar from one row to another, both belonging to it.
    record Bar(int first, int last) {}

    static GroupColumns of(List<StandingRow> rows) {
        var bars = new TreeMap<Integer, Bar>();
        for (int i = 0; i < rows.size(); i++) {
            for (int group : rows.get(i).groups()) {
                int row = i;
                bars.merge(group, new Bar(row, row), (known, now) -> new Bar(known.first(), row));
            }
        }
        var columns = new ArrayList<List<Bar>>();
        for (Bar bar : bars.values()) {
            columns.stream()
                    .filter(column -> column.getLast().last() < bar.first())
                    .findFirst()
                    .ifPresentOrElse(column -> column.add(bar), () -> columns.add(new ArrayList<>(List.of(bar))));
        }
        return new GroupColumns(columns);
    }

    int count() {
        return columns.size();
    }

    /// What each column shows in a row.
    List<StandingsView.GroupMark> marks(int row) {
        return columns.stream()
                .map(column -> column.stream()
                        .filter(bar -> bar.first() <= row && row <= bar.last())
                        .map(bar -> mark(bar, row))
                        .findFirst()
                        .orElse(StandingsView.GroupMark.NONE))
                .toList();
    }

    private static StandingsView.GroupMark mark(Bar bar, int row) {
        if (row == bar.first()) {
            return StandingsView.GroupMark.BEGINS;
        }
        return row == bar.last() ? StandingsView.GroupMark.ENDS : StandingsView.GroupMark.GOES_ON;
    }
}
