package org.measuredmile.trial.braking;

import java.util.List;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Limit;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RecordingSpec;
import org.measuredmile.trial.Saying;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;

/// Braking: how far the bike takes to stop from a stated speed, both brakes, on the level.
public final class Braking implements Trial {
    /// Scatter from run to run and from day to day of anything a stop gives: one rider's stops scatter by 3 to 8
    /// %, and what mark and entry speed add is in it. House values.
    private static final Scatter TAPED = new Scatter(0.047, 12, 0.03, 12, true);

    private static final Scatter TRACED = new Scatter(0.042, 12, 0.031, 12, true);

    /// Nothing but the developed braking is in it, so the rider's scatter shows in full.
    private static final Scatter DEVELOPED = new Scatter(0.046, 12, 0.037, 12, true);

    static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of("braking", 1, "Braking")
                .purpose("How far the bike takes to stop from a stated speed with both brakes on level road.")
                .caution("Only on a closed or private road where hard braking is allowed; never in "
                        + "traffic. Local law and the owner of the road decide.")
                .caution("Helmet, gloves, long sleeves, closed shoes. Build up from gentle stops; a "
                        + "grabbed front brake can throw the rider over the bars.")
                .caution("A second person checks brakes, wheels, axles, bars and battery lock first. "
                        + "When anything feels wrong, stop the trial; a qualified mechanic looks at "
                        + "the bike before it goes on.")
                .caution("Wet stops only after dry ones, from no higher speed, and away from paint and covers.")
                .follows("EN 14766:2005, 4.6.7.5.1 for the speed correction and its window; the "
                        + "trade's habit of stops from 20 mph; Directive 93/14/EEC for the mean fully "
                        + "developed deceleration")
                .onlyAfterPreRideCheck()
                .runs(6, 1, false);
        causes(builder);
        variants(builder);
        readings(builder);
        figures(builder);
        return builder.handbook(BrakingHandbook.PAGE);
    }

    private static void causes(Declaration.Builder builder) {
        builder.voidWhen("traffic", "somebody or something was in the way")
                .voidWhen("not-straight", "the bike left its line or the rider steered")
                .voidWhen("one-brake", "only one brake was used")
                .voidWhen("foot-down", "a foot went down before the bike stood")
                .voidWhen("early", "braking began before the mark")
                .voidWhen("mark-missed", "the mark was not fired or not seen")
                .voidWhen("surface", "a wet patch, gravel, paint or a cover lay in the stop")
                .voidWhen("gust", "a gust hit the rider")
                .voidWhen("rider", "the rider was not ready, not seated as agreed, or let go of the brakes");
    }

    private static void variants(Declaration.Builder builder) {
        builder.variant(new VariantKey(
                        "method",
                        "method",
                        List.of(new Choice("tape", "by tape"), new Choice("trace", "by trace")),
                        "tape"))
                .variant(new VariantKey(
                        "surface",
                        "surface",
                        List.of(new Choice("dry", "in the dry"), new Choice("wet", "in the wet")),
                        "dry"))
                .variant(new VariantKey(
                        "nominal",
                        "from",
                        List.of(new Choice("20-mph", "from 20 mph"), new Choice("25-kmh", "from 25 km/h")),
                        "20-mph"));
    }

    private static void readings(Declaration.Builder builder) {
        builder.reading(ReadingSpec.ofRun("entry-speed", "entry speed", QuantityKind.SPEED)
                        .mustBeGiven()
                        .onlyWhen("method", "tape")
                        .plausible(2, 20)
                        .by(Instrument.Kind.RECEIVER, Unit.KILOMETRE_PER_HOUR.toSi(0.1))
                        .hint("what the speed display showed at the mark"))
                .reading(ReadingSpec.ofRun("stopping-distance", "stopping distance", QuantityKind.LENGTH)
                        .mustBeGiven()
                        .onlyWhen("method", "tape")
                        .plausible(1, 40)
                        .by(Instrument.Kind.TAPE, 0.01)
                        .hint("from the mark to where the front wheel touches the road"))
                .reading(word("wheel-lock", "wheel locked", "no", "front", "rear", "both"))
                .reading(word("rear-lift", "rear wheel lifted", "no", "yes"))
                .reading(word("skid", "skidded", "no", "yes"))
                .reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 30))
                .reading(ReadingSpec.ofDay("slope", "slope, uphill in the direction of travel", QuantityKind.RATIO)
                        .plausible(-0.1, 0.1)
                        .hint("leave empty on level road"))
                .reading(ReadingSpec.ofDay("bedded-in", "brakes bedded in", QuantityKind.WORD)
                        .takenBy("mechanic")
                        .oneOf("yes", "no")
                        .hint("about 20 firm slow-downs"))
                .recording(new RecordingSpec(
                        "speed of every stop, from steady riding to rest",
                        List.of(ChannelKind.SPEED, ChannelKind.WHEEL_SPEED, ChannelKind.LEVER),
                        BrakingRules.LEAST_RATE_HZ,
                        "use the tape reading or a logger of 10 Hz or more"));
        for (var nominal : BrakingRules.Nominal.values()) {
            builder.limit(new Limit(
                    "entry-speed",
                    "entry speed",
                    Variant.of("nominal", nominal.id()),
                    nominal.window(),
                    Limit.Broken.RUN_DOES_NOT_COUNT,
                    "EN 14766:2005, 4.6.7.5.1.10: ± 1.5 km/h"));
        }
        builder.limit(new Limit(
                "wind-speed",
                "wind speed",
                Variant.NONE,
                new Interval(0, BrakingRules.MOST_WIND_MPS),
                Limit.Broken.WIDER,
                "track conditions of the bicycle standards, from memory"));
    }

    private static ReadingSpec word(String name, String title, String... choices) {
        return ReadingSpec.ofRun(name, title, QuantityKind.WORD).oneOf(choices);
    }

    private static void figures(Declaration.Builder builder) {
        builder.figure(FigureSpec.of(
                                "braking.stopping-distance",
                                "stopping distance",
                                QuantityKind.LENGTH,
                                Better.LESS,
                                Chapter.STOPPING)
                        .by("method", "surface", "nominal")
                        .speaksForTheTrial()
                        .scatter(TAPED)
                        .called("stopping distance", "stops in", "stop", "stopped in")
                        .meaning("from the control's first movement to rest")
                        .says(Saying.of(
                                        "{nominal} {surface}, {bike} stopped in {value}",
                                        "stopping distance {nominal} {surface}")
                                .meanOf("stop", "stops")))
                .figure(FigureSpec.of(
                                "braking.braking-distance",
                                "braking distance",
                                QuantityKind.LENGTH,
                                Better.LESS,
                                Chapter.STOPPING)
                        .by("surface", "nominal")
                        .scatter(TRACED)
                        .called("braking distance", "brakes in")
                        .meaning("from the onset of deceleration to rest")
                        .says(Saying.of(
                                        "{nominal} {surface}, from where its brakes bit, {bike} stopped in {value}",
                                        "braking distance {nominal} {surface}")
                                .meanOf("stop", "stops")))
                .figure(FigureSpec.of(
                                "braking.mean-deceleration",
                                "mean deceleration",
                                QuantityKind.ACCELERATION,
                                Better.MORE,
                                Chapter.STOPPING)
                        .by("surface", "nominal")
                        .scatter(TRACED)
                        .called("mean deceleration", "slows at")
                        .meaning("entry speed squared over twice the braking distance")
                        .says(Saying.of(
                                        "{nominal} {surface}, {bike} slowed on average at {value}",
                                        "mean deceleration {nominal} {surface}")
                                .meanOf("stop", "stops")))
                .figure(FigureSpec.of(
                                "braking.mfdd",
                                "mean fully developed deceleration",
                                QuantityKind.ACCELERATION,
                                Better.MORE,
                                Chapter.STOPPING)
                        .by("surface", "nominal")
                        .scatter(DEVELOPED)
                        .called("fully developed deceleration", "mfdd")
                        .meaning("by distance, between 0.8 and 0.1 of the entry speed")
                        .says(Saying.of(
                                        "{nominal} {surface}, with its brakes fully on, {bike} slowed at {value}",
                                        "fully developed deceleration {nominal} {surface}")
                                .meanOf("stop", "stops")));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new BrakingReduction(input).outcome();
    }
}
