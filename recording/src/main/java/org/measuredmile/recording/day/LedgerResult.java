package org.measuredmile.recording.day;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.measuredmile.recording.Place;

/// One result of an earlier year that has no recordings behind it.
///
/// Shape: `written` is the value as the file had it; `runs` how many runs it came from, where that was written.
/// Unit: `si` in the SI unit of the figure's quantity.
public record LedgerResult(
        String bike,
        String category,
        String figureId,
        Variant variant,
        double si,
        String written,
        Optional<LocalDate> date,
        OptionalInt runs,
        String source,
        String note,
        Place place) {}
