package org.measuredmile.trial.assistspeed;

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
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.Limit;
import org.measuredmile.trial.Outcome;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RecordingSpec;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Saying;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;

/// Assist speeds: what the bike settles at on the level at each assist level, with the motor off, and by throttle.
public final class AssistSpeed implements Trial {
    static final String ID = "assistspeed";
    static final String SPEED = "assistspeed.speed";
    static final String CUT_OFF = "assistspeed.cut-off";
    static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of(ID, 1, "Assist speeds")
                .purpose("How fast the bike settles on level road at each assist level, off first, throttle last.")
                .caution("On a quiet, straight, level road or a closed track, by daylight, with a helmet; in traffic "
                        + "the "
                        + "law and other people come first, and the run is void.")
                .caution("Read a display only when the road ahead is clear: a recording needs no looking down.")
                .follows("common practice, no source; the limit of 3 m/s of wind as in EN 15194 for speed tests, "
                        + "from memory")
                .voidWhen("traffic", "somebody or something was in the way")
                .voidWhen("wrong-level", "the level was not the one announced")
                .voidWhen("effort", "the rider's effort plainly changed")
                .voidWhen("gust", "a gust or a vehicle's wake pushed the bike")
                .voidWhen("curve", "the stretch was not straight")
                .runs(2, 1, true);
        variants(builder);
        readings(builder);
        figures(builder);
        builder.uses(RoadSetting.WEIGHED, "a bike of " + RoadSetting.MASS_STAND_IN)
                .uses(UsedLoad.ROLLING, UsedLoad.STAND_IN)
                .uses(UsedLoad.DRAG_AREA, UsedLoad.STAND_IN);
        return builder.handbook(AssistSpeedHandbook.PAGE);
    }

    private static void variants(Declaration.Builder builder) {
        builder.variant(new VariantKey(
                        "drive",
                        "drive",
                        List.of(new Choice("pedal", "pedalling lightly"), new Choice("throttle", "by throttle alone")),
                        "pedal"))
                .variant(new VariantKey("level", "level", List.of(), ""))
                .variant(LevelRole.KEY)
                .variant(new VariantKey("at", "at", List.of(new Choice("reference", "at reference conditions")), "")
                        .foundByTheTrial());
    }

    private static void readings(Declaration.Builder builder) {
        builder.reading(ReadingSpec.ofRun("speed", "steady speed", QuantityKind.SPEED)
                        .plausible(AssistSpeedRules.V1.leastSpeedMps(), AssistSpeedRules.V1.mostSpeedMps())
                        .by(Instrument.Kind.RECEIVER, 0.1 / 3.6)
                        .hint("only where there is no recording: what the display settled at"))
                .reading(ReadingSpec.ofRun("cut-off", "speed at which assistance fades", QuantityKind.SPEED)
                        .plausible(1, AssistSpeedRules.V1.mostSpeedMps())
                        .by(Instrument.Kind.RECEIVER, 0.1 / 3.6)
                        .hint("pedalling on, where the push of the motor is felt to end"))
                .reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 40)
                        .hint("at rider's height, the mean of a minute"))
                .reading(ReadingSpec.ofDay("wind-from", "wind from", QuantityKind.WORD))
                .recording(new RecordingSpec(
                        "speed on the level, each level held for half a minute, both ways",
                        List.of(ChannelKind.SPEED),
                        1,
                        "set the recorder to once a second or faster"))
                .limit(new Limit(
                        "wind-speed",
                        "wind",
                        Variant.NONE,
                        new Interval(0, AssistSpeedRules.V1.mostWindMps()),
                        Limit.Broken.RUN_DOES_NOT_COUNT,
                        "EN 15194 for speed tests, from memory"));
    }

    private static void figures(Declaration.Builder builder) {
        builder.figure(FigureSpec.of(SPEED, "steady speed", QuantityKind.SPEED, Better.NEITHER, Chapter.GOING)
                        .by("drive", "level", "levelRole", "at")
                        .speaksForTheTrial()
                        .scatter(new Scatter(0.15, 12, 0.12, 12, false))
                        .called("speed", "assisted speed", "steady speed", "cruises at", "settles at")
                        .meaning("Both directions, on the level, the rider turning lightly at about 75 W.")
                        .says(Saying.of("On level road, {ride}, {bike} settled at {value}", "steady speed {ride}")
                                .meanOf("pass", "passes")))
                .figure(FigureSpec.of(CUT_OFF, "cut-off speed", QuantityKind.SPEED, Better.NEITHER, Chapter.GOING)
                        .by("drive")
                        .scatter(new Scatter(0.15, 12, 0.08, 12, false))
                        .called("cut-off", "cuts out", "assistance ends")
                        .meaning("Where the motor stops helping; a pedalled top speed is not this.")
                        .says(Saying.of("{bike’s} motor stopped helping at {value}", "cut-off speed")
                                .meanOf("pass", "passes")));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new AssistSpeedReduction(input, AssistSpeedRules.V1).outcome();
    }

    static boolean saysItsLevel(Variant variant) {
        return !LevelRole.levelOf(variant).has("level", "");
    }

    /// What people call the level of a run.
    static String levelWords(Variant variant) {
        String level = LevelRole.levelOf(variant).get("level").orElse("");
        return switch (level) {
            case "" -> "this stretch";
            case "off" -> "motor off";
            case "throttle" -> "throttle";
            default -> (variant.has("drive", "throttle") ? "throttle at level " : "level ") + level;
        };
    }
}
