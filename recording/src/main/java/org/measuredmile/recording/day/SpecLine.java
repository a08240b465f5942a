package org.measuredmile.recording.day;

import org.measuredmile.recording.Place;

/// One line of a bike's specification as spec.csv holds it.
///
/// Shape: `claimed` is a value, a range or `up to X`; `conditions` a list of `key=value`; empty text where nothing was
/// written.
public record SpecLine(
        String item,
        String claimed,
        String unit,
        String conditions,
        String source,
        String date,
        String seen,
        String photo,
        String note,
        Place place) {}
