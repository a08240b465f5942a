package org.measuredmile.desk.web.view;

import java.util.List;

/// The page of a bike's claims: each with its verdict, picture and sentence.
///
/// Shape: `counts` is `2 meet, 1 falls short, 3 can't tell`.
public record ClaimsView(
        String title,
        String bikeHref,
        String counts,
        String rule,
        List<Row> rows,
        String csvHref,
        String replyHref,
        ClassesView classes) {
    /// One claim. `strip` is a finished chart, empty where nothing was measured; `held` says what each line of
    /// it is, top down; `conditions` as the claim states them.
    public record Row(
            String anchor,
            String title,
            ClaimMark mark,
            String conditions,
            String source,
            String chance,
            String strip,
            List<String> held,
            String wording) {}
}
