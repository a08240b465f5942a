package org.measuredmile.recording.day;

import java.time.Instant;
import java.util.Optional;
import org.measuredmile.recording.Place;

/// A value that a person or an instrument wrote down, as it was written.
///
/// Shape: `run` is empty for a reading that belongs to the day; `value` is text in any usual spelling, `unit` the text
/// of the unit column and empty when the value carries its own. What quantity it is, the trial's declaration knows.
public record Reading(
        String run,
        String name,
        String value,
        String unit,
        String instrument,
        Optional<Instant> time,
        String by,
        String note,
        Place place) {
    /// Value and unit as one text.
    public String written() {
        return unit.isEmpty() ? value : value + " " + unit;
    }
}
