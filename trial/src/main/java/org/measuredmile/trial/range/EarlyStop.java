package org.measuredmile.trial.range;

import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.quantity.statistics.ModeratedScatter;

/// How far a ride that stopped early would have gone: the way ridden over the share of the usable energy that it took.
///
/// Formula: R = d/f; u² = u²(energies) + [n_rem/(n_done + n_rem)·s·√(1/n_done + 1/n_rem)]², n_rem = n_done·(1/f − 1), s
/// the scatter of laps. A prediction, labelled so, beside "at least" what was ridden.
/// Unit: metres; `used` is f; `energySd` relative.
record EarlyStop(double wayM, double used, int lapsDone, double energySd, ModeratedScatter laps) {
    double predictedM() {
        return wayM / used;
    }

    double lapsLeft() {
        return lapsDone * (1 / used - 1);
    }

    /// What the laps that were not ridden may differ by, relative.
    double lapSd() {
        double left = lapsLeft();
        return left <= 0
                ? 0
                : left / (lapsDone + left) * laps.standardDeviation() * Math.sqrt(1.0 / lapsDone + 1 / left);
    }

    Contribution byLaps() {
        return new Contribution(
                "laps that were not ridden",
                Contribution.Evaluation.A,
                lapSd() * predictedM(),
                laps.degreesOfFreedom(),
                "");
    }

    Contribution byEnergy() {
        return Contribution.typeB("energy used and usable", energySd * predictedM());
    }

    Uncertainty uncertainty() {
        return Budget.of(byLaps(), byEnergy()).around(predictedM());
    }
}
