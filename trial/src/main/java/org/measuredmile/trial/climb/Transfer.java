package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.roadload.Ride;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// From a climb as ridden to the same climb at reference conditions: two ratios, and what each thing that is not known
/// exactly does to them.
///
/// The drive is made so strong that the modelled climb takes the time measured, and the reference rider then climbs
/// with it in the reference air without wind.
final class Transfer {
    private final TrialInput input;
    private final ClimbPower power;
    private final ClimbBasis basis;
    private final Map<ClimbBasis.Move, OptionalDouble> strengths = new HashMap<>();
    private final Map<ClimbBasis.Move, Optional<Ratios>> found = new HashMap<>();
    /// The strength found last, from which the next is looked for.
    private double near;

    /// Of time and of lowest speed, at reference over as ridden.
    record Ratios(double time, double lowest) {}

    /// Contributions relative to the figure.
    record Parts(List<Contribution> time, List<Contribution> lowest) {}

    Transfer(TrialInput input, ClimbGroup group, ClimbPower power) {
        this.input = input;
        this.power = power;
        this.basis = new ClimbBasis(input, group, power);
        this.near = Math.max(1, power.watts() / power.meanMps());
    }

    Optional<Ratios> nominal() {
        return ratios(ClimbBasis.NOTHING);
    }

    String whyNone() {
        return strength(ClimbBasis.NOTHING).isEmpty()
                ? "no drive of this kind takes the hill in the time measured"
                : "at the reference mass the bike would not climb it";
    }

    /// How the climb as ridden answers to what differs between days; nothing where no drive takes the time
    /// measured.
    Optional<DayAnswers> asRidden() {
        return answers(model -> model);
    }

    /// The same of the climb at reference conditions.
    Optional<DayAnswers> atReference() {
        return answers(model -> model.calmIn(basis.reference(ClimbBasis.NOTHING)));
    }

    private Optional<DayAnswers> answers(UnaryOperator<ClimbModel> in) {
        var all = new ArrayList<DayAnswers.Weighted>();
        for (var fall : basis.falls()) {
            var strength = strength(fall.nothing());
            if (strength.isEmpty()) {
                return Optional.empty();
            }
            var model = in.apply(basis.model(fall.nothing()));
            all.add(new DayAnswers.Weighted(model, strength.getAsDouble(), fall.weight()));
        }
        return DayAnswers.of(all);
    }

    private OptionalDouble strength(ClimbBasis.Move move) {
        var known = strengths.get(move);
        if (known != null) {
            return known;
        }
        var strength = basis.model(move).strength(power.timeS(), near);
        strength.ifPresent(one -> near = one);
        strengths.put(move, strength);
        return strength;
    }

    private Optional<Ratios> ratios(ClimbBasis.Move move) {
        return found.computeIfAbsent(move, this::worked);
    }

    private Optional<Ratios> worked(ClimbBasis.Move move) {
        var strength = strength(move);
        if (strength.isEmpty()) {
            return Optional.empty();
        }
        var model = basis.model(move);
        Ride asRidden = model.ride(strength.getAsDouble());
        Ride calm = model.calmIn(basis.reference(move)).ride(strength.getAsDouble());
        return calm.finished()
                ? Optional.of(new Ratios(
                        calm.timeS() / asRidden.timeS(), ClimbModel.lowestMps(calm) / ClimbModel.lowestMps(asRidden)))
                : Optional.empty();
    }

    List<String> assumed() {
        var all = new ArrayList<String>();
        all.addAll(basis.slopeAssumed());
        if (!basis.isDriveKnown()) {
            all.add("drive force falling as one over the speed to the power 1 ± 0.35: no standing start told it");
        }
        all.addAll(power.road().assumed());
        all.addAll(UsedLoad.of(input).assumed());
        if (!power.wind().assumed().isEmpty()) {
            all.add(power.wind().assumed());
        }
        return all;
    }

    /// What each input's standard uncertainty does to both ratios, relative to them.
    Parts parts() {
        return new Parts(
                basis.contributions((move, from) -> moved(move, from, Ratios::time)),
                basis.contributions((move, from) -> moved(move, from, Ratios::lowest)));
    }

    /// A step after which the hill cannot be climbed tells that the ratio is not known at all.
    private double moved(ClimbBasis.Move move, ClimbBasis.Move from, ToDoubleFunction<Ratios> take) {
        return ratios(move)
                .flatMap(there -> ratios(from).map(here -> take.applyAsDouble(there) / take.applyAsDouble(here) - 1))
                .orElse(1.0);
    }
}
