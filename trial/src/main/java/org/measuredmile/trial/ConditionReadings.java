package org.measuredmile.trial;

import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Conditions;
import org.measuredmile.recording.day.Reading;
import org.measuredmile.trial.ResolvedReadings.Value;

/// The conditions of day.yaml under the names that readings have, so that a run's own reading can stand before them.
final class ConditionReadings {
    private ConditionReadings() {}

    /// The day's condition of a name, where it was written down.
    static Optional<Value> find(Conditions conditions, String name) {
        return switch (name) {
            case "air-temperature" -> number(name, conditions.airTemperatureK());
            case "pressure" -> number(name, conditions.pressurePa());
            case "relative-humidity" -> number(name, conditions.relativeHumidity());
            case "wind-speed" -> number(name, conditions.windSpeedMps());
            case "state-of-charge" -> number(name, conditions.stateOfCharge());
            case "battery-temperature" -> number(name, conditions.batteryTemperatureK());
            case "wind-from" -> word(name, conditions.windFrom());
            case "surface" -> word(name, conditions.surface());
            default -> Optional.empty();
        };
    }

    private static Optional<Value> number(String name, OptionalDouble si) {
        return si.isEmpty()
                ? Optional.empty()
                : Optional.of(new Value(si.getAsDouble(), 0, "", Optional.empty(), reading(name, "")));
    }

    private static Optional<Value> word(String name, String word) {
        return word.isEmpty()
                ? Optional.empty()
                : Optional.of(new Value(0, 0, word, Optional.empty(), reading(name, word)));
    }

    private static Reading reading(String name, String value) {
        return new Reading(
                "", name, value, "", "", Optional.empty(), "", "", new Place("day.yaml", "conditions." + name));
    }
}
