package org.measuredmile.trial;

import java.util.List;
import java.util.OptionalDouble;
import org.measuredmile.quantity.QuantityKind;

/// What a run's plot shows: samples, the fitted model, and the events in it.
///
/// Unit: times in seconds from `originS` on the recording's own time base; values in the SI unit of `kind`.
public record Trace(
        String recording, double originS, String originWords, QuantityKind kind, List<Line> lines, List<Event> events) {
    /// What a line of a plot is.
    public enum Role {
        SAMPLES,
        /// Samples that the reduction left out.
        DROPPED,
        MODEL
    }

    /// Points of a plot, in order of time.
    public record Line(Role role, String title, double[] timesS, double[] values) {}

    /// Something that happened, with how well its time is known.
    public record Event(String title, double timeS, double standardUncertaintyS, OptionalDouble value) {}

    public Trace {
        lines = List.copyOf(lines);
        events = List.copyOf(events);
    }
}
