package org.measuredmile.comparison.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.comparison.spec.Wanted;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.day.SpecLine;

/// A verdict while it is being made.
final class Draft {
    private final SpecItem item;
    private final SpecLine line;
    private final Claimed claim;
    private Optional<Tried> measured = Optional.empty();
    private Optional<Tried> atConditions = Optional.empty();
    private List<TestedBike.Result> others = List.of();

    Draft(SpecItem item, SpecLine line, Claimed claim) {
        this.item = item;
        this.line = line;
        this.claim = claim;
    }

    Tried tried(TestedBike.Result result) {
        return tried(result, result.figure().value(), result.figure().anyDay(), Optional.empty());
    }

    Tried tried(TestedBike.Result result, double value, Uncertainty known, Optional<Tried.Under> under) {
        return new Tried(result, value, known, under, Claims.asked(item, claim).judge(value, known));
    }

    Draft measured(Tried tried) {
        measured = Optional.of(tried);
        return this;
    }

    Draft atConditions(Tried tried) {
        atConditions = Optional.of(tried);
        return this;
    }

    /// Results among which the claimed value is looked for when it does not fit.
    Draft agreeing(List<TestedBike.Result> these) {
        others = these;
        return this;
    }

    ClaimVerdict cannotTell(String reason, String remedy) {
        return verdict(Verdict.CANNOT_TELL, OptionalDouble.empty(), List.of(), Optional.empty(), reason, remedy);
    }

    /// The verdict of one of the results.
    ClaimVerdict decided(Tried by) {
        var verdict = by.judgement().verdict();
        boolean isOpen = verdict == Verdict.CANNOT_TELL;
        var agreeing = verdict == Verdict.FALLS_SHORT && !(claim.wanted() instanceof Wanted.UpTo)
                ? others.stream().filter(this::fits).map(Agreement::new).toList()
                : List.<Agreement>of();
        var more = isOpen ? moreRuns(by) : Optional.<MoreRuns>empty();
        boolean hasNoSide = isOpen && by.judgement().limit() instanceof Limit.Exactly;
        String reason = hasNoSide
                ? "the claimed value lies inside the interval; neither side of it is better, so it can be contradicted"
                        + " but not shown to hold"
                : "";
        return verdict(
                verdict,
                by.judgement().probability(),
                agreeing,
                hasNoSide ? Optional.empty() : more,
                reason,
                hasNoSide ? "a claim with its tolerance" : "");
    }

    private Optional<MoreRuns> moreRuns(Tried by) {
        var figure = by.result().figure();
        double scale = figure.value() == 0 ? 1 : by.value() / figure.value();
        double own = figure.anyDay().standard() * scale;
        double all = by.known().standard();
        double more = Math.sqrt(Math.max(0, all * all - own * own));
        return MoreRuns.of(figure, scale, more, Claims.asked(item, claim).distanceSi(by.value()));
    }

    /// Whether a value that the claim names, or a part of its range, lies inside a result's interval.
    private boolean fits(TestedBike.Result other) {
        var stated = Stated.of(other.figure().value(), other.figure().anyDay().interval95(), claim.unit());
        double[] named = claim.wanted().named();
        var low = Stated.decimal(named[0], claim.unit());
        var high = Stated.decimal(named[named.length - 1], claim.unit());
        return stated.low().compareTo(high) <= 0 && stated.high().compareTo(low) >= 0;
    }

    private ClaimVerdict verdict(
            Verdict verdict,
            OptionalDouble probability,
            List<Agreement> agreeing,
            Optional<MoreRuns> more,
            String reason,
            String remedy) {
        return new ClaimVerdict(
                item, line, claim, verdict, probability, measured, atConditions, agreeing, more, reason, remedy);
    }
}
