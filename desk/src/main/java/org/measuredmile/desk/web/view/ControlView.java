package org.measuredmile.desk.web.view;

import java.util.List;

/// The page of the control bike.
///
/// Shape: `bikes` are those that could be it, `figures` what stands on two days and more; `chart` is empty
/// until one of them is chosen.
public record ControlView(
        String bike,
        String bikeHref,
        List<StandingsView.Choice> bikes,
        List<StandingsView.Choice> figures,
        List<Chart> chart) {
    /// One figure's chart.
    public record Chart(
            String title,
            String condition,
            String limits,
            String betweenDays,
            String wide,
            String narrow,
            String signals,
            List<Row> rows,
            List<String> components,
            List<Other> others,
            String csvHref) {}

    /// A day.
    public record Row(String date, String href, String tester, String difference, String remark) {}

    /// Another bike less the control bike.
    public record Other(String title, String href, String difference, String other, String word) {}
}
