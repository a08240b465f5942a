package org.measuredmile.trial.range;

import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;

/// The range ride: from a full battery until it is empty, and what each metre of it cost.
public final class Range implements Trial {
    @Override
    public Declaration declaration() {
        return RangeDeclaration.DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new RangeReduction(input, RangeRules.V1).outcome();
    }
}
