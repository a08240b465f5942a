package org.measuredmile.trial.range;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.motion.Journey;

/// How a range ride went, from its recordings or as it was written down.
///
/// Unit: metres, seconds, m²/s²; contributions relative to the distance; `ascentSdM` in metres.
/// Shape: `journey` where recordings tell; `laps` 0 where nobody counted them.
record RiddenWay(
        double distanceM,
        List<Contribution> scale,
        OptionalDouble ridingS,
        OptionalDouble meanSquareSpeed,
        OptionalDouble ascentM,
        double ascentSdM,
        OptionalDouble stops,
        int laps,
        Optional<Journey> journey,
        List<String> files,
        List<String> assumed) {
    RiddenWay {
        scale = List.copyOf(scale);
        files = List.copyOf(files);
        assumed = List.copyOf(assumed);
    }

    OptionalDouble meanSpeedMps() {
        return ridingS.isPresent() ? OptionalDouble.of(distanceM / ridingS.getAsDouble()) : OptionalDouble.empty();
    }
}
