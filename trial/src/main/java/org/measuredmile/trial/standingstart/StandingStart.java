package org.measuredmile.trial.standingstart;

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
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;
import org.measuredmile.trial.standingstart.StandingStartRules.Target;

/// Standing start: how quickly the bike gets from rest to a set speed, and what power that took.
public final class StandingStart implements Trial {
    /// Scatter of the drive's thrust from run to run and from day to day. A time or a distance answers to it
    /// more strongly the nearer its speed is to the bike's highest, which its own trace tells; what timing adds is
    /// budgeted apart. House values.
    private static final Scatter THRUST = new Scatter(0.03, 8, 0.025, 8, true);
    /// Of a distance, in which the build-up, that has its own scatter, counts for nothing.
    private static final Scatter WAY = new Scatter(0.03, 8, 0.025, 8, true);
    /// Of power at the wheel, a part of which the road load takes whatever the thrust.
    private static final Scatter POWER = new Scatter(0.03, 8, 0.025, 8, true);

    /// Of a speed at which what is left of the thrust only balances the road load: a third of the power's. House
    /// values.
    private static final Scatter HIGHEST = new Scatter(0.012, 8, 0.012, 8, true);

    static final Declaration DECLARATION = declare();

    private static Declaration declare() {
        var builder = Declaration.of("standingstart", 1, "Standing start")
                .purpose("How quickly the bike gets from rest to 10, 15 and 20 mph on level road.")
                .caution("Only on a closed or private road with a clear run-out of at least twice the stop; never "
                        + "in traffic. Local law and the owner of the road decide.")
                .caution("Helmet and closed shoes. Hold a brake until the word is given: a throttle pulls at once. "
                        + "Lean forward when the front wheel grows light, and let go when it lifts.")
                .caution("A second person checks brakes, wheels, axles, bars and battery lock first. Let motor and "
                        + "battery cool between starts; on smell, heat or a warning, stop and ask a qualified "
                        + "mechanic.")
                .follows("common practice, no source")
                .onlyAfterPreRideCheck()
                .runs(6, 1, true);
        causes(builder);
        variants(builder);
        readings(builder);
        builder.uses(RoadSetting.WEIGHED, RoadSetting.MASS_STAND_IN)
                .uses(UsedLoad.ROLLING, UsedLoad.STAND_IN)
                .uses(UsedLoad.DRAG_AREA, UsedLoad.STAND_IN);
        figures(builder);
        return builder.handbook(StandingStartHandbook.PAGE);
    }

    private static void causes(Declaration.Builder builder) {
        builder.voidWhen("traffic", "somebody or something was in the way")
                .voidWhen("rolling", "the bike rolled before the start")
                .voidWhen("foot", "a foot pushed off")
                .voidWhen("wheel-lift", "the front wheel lifted or the driven wheel slipped")
                .voidWhen("missed-shift", "a gear was missed or the chain came off")
                .voidWhen("wrong-level", "the level or the drive was not the one agreed")
                .voidWhen("battery", "the bike warned of its battery or its motor's heat")
                .voidWhen("gust", "a gust hit the rider")
                .voidWhen("late", "the watch was started or stopped late");
    }

    private static void variants(Declaration.Builder builder) {
        builder.variant(new VariantKey(
                        "drive",
                        "drive",
                        List.of(
                                new Choice("throttle", "by throttle alone"),
                                new Choice("pedal", "pedalling at the highest level")),
                        "throttle"))
                .variant(new VariantKey(
                        "to",
                        "to",
                        java.util.Arrays.stream(Target.values())
                                .map(target -> new Choice(target.id(), "to " + target.words()))
                                .toList(),
                        Target.TWENTY.id()))
                .variant(new VariantKey(
                                "at", "conditions", List.of(new Choice("reference", "at reference conditions")), "")
                        .foundByTheTrial());
    }

    private static void readings(Declaration.Builder builder) {
        for (var target : Target.values()) {
            builder.reading(ReadingSpec.ofRun(timeReading(target), "time to " + target.words(), QuantityKind.TIME)
                    .plausible(0.5, 90)
                    .by(Instrument.Kind.STOPWATCH, 0.01)
                    .hint("from the first movement until the display shows " + target.words()));
        }
        for (var target : Target.values()) {
            builder.reading(
                    ReadingSpec.ofRun(distanceReading(target), "distance to " + target.words(), QuantityKind.LENGTH)
                            .plausible(1, 800)
                            .by(Instrument.Kind.TAPE, 0.1)
                            .hint("where the display showed " + target.words() + ", if marked"));
        }
        builder.reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 30))
                .reading(ReadingSpec.ofDay("state-of-charge", "state of charge", QuantityKind.RATIO)
                        .plausible(0, 1))
                .recording(new RecordingSpec(
                        "speed of every start, from a second at rest until the speed is reached",
                        List.of(ChannelKind.SPEED, ChannelKind.WHEEL_SPEED),
                        StandingStartRules.LEAST_RATE_HZ,
                        StartFinder.COARSE_REMEDY))
                .limit(new Limit(
                        "wind-speed",
                        "wind speed",
                        Variant.NONE,
                        new Interval(0, StandingStartRules.MOST_WIND_MPS),
                        Limit.Broken.WIDER,
                        "EN 15194 and two-wheeler road tests allow at most 3 m/s, from memory"));
    }

    static String timeReading(Target target) {
        return "time-to-" + target.id();
    }

    static String distanceReading(Target target) {
        return "distance-to-" + target.id();
    }

    private static void figures(Declaration.Builder builder) {
        builder.figure(of("time-to", "time to speed", QuantityKind.TIME, Better.LESS)
                        .by("drive", "to", "at")
                        .speaksForTheTrial()
                        .scatter(THRUST)
                        .called("time to", "gets to", "reaches", "from rest to", "from a standstill to")
                        .meaning("from the first movement of the bike until it has the speed")
                        .says(Saying.of(
                                        "{drive}, we took {bike} from rest {to} in {value}",
                                        "time from rest {to} {drive}")
                                .meanOf("start", "starts")
                                .atReference("{drive}, {bike} would go from rest {to} in {value}")))
                .figure(of("distance-to", "distance to speed", QuantityKind.LENGTH, Better.LESS)
                        .by("drive", "to", "at")
                        .scatter(WAY)
                        .called("distance to", "needs to reach")
                        .meaning("from rest to where it has the speed")
                        .says(Saying.of(
                                        "{drive}, to get from rest {to} {bike} needed {value}",
                                        "distance from rest {to} {drive}")
                                .meanOf("start", "starts")
                                .atReference("{drive}, to get from rest {to} {bike} would need {value}")))
                .figure(of("ramp-time-to", "time to speed from full thrust", QuantityKind.TIME, Better.LESS)
                        .by("drive", "to", "at")
                        .scatter(THRUST)
                        .called("time from full thrust to")
                        .meaning("from where full thrust, followed back, begins: free of how softly the motor"
                                + " sets in")
                        .says(Saying.of(
                                        "{drive}, from full thrust {bike} got {to} in {value}",
                                        "time {to} from full thrust {drive}")
                                .meanOf("start", "starts")
                                .atReference("{drive}, from full thrust {bike} would get {to} in {value}")));
        powers(builder);
        builder.figure(of("highest-speed", "highest speed of a start", QuantityKind.SPEED, Better.NEITHER)
                .by("drive")
                .scatter(HIGHEST)
                .called("highest speed")
                .meaning("of starts that were ridden on until the speed no longer rose; not a cut-off")
                .says(Saying.of(
                                "{drive}, ridden on from a standing start {bike} reached {value}",
                                "highest speed of a start {drive}")
                        .meanOf("start", "starts")));
    }

    private static void powers(Declaration.Builder builder) {
        builder.figure(of("peak-power", "peak wheel power", QuantityKind.POWER, Better.MORE)
                        .by("drive")
                        .scatter(POWER)
                        .called("peak power", "peak wheel power")
                        .meaning("highest mean over two seconds of tractive force times speed")
                        .says(Saying.of(
                                        "{drive}, in a standing start the power at {bike’s} wheel peaked at {value}",
                                        "peak wheel power {drive}")
                                .meanOf("start", "starts")))
                .figure(of("mean-power", "mean wheel power", QuantityKind.POWER, Better.MORE)
                        .by("drive", "to")
                        .scatter(POWER)
                        .called("mean power", "mean wheel power")
                        .meaning("work at the wheel from rest to the speed over the time it took")
                        .says(Saying.of(
                                        "{drive}, from rest {to} the mean power at {bike’s} wheel was {value}",
                                        "mean wheel power from rest {to} {drive}")
                                .meanOf("start", "starts")))
                .figure(of("launch-force", "launch force", QuantityKind.FORCE, Better.MORE)
                        .by("drive")
                        .scatter(THRUST)
                        .called("launch force", "pulls away with")
                        .meaning("tractive force at the wheel at low speed and full thrust")
                        .says(Saying.of(
                                        "{drive}, the force at {bike’s} wheel when it pulled away was {value}",
                                        "launch force {drive}")
                                .from("start", "starts")))
                .figure(of("power-limit", "power limit at the wheel", QuantityKind.POWER, Better.MORE)
                        .by("drive")
                        .scatter(THRUST)
                        .called("power limit")
                        .meaning("power at the wheel where power, and no longer force, limits the start")
                        .says(Saying.of(
                                        "{drive}, in a start the power at {bike’s} wheel was limited to {value}",
                                        "power limit at the wheel {drive}")
                                .from("start", "starts")));
    }

    private static FigureSpec of(String name, String title, QuantityKind kind, Better better) {
        return FigureSpec.of("standingstart." + name, title, kind, better, Chapter.GOING);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome reduce(TrialInput input) {
        return new StandingStartReduction(input).outcome();
    }
}
