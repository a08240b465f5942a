package org.measuredmile.trial.range;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.RoadSetting;

/// One range ride and all that is known of it.
///
/// Shape: `reason` is empty when it counts; `level` has the keys level and levelRole; `conditions` are there where
/// speeds are known.
record RangeRun(
        Run run,
        Variant level,
        String reason,
        Ending ending,
        Optional<RiddenWay> way,
        Optional<EnergyOut> energy,
        Optional<Conditions> conditions,
        List<String> assumed) {
    /// Mean square over square of the mean speed of a ride with some hills and stops.
    static final double SPEEDS_VARY = 1.05;

    /// What the ride asked of the battery, and how well that is known.
    record Conditions(RideConditions ride, RoadSetting setting, double riderKg, ReferenceRatio.Spreads spreads) {}

    boolean counts() {
        return reason.isEmpty();
    }

    boolean isEmptied() {
        return ending.isEmptied();
    }

    OptionalDouble distanceM() {
        return way.map(one -> OptionalDouble.of(one.distanceM())).orElse(OptionalDouble.empty());
    }

    OptionalDouble energyJ() {
        return energy.map(one -> OptionalDouble.of(one.joules())).orElse(OptionalDouble.empty());
    }

    OptionalDouble joulesPerMetre() {
        return way.isPresent() && energy.isPresent()
                ? OptionalDouble.of(energy.get().joules() / way.get().distanceM())
                : OptionalDouble.empty();
    }

    List<Contribution> scale() {
        return way.map(RiddenWay::scale).orElse(List.of());
    }

    List<Contribution> energyParts() {
        return energy.map(EnergyOut::parts).orElse(List.of());
    }
}
