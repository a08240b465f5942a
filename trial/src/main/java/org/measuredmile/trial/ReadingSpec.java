package org.measuredmile.trial;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Variant;

/// A reading that the trial asks for.
///
/// Shape: `when` restricts it to runs whose variant covers it ([Variant#NONE]: always); `choices` are the allowed words
/// of a reading of kind WORD. A run whose required reading is missing, unreadable or not plausible does not count.
/// Unit: `plausible` and `resolution` in the SI unit of `kind`; resolution is that of the usual instrument, used
/// when neither the instrument nor the digits written say better.
public record ReadingSpec(
        String name,
        String title,
        QuantityKind kind,
        Scope scope,
        boolean required,
        Variant when,
        Interval plausible,
        double resolution,
        Optional<Instrument.Kind> instrument,
        String takenBy,
        List<String> choices,
        String hint) {
    /// What a reading belongs to.
    public enum Scope {
        RUN,
        DAY
    }

    public ReadingSpec {
        choices = List.copyOf(choices);
    }

    /// A reading of every run.
    public static ReadingSpec ofRun(String name, String title, QuantityKind kind) {
        return new ReadingSpec(
                name,
                title,
                kind,
                Scope.RUN,
                false,
                Variant.NONE,
                Everything.INTERVAL,
                0,
                Optional.empty(),
                "tester",
                List.of(),
                "");
    }

    /// A reading taken once a day.
    public static ReadingSpec ofDay(String name, String title, QuantityKind kind) {
        return new ReadingSpec(
                name,
                title,
                kind,
                Scope.DAY,
                false,
                Variant.NONE,
                Everything.INTERVAL,
                0,
                Optional.empty(),
                "tester",
                List.of(),
                "");
    }

    public ReadingSpec mustBeGiven() {
        return new ReadingSpec(
                name, title, kind, scope, true, when, plausible, resolution, instrument, takenBy, choices, hint);
    }

    public ReadingSpec onlyWhen(String key, String value) {
        return new ReadingSpec(
                name,
                title,
                kind,
                scope,
                required,
                Variant.of(key, value),
                plausible,
                resolution,
                instrument,
                takenBy,
                choices,
                hint);
    }

    /// The range outside which a value is no measurement but a slip.
    public ReadingSpec plausible(double low, double high) {
        return new ReadingSpec(
                name,
                title,
                kind,
                scope,
                required,
                when,
                new Interval(low, high),
                resolution,
                instrument,
                takenBy,
                choices,
                hint);
    }

    public ReadingSpec by(Instrument.Kind usual, double usualResolution) {
        return new ReadingSpec(
                name,
                title,
                kind,
                scope,
                required,
                when,
                plausible,
                usualResolution,
                Optional.of(usual),
                takenBy,
                choices,
                hint);
    }

    public ReadingSpec takenBy(String role) {
        return new ReadingSpec(
                name, title, kind, scope, required, when, plausible, resolution, instrument, role, choices, hint);
    }

    public ReadingSpec oneOf(String... words) {
        return new ReadingSpec(
                name,
                title,
                kind,
                scope,
                required,
                when,
                plausible,
                resolution,
                instrument,
                takenBy,
                List.of(words),
                hint);
    }

    public ReadingSpec hint(String words) {
        return new ReadingSpec(
                name, title, kind, scope, required, when, plausible, resolution, instrument, takenBy, choices, words);
    }

    private static final class Everything {
        private static final Interval INTERVAL = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
}
