package org.measuredmile.comparison.verdict;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.TestedBike.Result;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.comparison.spec.Wanted;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureKey;

/// A claimed range, held against the range as ridden and against what that ride would have been under the
/// claim's own conditions.
///
/// The verdict is the one at the claim's conditions. "Up to" falls short only when the best conditions that the
/// claim admits do not reach it: the lightest rider, warm air, no wind, a level road, the lowest level.
final class RangeClaim {
    private static final String MEAN_SPEED = "range.mean-speed";
    private static final String AT_LEAST = "range.at-least";
    private static final String LEVEL_SPEED = "assistspeed.speed";
    private static final String WITH_A_METER = "ride it by throttle alone, or with a power meter";

    private final TestedBike bike;
    private final Map<String, TestDay> days;
    private final RangeConditions conditions;
    private final boolean isBest;
    private final Draft draft;

    RangeClaim(TestedBike bike, Map<String, TestDay> days, SpecItem item, SpecLine line, Claimed claim) {
        this.bike = bike;
        this.days = days;
        this.conditions = RangeConditions.of(claim);
        this.isBest = claim.wanted() instanceof Wanted.UpTo;
        this.draft = new Draft(item, line, claim);
    }

    ClaimVerdict verdict() {
        var ridden = ridden(Claims.RANGE, conditions.level());
        if (ridden.isPresent()) {
            return held(ridden.get());
        }
        var stopped = ridden(AT_LEAST, conditions.level());
        if (stopped.isPresent()) {
            return bounded(stopped.get());
        }
        return conditions.level().has("levelRole", "lowest") && isBest ? lowestByModel() : notRidden();
    }

    private ClaimVerdict notRidden() {
        String level = conditions.isLevelNamed() ? " at " + RangeConditions.levelWords(conditions.level()) : "";
        return draft.cannotTell("no range was ridden to its end" + level, "a range ride" + level);
    }

    /// The result of the claim's level; of any level the one that went furthest where the claim names none.
    private Optional<Result> ridden(String figure, Variant level) {
        var furthest = Comparator.comparingDouble((Result one) -> one.figure().value());
        var latest = Comparator.comparing(Result::date);
        return bike.of(figure).stream()
                .filter(one -> Claims.variant(one).get("at").isEmpty())
                .filter(one -> Claims.variant(one).covers(level))
                .max(conditions.isLevelNamed() ? latest.thenComparing(furthest) : furthest.thenComparing(latest));
    }

    /// A ride that was stopped early can only show that a claim is met.
    private ClaimVerdict bounded(Result stopped) {
        var tried = draft.tried(stopped);
        draft.measured(tried);
        return tried.judgement().verdict() == Verdict.MEETS
                ? draft.decided(tried)
                : draft.cannotTell(
                        "the ride was stopped early, so that the range is only known to be at least what was ridden",
                        "a range ride to its end");
    }

    private ClaimVerdict held(Result ridden) {
        var measured = draft.tried(ridden);
        draft.measured(measured);
        if (!conditions.strange().isEmpty()) {
            String strange = String.join(" ", conditions.strange());
            return draft.cannotTell(
                    "the claim is made for " + strange + ", which the road load says nothing of",
                    "ride it under " + strange);
        }
        return switch (elsewhere(ridden, OptionalDouble.empty())) {
            case Elsewhere.Unreachable(String why, String remedy) -> unreachable(measured, why, remedy);
            case Elsewhere.Brought(Tried at) -> decided(ridden, measured, at);
        };
    }

    /// Where nothing can be said at the claim's conditions, a best case that was met on the road is still met.
    private ClaimVerdict unreachable(Tried measured, String why, String remedy) {
        return isBest && measured.judgement().verdict() == Verdict.MEETS
                ? draft.decided(measured)
                : draft.cannotTell(why, remedy);
    }

    private ClaimVerdict decided(Result ridden, Tried measured, Tried at) {
        draft.atConditions(at);
        boolean isShort = at.judgement().verdict() == Verdict.FALLS_SHORT;
        boolean isLowest = Claims.variant(ridden).has("levelRole", "lowest")
                || bike.bike().levels().orElse(0) == 1;
        if (isShort && !conditions.isLevelNamed() && !isLowest) {
            return draft.cannotTell(
                    "the claim names no level, and the lowest was not ridden", "a range ride at the lowest level");
        }
        if (isBest
                && measured.judgement().verdict() == Verdict.MEETS
                && at.judgement().verdict() != Verdict.MEETS) {
            return draft.decided(measured);
        }
        return draft.agreeing(otherLevels(ridden)).decided(at);
    }

    private List<Result> otherLevels(Result ridden) {
        return bike.of(Claims.RANGE).stream()
                .filter(one -> Claims.variant(one).get("at").isEmpty())
                .filter(one -> !one.figure().key().equals(ridden.figure().key()))
                .toList();
    }

    /// "Up to" at a lowest level that nobody rode to its end: what the road load makes of another ride at
    /// that level's speed can only show that no condition reaches the claim.
    private ClaimVerdict lowestByModel() {
        var other = ridden(Claims.RANGE, Variant.NONE);
        var slow = bike.of(LEVEL_SPEED).stream()
                .filter(one -> Claims.variant(one).has("levelRole", "lowest"))
                .findFirst();
        if (other.isEmpty() || slow.isEmpty() || !conditions.strange().isEmpty()) {
            return notRidden();
        }
        var speed = OptionalDouble.of(slow.get().figure().value());
        if (elsewhere(other.get(), speed) instanceof Elsewhere.Brought(Tried at)
                && at.judgement().verdict() == Verdict.FALLS_SHORT) {
            return draft.atConditions(at).decided(at);
        }
        return draft.cannotTell(
                "no range was ridden to its end at the lowest level, and what the road load makes of the ride at "
                        + RangeConditions.levelWords(Claims.variant(other.get())) + " does not exclude it",
                "a range ride at the lowest level");
    }

    private Elsewhere elsewhere(Result ridden, OptionalDouble otherLevelMps) {
        var atReference = sibling(ridden, Claims.RANGE, Claims.variant(ridden).with("at", "reference"));
        var speed = sibling(ridden, MEAN_SPEED, Claims.variant(ridden));
        if (atReference.isEmpty() || speed.isEmpty()) {
            return new Elsewhere.Unreachable(
                    "the ride could not be brought to other conditions than its own", WITH_A_METER);
        }
        var day = Optional.ofNullable(days.get(ridden.day()));
        return new RangeBrought(bike, day, conditions, isBest)
                .of(atReference.get(), speed.get().figure().value(), otherLevelMps, draft);
    }

    private Optional<Result> sibling(Result ridden, String figure, Variant variant) {
        return bike.of(figure).stream()
                .filter(one -> one.figure().key().equals(new FigureKey(figure, variant)))
                .filter(one -> one.day().equals(ridden.day()))
                .findFirst();
    }
}
