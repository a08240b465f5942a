package org.measuredmile.comparison.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.spec.ClaimText;
import org.measuredmile.comparison.spec.ClaimText.Claimed;
import org.measuredmile.comparison.spec.SpecItem;
import org.measuredmile.comparison.spec.SpecItems;
import org.measuredmile.comparison.spec.Wanted;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityText;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Trials;

/// Holds the claims of a bike against its figures, line by line.
public final class Claims {
    static final String RANGE = "range.distance";
    static final String TOLERANCE = "tolerance";
    private static final String REFERENCE = "at";
    /// Trials whose figures no rider, road or weather changes.
    private static final List<String> STANDING_STILL = List.of("weighin", "charging");

    private final TestedBike bike;
    private final Map<String, TestDay> days;

    private Claims(TestedBike bike, Map<String, TestDay> days) {
        this.bike = bike;
        this.days = days;
    }

    /// Every claim that a figure could answer, in the order of the specification.
    ///
    /// @param days the bike's test days by id, for the conditions they were ridden in; a missing one only
    /// means that nothing is known of them
    public static List<ClaimVerdict> of(TestedBike bike, Map<String, TestDay> days) {
        var claims = new Claims(bike, days);
        var verdicts = new ArrayList<ClaimVerdict>();
        for (var line : bike.bike().spec()) {
            claims.verdict(line).ifPresent(verdicts::add);
        }
        return List.copyOf(verdicts);
    }

    private Optional<ClaimVerdict> verdict(SpecLine line) {
        var item = SpecItems.named(line.item());
        if (item.isWords() || item.measure().isEmpty()) {
            return Optional.empty();
        }
        return ClaimText.read(line, item.kind()) instanceof Claimed claim
                ? Optional.of(verdict(item, line, claim))
                : Optional.empty();
    }

    private ClaimVerdict verdict(SpecItem item, SpecLine line, Claimed claim) {
        return item.measure().orElseThrow().figure().equals(RANGE)
                ? new RangeClaim(bike, days, item, line, claim).verdict()
                : plain(item, line, claim);
    }

    /// A claim whose figure is taken as it was measured.
    private ClaimVerdict plain(SpecItem item, SpecLine line, Claimed claim) {
        var draft = new Draft(item, line, claim);
        var wanted = wanted(item, claim);
        var strange = strangeConditions(item, claim, wanted);
        var result = latest(item.measure().orElseThrow().figure(), wanted);
        if (result.isEmpty()) {
            String how = wanted.equals(Variant.NONE) ? "" : " (" + words(item, wanted) + ")";
            return draft.cannotTell("it was not measured" + how, whatWouldDo(item));
        }
        var tried = draft.tried(result.get());
        draft.measured(tried);
        if (!strange.isEmpty()) {
            return draft.cannotTell(
                    "the claim is made for " + strange + ", which this figure was not measured under",
                    "measure it under " + strange);
        }
        boolean opensOtherConditions = claim.wanted() instanceof Wanted.UpTo
                && item.better() == Better.MORE
                && !STANDING_STILL.contains(result.get().figure().trial());
        if (opensOtherConditions && tried.judgement().verdict() == Verdict.FALLS_SHORT) {
            return draft.cannotTell(
                    "“up to” admits better conditions than those it was measured under",
                    "measure it at the best conditions the claim admits");
        }
        return draft.agreeing(others(result.get())).decided(tried);
    }

    private Optional<TestedBike.Result> latest(String figure, Variant wanted) {
        return bike.of(figure).stream()
                .filter(one -> variant(one).get(REFERENCE).isEmpty())
                .filter(one -> variant(one).covers(wanted))
                .min(Comparator.comparing(TestedBike.Result::date)
                        .reversed()
                        .thenComparing(one -> variant(one).values().size())
                        .thenComparing(one -> one.figure().key()));
    }

    /// The keys that a figure's variant must have: those the item says, and conditions that are keys of the
    /// figure.
    static Variant wanted(SpecItem item, Claimed claim) {
        var measure = item.measure().orElseThrow();
        var wanted = measure.variant(claim.conditions());
        var keys =
                Trials.figure(measure.figure()).map(spec -> spec.variantKeys()).orElse(List.of());
        for (var condition : claim.conditions().entrySet()) {
            boolean isTranslated = measure.byCondition().containsKey(condition.getKey() + "=" + condition.getValue());
            if (keys.contains(condition.getKey()) && !isTranslated) {
                wanted = wanted.with(condition.getKey(), condition.getValue());
            }
        }
        return wanted;
    }

    /// The conditions that neither choose a variant nor are known here, as they were written.
    private static String strangeConditions(SpecItem item, Claimed claim, Variant wanted) {
        var measure = item.measure().orElseThrow();
        var strange = new LinkedHashMap<>(claim.conditions());
        strange.entrySet()
                .removeIf(one -> one.getKey().equals(TOLERANCE)
                        || wanted.has(one.getKey(), one.getValue())
                        || measure.byCondition().containsKey(one.getKey() + "=" + one.getValue())
                        || (STANDING_STILL.contains(trialOf(measure.figure()))
                                && one.getKey().equals("rider-mass")));
        return strange.entrySet().stream()
                .map(one -> one.getKey() + "=" + one.getValue())
                .collect(java.util.stream.Collectors.joining(" "));
    }

    private static String trialOf(String figure) {
        return figure.substring(0, figure.indexOf('.'));
    }

    static String words(SpecItem item, Variant variant) {
        String figure = item.measure().orElseThrow().figure();
        return Trials.delivering(figure)
                .map(trial -> trial.declaration().words(variant))
                .orElse(variant.text());
    }

    static String whatWouldDo(SpecItem item) {
        String figure = item.measure().orElseThrow().figure();
        return Trials.delivering(figure)
                .map(trial -> trial.declaration().title().toLowerCase(java.util.Locale.ROOT) + ", "
                        + trial.declaration().runs().usual()
                        + (trial.declaration().runs().usual() == 1 ? " run" : " runs"))
                .orElse("a measurement; no trial of ours gives it yet");
    }

    /// The latest result of each other variant or configuration.
    private List<TestedBike.Result> others(TestedBike.Result own) {
        record Way(FigureKey key, String configuration) {}
        var ways = new LinkedHashMap<Way, TestedBike.Result>();
        for (var one : bike.of(own.figure().key().figure())) {
            var way = new Way(one.figure().key(), one.configuration());
            boolean isOwn = way.equals(new Way(own.figure().key(), own.configuration()));
            if (!isOwn && variant(one).get(REFERENCE).isEmpty()) {
                ways.putIfAbsent(way, one);
            }
        }
        return List.copyOf(ways.values());
    }

    static Variant variant(TestedBike.Result result) {
        return result.figure().key().variant();
    }

    static Judgement.Asked asked(SpecItem item, Claimed claim) {
        return new Judgement.Asked(claim.wanted(), item.better(), claim.unit(), tolerance(claim));
    }

    private static OptionalDouble tolerance(Claimed claim) {
        String text = claim.conditions().getOrDefault(TOLERANCE, "");
        return QuantityText.parse(text, claim.kind(), claim.unit()) instanceof Parsed.Value value
                ? OptionalDouble.of(Math.abs(value.si()))
                : OptionalDouble.empty();
    }
}
