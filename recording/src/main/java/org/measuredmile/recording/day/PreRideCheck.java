package org.measuredmile.recording.day;

/// The check of the assembled bike that a second person ticks before any hard stop, start or descent counts.
///
/// Shape: `by` did it, `secondPerson` ticked it, `time` as written.
public record PreRideCheck(String by, String secondPerson, String time) {
    /// Whether two different people stand behind it.
    public boolean isTicked() {
        return !by.isBlank() && !secondPerson.isBlank() && !by.equals(secondPerson);
    }
}
