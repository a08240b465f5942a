package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.statistics.ModeratedScatter;
import org.measuredmile.quantity.statistics.Sample;
import org.measuredmile.recording.Mark;
import org.measuredmile.trial.TrialInput;

/// Whether the range of a ride that stopped early can be predicted, and what it would be.
final class Prediction {
    private final TrialInput input;
    private final RangeRules rules;
    private final RangeRun ride;

    Prediction(TrialInput input, RangeRules rules, RangeRun ride) {
        this.input = input;
        this.rules = rules;
        this.ride = ride;
    }

    /// What came of it.
    sealed interface Result {}

    /// A prediction, and what was taken for granted.
    record Found(EarlyStop stop, List<String> assumed) implements Result {}

    /// No prediction, and why not.
    record Refused(String reason) implements Result {}

    private record Usable(double joules, double relativeSd) {}

    Result find() {
        if (ride.energy().filter(EnergyOut::isMeasured).isEmpty()) {
            return new Refused("its energy was neither logged nor put back at a wall meter");
        }
        var assumed = new ArrayList<String>();
        var usable = usable(assumed);
        if (usable.joules() <= 0) {
            return new Refused("neither the battery's usable energy nor its nominal one is known");
        }
        var way = ride.way().orElseThrow();
        if (way.laps() < rules.fewestLaps()) {
            return new Refused(way.laps() + " laps, at least " + rules.fewestLaps() + " needed");
        }
        double used = ride.energy().orElseThrow().joules() / usable.joules();
        if (used < rules.leastUsed()) {
            return new Refused(String.format(
                    Locale.ROOT,
                    "%.0f %% of the battery used, at least %.0f %% needed",
                    100 * used,
                    100 * rules.leastUsed()));
        }
        double energySd = StrictMath.hypot(
                usable.relativeSd(), ride.energy().orElseThrow().relativeSd());
        double share = Math.min(1, used);
        return new Found(new EarlyStop(way.distanceM(), share, way.laps(), energySd, lapScatter()), assumed);
    }

    private Usable usable(List<String> assumed) {
        var measured = input.readings().of(ride.run().id(), "usable-energy");
        if (measured.isPresent()) {
            return new Usable(measured.get().si(), rules.usableMeasuredSd());
        }
        var nominal = input.bike().claimed("battery-energy", QuantityKind.ENERGY);
        if (nominal.isEmpty()) {
            return new Usable(0, 0);
        }
        assumed.add("usable energy: 93 ± 3 % of the nominal");
        return new Usable(nominal.getAsDouble() * rules.usableShare(), rules.usableShareSd() / rules.usableShare());
    }

    /// How the laps' energies differ: what is usual, moderated by the laps that were logged.
    private ModeratedScatter lapScatter() {
        var prior = new ModeratedScatter(rules.lapScatter(), rules.lapDegrees());
        double[] energies = lapEnergies();
        if (energies.length < 2) {
            return prior;
        }
        var sample = Sample.of(energies);
        return ModeratedScatter.of(
                rules.lapScatter(),
                rules.lapDegrees(),
                Sample.of(java.util.Arrays.stream(energies)
                        .map(one -> one / sample.mean())
                        .toArray()));
    }

    private double[] lapEnergies() {
        var log = ride.energy().flatMap(EnergyOut::log);
        var journey = ride.way().flatMap(RiddenWay::journey);
        if (log.isEmpty() || journey.isEmpty()) {
            return new double[0];
        }
        return journey.get().legs().stream()
                .flatMap(leg -> leg.recording().marks(Mark.Kind.LAP).stream()
                        .map(lap -> log.get().between(lap.fromS() + leg.shiftS(), lap.toS() + leg.shiftS())))
                .mapToDouble(BatteryLog.Given::joules)
                .filter(one -> one > 0)
                .toArray();
    }
}
