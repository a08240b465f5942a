package org.measuredmile.comparison.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.recording.day.SpecLine;

/// What the data say of one claim of a bike's specification.
///
/// Shape: `verdict` is the one to publish: at the claim's own conditions where it was brought there, else as
/// measured. `measured` is empty where nothing was measured under any condition the claim admits. `reason` says
/// in words why the data can't tell, or why a result that misses the claim is no verdict; `remedy` what would
/// do; both empty where there is nothing to say.
public record ClaimVerdict(
        SpecItem item,
        SpecLine line,
        Claimed claim,
        Verdict verdict,
        OptionalDouble probability,
        Optional<Tried> measured,
        Optional<Tried> atConditions,
        List<Agreement> agreesWith,
        Optional<MoreRuns> moreRuns,
        String reason,
        String remedy) {
    public ClaimVerdict {
        agreesWith = List.copyOf(agreesWith);
    }

    /// The result that the verdict rests on.
    public Optional<Tried> decisive() {
        return atConditions.or(() -> measured);
    }

    /// Whether it is the best case that a claim of "up to" was held against.
    public boolean isBestCase() {
        return atConditions.flatMap(Tried::under).filter(Tried.Under::isBest).isPresent();
    }

    Judgement.Asked asked() {
        return Claims.asked(item, claim);
    }
}
