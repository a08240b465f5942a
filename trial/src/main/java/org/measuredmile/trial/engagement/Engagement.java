package org.measuredmile.trial.engagement;

import java.util.List;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RecordingSpec;
import org.measuredmile.trial.Saying;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.VariantKey;

/// Engagement: how soon the motor answers the pedals, and how long it pushes on when they stop.
public final class Engagement implements Trial {
    static final FigureSpec ANGLE = of("crank-angle", "crank angle to thrust", QuantityKind.ANGLE)
            .scatter(new Scatter(0.515, 12, 0.27, 12, false))
            .called("crank angle", "of a crank turn", "turns of the crank")
            .meaning("from the first pedal movement until the motor pushes")
            .says(Saying.of(
                            "{ride}, before the motor pushed {bike’s} cranks turned {value}",
                            "crank angle to thrust {ride}")
                    .meanOf("try", "tries"));
    static final FigureSpec DELAY = of("delay", "delay to thrust", QuantityKind.TIME)
            .scatter(new Scatter(0.082, 12, 0.043, 12, false))
            .speaksForTheTrial()
            .called("delay", "responds within", "kicks in after")
            .meaning("from the first pedal movement until the motor pushes")
            .says(Saying.of("{ride}, {bike’s} motor answered the pedals after {value}", "delay to thrust {ride}")
                    .meanOf("try", "tries"));
    static final FigureSpec OVERRUN_TIME = of("overrun-time", "overrun", QuantityKind.TIME)
            .scatter(new Scatter(0.10, 12, 0.05, 12, false))
            .called("overrun", "keeps pushing for")
            .meaning("from the last pedal movement until the motor's push is gone")
            .says(Saying.of("{ride}, once the pedals stopped {bike’s} motor pushed on for {value}", "overrun {ride}")
                    .meanOf("try", "tries"));
    static final FigureSpec OVERRUN_DISTANCE = of("overrun-distance", "overrun distance", QuantityKind.LENGTH)
            .scatter(new Scatter(0.30, 12, 0.15, 12, false))
            .called("overrun distance")
            .meaning("the way gone from the last pedal movement until the motor's push is gone")
            .says(Saying.of(
                            "{ride}, once the pedals stopped {bike} was pushed on over {value}",
                            "overrun distance {ride}")
                    .meanOf("try", "tries"));
    static final Declaration DECLARATION = declare();

    private static FigureSpec of(String name, String title, QuantityKind kind) {
        return FigureSpec.of("engagement." + name, title, kind, Better.LESS, Chapter.GOING)
                .by("level", "levelRole");
    }

    private static Declaration declare() {
        var builder = Declaration.of("engagement", 1, "Engagement")
                .purpose("How soon the motor answers the pedals, and how long it pushes on when they stop.")
                .caution("On level ground away from traffic and people, hands on the brakes: a motor that pushes on is"
                        + " what is looked for here.")
                .caution("Whoever films stands aside of the way, never in front of the bike.")
                .voidWhen("brake", "a brake lever was touched, which cuts the motor off")
                .voidWhen("throttle", "the throttle was touched")
                .voidWhen("backward", "the cranks were turned backward first")
                .voidWhen("slope", "the bike rolled by itself")
                .runs(5, 1, false)
                .variant(new VariantKey("level", "level", List.of(), ""))
                .variant(LevelRole.KEY);
        builder.reading(ReadingSpec.ofRun("delay", "delay to thrust", QuantityKind.TIME)
                        .plausible(0, 10)
                        .by(Instrument.Kind.CAMERA, 1 / 60.0)
                        .hint("frames of a fast video from the first crank movement until the bike jerks forward"))
                .reading(ReadingSpec.ofRun("crank-angle", "crank angle to thrust", QuantityKind.ANGLE)
                        .plausible(0, 20)
                        .hint("as the video shows it; a whole turn is 360°"))
                .reading(ReadingSpec.ofRun("overrun-time", "overrun", QuantityKind.TIME)
                        .plausible(0, 10)
                        .by(Instrument.Kind.CAMERA, 1 / 60.0)
                        .hint("frames from the last crank movement until the push is gone"))
                .reading(ReadingSpec.ofRun("overrun-distance", "overrun distance", QuantityKind.LENGTH)
                        .plausible(0, 60)
                        .by(Instrument.Kind.TAPE, 0.05)
                        .hint("by marks on the road beside the wheel, if the video shows them"))
                .reading(ReadingSpec.ofRun("rolling-speed", "speed when the cranks stopped", QuantityKind.SPEED)
                        .plausible(0, 20)
                        .hint("gives the overrun distance out of its time where nobody measured it"))
                .recording(new RecordingSpec(
                        "cranks and forward acceleration, with speed",
                        List.of(ChannelKind.CADENCE, ChannelKind.ACCELERATION_X, ChannelKind.SPEED),
                        EngagementRules.LEAST_ACCELERATION_HZ,
                        PushFinder.REMEDY))
                .figures(DELAY, ANGLE, OVERRUN_TIME, OVERRUN_DISTANCE);
        return builder.handbook(EngagementHandbook.PAGE);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new EngagementReduction(input).outcome();
    }
}
