package org.measuredmile.trial.climb;

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
import org.measuredmile.trial.Trial;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;

/// Climb: how the bike gets up a surveyed hill, by throttle alone and pedalling.
public final class Climb implements Trial {
    static final String TIME = "climb-time";
    static final String LENGTH = "climb-length";
    static final String MEAN_SPEED = "climb-mean-speed";
    static final String LOWEST = "climb-lowest-speed";
    static final String ENTRY = "climb-entry-speed";
    static final String EXIT = "climb-exit-speed";
    static final String RISE = "climb-rise";
    static final String GRADE = "climb-grade";

    static final String LAUNCH_FORCE = "standingstart.launch-force";
    static final String POWER_LIMIT = "standingstart.power-limit";
    static final String CUT_OFF = "assistspeed.cut-off";

    static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of("climb", 1, "Climb")
                .purpose("How the bike gets up a surveyed hill: by throttle alone, and pedalling at the highest"
                        + " level.")
                .caution("A hill with little traffic and a clear view, ridden at its edge; ride up only, and come"
                        + " down slowly with both brakes. Local law and the owner of the road decide.")
                .caution("Helmet and closed shoes. A slow bike wobbles: stop and put a foot down before it falls, and"
                        + " never stop in a lane.")
                .caution("A second person checks brakes, wheels, axles, bars and battery lock first. A motor at its"
                        + " limit grows hot: let it cool between runs, and on smell, smoke or a warning stop, keep"
                        + " away from the battery and ask a qualified mechanic.")
                .follows("common practice, no source")
                .onlyAfterPreRideCheck()
                .voidWhen("traffic", "somebody or something was in the way")
                .voidWhen("stopped", "the bike stopped or a foot touched the ground")
                .voidWhen("pedalled", "the rider pedalled in a run by throttle alone")
                .voidWhen("wrong-level", "the level or the drive was not the one agreed")
                .voidWhen("missed-shift", "a gear was missed or the chain came off")
                .voidWhen("cut-back", "motor or battery cut back its power")
                .voidWhen("gust", "a gust or a vehicle's wake pushed the bike")
                .voidWhen("late", "the watch was started or stopped late")
                .runs(3, 1, false);
        variants(builder);
        readings(builder);
        dayReadings(builder);
        builder.uses(RoadSetting.WEIGHED, "a bike of " + RoadSetting.MASS_STAND_IN)
                .uses(UsedLoad.ROLLING, UsedLoad.STAND_IN)
                .uses(UsedLoad.DRAG_AREA, UsedLoad.STAND_IN)
                .uses(LAUNCH_FORCE, "a force that falls as one over the speed, to the power 1 ± 0.35")
                .uses(POWER_LIMIT, "the same")
                .uses(CUT_OFF, "no end of assistance near the hill's speed");
        figures(builder);
        return builder.handbook(ClimbHandbook.PAGE);
    }

    private static void variants(Declaration.Builder builder) {
        builder.variant(new VariantKey(
                        "drive",
                        "drive",
                        List.of(
                                new Choice("throttle", "by throttle alone"),
                                new Choice("pedal", "pedalling at the highest level")),
                        "throttle"))
                .variant(new VariantKey("course", "on", List.of(), "").foundByTheTrial())
                .variant(new VariantKey("at", "at", List.of(new Choice("reference", "at reference conditions")), "")
                        .foundByTheTrial());
    }

    private static void readings(Declaration.Builder builder) {
        builder.reading(ReadingSpec.ofRun(TIME, "time up the hill", QuantityKind.TIME)
                        .plausible(10, 3600)
                        .by(Instrument.Kind.STOPWATCH, 0.1)
                        .hint("from the front wheel at the first mark to the front wheel at the last"))
                .reading(ReadingSpec.ofRun(MEAN_SPEED, "mean speed up the hill", QuantityKind.SPEED)
                        .plausible(0.5, 25)
                        .by(Instrument.Kind.WHEEL, 0.1 / 3.6)
                        .hint("only as a check: where the display gives it"))
                .reading(ReadingSpec.ofRun(LOWEST, "lowest speed", QuantityKind.SPEED)
                        .plausible(0.3, 25)
                        .by(Instrument.Kind.WHEEL, 0.1 / 3.6)
                        .hint("the lowest steady speed that the display showed"))
                .reading(ReadingSpec.ofRun(ENTRY, "speed at the first mark", QuantityKind.SPEED)
                        .plausible(0, 25)
                        .by(Instrument.Kind.WHEEL, 0.1 / 3.6))
                .reading(ReadingSpec.ofRun(EXIT, "speed at the last mark", QuantityKind.SPEED)
                        .plausible(0, 25)
                        .by(Instrument.Kind.WHEEL, 0.1 / 3.6));
    }

    private static void dayReadings(Declaration.Builder builder) {
        builder.reading(ReadingSpec.ofDay(LENGTH, "length of the hill", QuantityKind.LENGTH)
                        .plausible(50, 20_000)
                        .by(Instrument.Kind.TAPE, 0.1)
                        .hint("only as a check, or where no course is surveyed"))
                .reading(ReadingSpec.ofDay(RISE, "rise of the hill", QuantityKind.LENGTH)
                        .plausible(1, 2_000)
                        .by(Instrument.Kind.TAPE, 0.1)
                        .hint("only as a check, or where no course is surveyed"))
                .reading(ReadingSpec.ofDay(GRADE, "mean grade", QuantityKind.RATIO)
                        .plausible(0.002, 0.4)
                        .hint("only as a check: by a level or a phone, rise over run"))
                .reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 30))
                .reading(ReadingSpec.ofDay("wind-from", "wind from", QuantityKind.WORD))
                .reading(ReadingSpec.ofDay("state-of-charge", "state of charge", QuantityKind.RATIO)
                        .plausible(0, 1))
                .recording(new RecordingSpec(
                        "positions and speed of every climb, from ten seconds before the first gate",
                        List.of(ChannelKind.LATITUDE, ChannelKind.LONGITUDE, ChannelKind.SPEED),
                        0.5,
                        "time the climb by hand, or log once a second or more"))
                .limit(new Limit(
                        "wind-speed",
                        "wind speed",
                        Variant.NONE,
                        new Interval(0, ClimbRules.MOST_WIND_MPS),
                        Limit.Broken.WIDER,
                        "EN 15194 and two-wheeler road tests allow at most 3 m/s, from memory"));
    }

    private static void figures(Declaration.Builder builder) {
        builder.figure(of("time", "climbing time", QuantityKind.TIME, Better.LESS)
                        .by("drive", "course", "at")
                        .speaksForTheTrial()
                        .scatter(ClimbRules.TIME)
                        .called("climbs in", "climbed our hill in", "up the hill in", "climbing time")
                        .meaning("between the gates of the hill")
                        .says(Saying.of("{drive}, we took {bike} up {course} in {value}", "time up {course} {drive}")
                                .meanOf("climb", "climbs")
                                .atReference("{drive}, {bike} would climb {course} in {value}")))
                .figure(of("mean-speed", "mean climbing speed", QuantityKind.SPEED, Better.MORE)
                        .by("drive", "course", "at")
                        .scatter(ClimbRules.TIME)
                        .called("climbs at", "mean climbing speed")
                        .meaning("the hill's surveyed length over the time")
                        .says(Saying.of(
                                        "{drive}, {bike’s} mean speed up {course} was {value}",
                                        "mean speed up {course} {drive}")
                                .meanOf("climb", "climbs")
                                .atReference("{drive}, {bike’s} mean speed up {course} would be {value}")))
                .figure(of("lowest-speed", "lowest climbing speed", QuantityKind.SPEED, Better.MORE)
                        .by("drive", "course", "at")
                        .scatter(ClimbRules.LOWEST)
                        .called("lowest speed on the hill", "slows to")
                        .meaning("lowest mean over ten seconds, past the first quarter of the hill")
                        .says(Saying.of(
                                        "{drive}, {bike’s} lowest speed on {course} was {value}",
                                        "lowest speed on {course} {drive}")
                                .meanOf("climb", "climbs")
                                .atReference("{drive}, {bike’s} lowest speed on {course} would be {value}")
                                .ends("lowest", "highest")));
        powerAndGain(builder);
    }

    private static void powerAndGain(Declaration.Builder builder) {
        builder.figure(of("wheel-power", "mean wheel power", QuantityKind.POWER, Better.MORE)
                        .by("drive", "course")
                        .scatter(ClimbRules.POWER)
                        .called("wheel power on the hill", "climbing power")
                        .meaning("energy for height, rolling, air and speed over the time")
                        .says(Saying.of(
                                        "{drive}, the mean power at {bike’s} wheel up {course} was {value}",
                                        "wheel power up {course} {drive}")
                                .meanOf("climb", "climbs")))
                .figure(of("pedalling-gain", "what pedalling gained", QuantityKind.TIME, Better.MORE)
                        .by("course")
                        .called("pedalling gained", "pedalling saved")
                        .meaning("time by throttle alone less time pedalling")
                        .says(Saying.of(
                                        "On {course}, against the throttle alone pedalling saved {bike} {value}",
                                        "gain by pedalling on {course}")
                                .from("climb", "climbs")
                                .whereNothingShows(
                                        "On {course}, pedalling {bike} was no different from throttle alone: {value}")
                                .ends("smallest", "largest")))
                .figure(of("foretold-time", "climbing time foretold", QuantityKind.TIME, Better.NEITHER)
                        .by("drive", "course")
                        .called("foretold climbing time")
                        .meaning("time that starts, masses, road load and course give without a climb: a check")
                        .says(Saying.of(
                                        "{drive}, by starts and road load alone {bike} would climb {course} in {value}",
                                        "foretold time up {course} {drive}")
                                .from("start", "starts")))
                .figure(of("steepest-start", "steepest start", QuantityKind.RATIO, Better.MORE)
                        .by("drive", "at")
                        .called("steepest start", "moves off on")
                        .meaning("steepest grade on which the force of the standing start moves the bike off")
                        .says(Saying.of(
                                        "{drive}, {bike} has the force to move off on a grade of {value}",
                                        "steepest grade to move off on {drive}")
                                .from("start", "starts")
                                .atReference("{drive}, {bike} would have the force to move off on a grade of {value}")
                                .ends("lowest", "highest")));
    }

    private static FigureSpec of(String name, String title, QuantityKind kind, Better better) {
        return FigureSpec.of("climb." + name, title, kind, better, Chapter.CLIMBING);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new ClimbReduction(input).outcome();
    }
}
