package org.measuredmile.trial.assistspeed;

import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;

/// The mean of the passages in one direction, known as well as their own wander says, or less well where they differ by
/// more than that.
///
/// Unit: metres per second. `ratio` is the root of the reduced χ² of the passages about their mean.
/// Source: the factor is Birge's ratio, used from 1.5 in χ² on; from memory.
record PassMean(
        double speedMps, double standardUncertaintyMps, double degreesOfFreedom, double ratio, List<LevelPass> passes) {
    private static final double TOO_LARGE = 1.5;

    static PassMean of(List<LevelPass> passes) {
        int n = passes.size();
        double mean = passes.stream().mapToDouble(LevelPass::speedMps).average().orElseThrow();
        var budget = new Budget(passes.stream()
                .map(pass -> Contribution.typeA("passage", pass.wanderMps() / n, pass.degreesOfFreedom()))
                .toList());
        double chi = 0;
        for (var pass : passes) {
            double scaled = (pass.speedMps() - mean) / pass.wanderMps();
            chi += scaled * scaled;
        }
        double reduced = n < 2 ? 0 : chi / (n - 1);
        boolean differ = reduced > TOO_LARGE;
        return new PassMean(
                mean,
                budget.standardUncertainty() * (differ ? Math.sqrt(reduced) : 1),
                differ ? Math.max(n - 1, 1) + 2.0 : Math.max(1, budget.effectiveDegreesOfFreedom()),
                Math.sqrt(reduced),
                passes);
    }

    Optional<Finding> disagreement(String level) {
        if (ratio * ratio <= TOO_LARGE) {
            return Optional.empty();
        }
        return Optional.of(Finding.warning(
                "passages-differ",
                passes.getFirst().run().place(),
                String.format(
                        java.util.Locale.ROOT,
                        "%s: passages in one direction differ by %.1f times what they wander by; the interval is "
                                + "that much wider",
                        level,
                        ratio),
                "look for a change of effort, wind or level between them"));
    }
}
