package org.measuredmile.trial.range;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Contribution;

/// The energy that a ride took out of the battery, and how that is known.
///
/// Unit: joules, standard uncertainties relative.
/// Shape: `parts` by name, each relative; `log` the battery's log on the journey's time base, where the energy is its.
record EnergyOut(
        Origin origin, double joules, List<Contribution> parts, List<String> assumed, Optional<BatteryLog> log) {
    /// Where an energy comes from, best first.
    enum Origin {
        LOG("by the battery's log"),
        WALL("by what was put back at the wall"),
        NOMINAL("by the battery's nominal energy");

        private final String words;

        Origin(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    EnergyOut {
        parts = List.copyOf(parts);
        assumed = List.copyOf(assumed);
    }

    /// Whether it was measured on this ride at all.
    boolean isMeasured() {
        return origin != Origin.NOMINAL;
    }

    double relativeSd() {
        double squares = 0;
        for (var part : parts) {
            squares += part.standardUncertainty() * part.standardUncertainty();
        }
        return Math.sqrt(squares);
    }
}
