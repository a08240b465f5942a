package org.measuredmile.desk.web.view;

import java.util.List;

/// The page of an expected-value line.
///
/// Shape: `wide` and `narrow` are the drawing at two widths, empty where there is no line; `none` then says
/// why.
public record LineView(
        String title,
        String lead,
        String why,
        String wide,
        String narrow,
        String slope,
        String band,
        String none,
        String acrossHead,
        String valueHead,
        List<Row> rows,
        List<BikeView.Missing> leftOut,
        List<FindingView> findings,
        List<StandingsView.Choice> lines,
        String csvHref) {
    /// A bike: where it stands, its result, what was to be expected, and how it lies to the band.
    public record Row(
            String title,
            String href,
            String across,
            ValueView value,
            ValueView expected,
            String place,
            boolean outside) {}
}
