package org.measuredmile.trial.coastdown;

import java.util.List;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
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
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Saying;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;

/// Coast-down: rolling coefficient, drag area and the force at a speed, from freewheeling both ways.
public final class Coastdown implements Trial {
    /// Scatter of a pair, in which the gusts are, and of days, in which tyres warm up and riders sit otherwise.
    /// House values, settled on simulated days.
    private static final Scatter ROLLING = new Scatter(0.107, 12, 0.05, 12, true);
    private static final Scatter AREA = new Scatter(0.094, 12, 0.04, 12, true);
    private static final double[] FORCE = {0.070, 0.062, 0.065, 0.068};
    /// Between days: the slower, the more of it is the tyres', which differ by 5 %, the rider's posture by 4 %.
    private static final double[] FORCE_DAYS = {0.036, 0.034, 0.033, 0.032};

    /// The speeds at which the force is told, in km/h; the second one speaks for the trial.
    static final List<Integer> SPEEDS_KMH = List.of(15, 20, 25, 30);

    static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of("coastdown", 1, "Coast-down")
                .purpose("What holds the bike and its rider back: rolling and air, told apart by coasting both ways.")
                .caution("On a closed or quiet, straight, level road with a clear run-out and a good surface; give way "
                        + "to everybody. Local law and the owner of the road decide.")
                .caution("Helmet on, hands on the bars and fingers at the brakes all the way: the posture is held, the "
                        + "brakes stay at hand.")
                .caution("Motor and light off as agreed; never lean out or tuck below the bars to go further.")
                .follows("Both ways as in SAE J1263 and 40 CFR 86.529-98; pairs and the equation of motion are house "
                        + "method")
                .runs(10, 2, true);
        builder.voidWhen("traffic", "somebody or something was in the way")
                .voidWhen("brake", "a brake was touched")
                .voidWhen("pedal", "the cranks were turned or the motor helped")
                .voidWhen("posture", "the rider moved or sat up")
                .voidWhen("steering", "the line was not straight")
                .voidWhen("gust", "a gust hit the rider");
        builder.variant(new VariantKey("at", "at", List.of(new Choice("reference", "at reference conditions")), "")
                .foundByTheTrial());
        builder.reading(ReadingSpec.ofRun("time-from-30-to-20-kmh", "time from 30 to 20 km/h", QuantityKind.TIME)
                        .plausible(3, 120)
                        .by(Instrument.Kind.STOPWATCH, 0.01)
                        .hint("by hand, when there is no recording: from 30 to 20 km/h on the display"))
                .reading(ReadingSpec.ofRun("time-from-20-to-10-kmh", "time from 20 to 10 km/h", QuantityKind.TIME)
                        .plausible(3, 180)
                        .by(Instrument.Kind.STOPWATCH, 0.01)
                        .hint("the split that follows, from 20 to 10 km/h"))
                .reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 30))
                .recording(new RecordingSpec(
                        "speed of every coast, from over 30 to below 12 km/h",
                        List.of(ChannelKind.SPEED, ChannelKind.WHEEL_SPEED),
                        CoastdownRules.LEAST_RATE_HZ,
                        "use a logger of 1 Hz or more that writes speed, or time the fall of speed by hand"))
                .limit(new Limit(
                        "wind-speed",
                        "wind speed",
                        Variant.NONE,
                        new Interval(0, CoastdownRules.MOST_MEASURED_WIND_MPS),
                        Limit.Broken.RUN_DOES_NOT_COUNT,
                        "mean wind of 3 m/s: German vehicle-construction rules for two- and three-wheelers, 3.9.2.3"))
                .uses(RoadSetting.WEIGHED, RoadSetting.MASS_STAND_IN);
        figures(builder);
        return builder.handbook(CoastdownHandbook.PAGE);
    }

    private static void figures(Declaration.Builder builder) {
        for (int i = 0; i < SPEEDS_KMH.size(); i++) {
            int kmh = SPEEDS_KMH.get(i);
            var force = FigureSpec.of(
                            "coastdown.force-at-" + kmh + "-kmh",
                            "force at " + kmh + " km/h",
                            QuantityKind.FORCE,
                            Better.LESS,
                            Chapter.HOW_FAR)
                    .by("at")
                    .scatter(new Scatter(FORCE[i], 12, FORCE_DAYS[i], 12, true))
                    .called("force at " + kmh + " km/h", "resistance at " + kmh + " km/h")
                    .meaning("what rolling and air take together on a level road in still air")
                    .says(Saying.of(
                                    "coasting at " + kmh
                                            + " km/h on level road, {bike} and its rider were held back by {value}",
                                    "resistance at " + kmh + " km/h")
                            .from("coast", "coasts")
                            .atReference("coasting at " + kmh
                                    + " km/h on level road, {bike} and its rider would be held back by {value}"));
            builder.figure(kmh == 20 ? force.speaksForTheTrial() : force);
        }
        builder.figure(FigureSpec.of(
                                "coastdown.rolling-coefficient",
                                "rolling coefficient",
                                QuantityKind.RATIO,
                                Better.LESS,
                                Chapter.HOW_FAR)
                        .scatter(ROLLING)
                        .called("rolling coefficient", "rolling resistance")
                        .meaning("rolling force over weight; drag of the hub is in it")
                        .says(Saying.of(
                                        "{bike’s} rolling resistance, as a share of all its weight, is {value}",
                                        "rolling coefficient")
                                .from("coast", "coasts")))
                .figure(FigureSpec.of(
                                "coastdown.drag-area", "drag area", QuantityKind.AREA, Better.LESS, Chapter.HOW_FAR)
                        .scatter(AREA)
                        .called("drag area")
                        .meaning("air drag over the pressure of the air stream, of bike and rider as they sat")
                        .says(Saying.of("{bike} and its rider have a drag area of {value}", "drag area")
                                .from("coast", "coasts")));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new CoastdownReduction(input).outcome();
    }
}
