package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Air;
import org.measuredmile.roadload.Gravity;
import org.measuredmile.roadload.Ride;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;

/// What a modelled climb rests on, each thing with how well it is known: masses, air, wind, rise, slope, entry, road
/// load and how the drive's force falls with speed.
///
/// Shape: the model as everything was taken to be, or with one thing moved; from that, what each does to a figure.
/// The drive's force falls as the day's standing starts have it, else as one over the speed to the power 1 ± 0.35.
/// Source: JCGM 100:2008, 5.1.3, note 2 (sensitivities by differences), 5.2.2 (correlated inputs).
final class ClimbBasis {
    /// As everything was taken to be.
    static final Move NOTHING = new Move(What.NOTHING, 0, 0);

    static final String WIND = "wind along the hill";

    private final TrialInput input;
    private final ClimbGroup group;
    private final ClimbPower power;
    private final HillSlope slope;
    private final Optional<Figure> launch;
    private final Optional<Figure> limit;
    private final Optional<Figure> cutOff;

    /// What may be otherwise than it was taken to be.
    enum What {
        NOTHING,
        BIKE_KG,
        RIDER_KG,
        AIR_KG_PER_M3,
        HEAD_MPS,
        RISE_M,
        ENTRY_MPS,
        ROLLING,
        AREA_M2,
        LAUNCH_N,
        LIMIT_W,
        CUT_OFF_MPS,
        /// The phase in radians at which an unknown slope swells and eases; of a levelled one the number of
        /// half waves along the hill in which its heights are wrong.
        SLOPE
    }

    /// One thing moved by so much of its own unit, of a drive whose force falls by so much more of a power of the
    /// speed.
    record Move(What what, double amount, double fall) {
        double of(What which) {
            return which == what ? amount : 0;
        }
    }

    /// What a move away from another does to a figure, relative to it.
    @FunctionalInterface
    interface Effect {
        double of(Move move, Move from);
    }

    /// One way in which the drive's force may fall, and how much it counts in a mean over all of them.
    record Fall(double more, double weight) {
        Move nothing() {
            return new Move(What.NOTHING, 0, more);
        }
    }

    ClimbBasis(TrialInput input, ClimbGroup group, ClimbPower power) {
        this.input = input;
        this.group = group;
        this.power = power;
        this.slope = HillSlope.of(group.hill());
        this.launch = used(Climb.LAUNCH_FORCE);
        this.limit = used(Climb.POWER_LIMIT);
        this.cutOff = used(Climb.CUT_OFF);
    }

    private Optional<Figure> used(String figure) {
        return Optional.ofNullable(input.used().get(new FigureKey(figure, Variant.of("drive", group.drive()))));
    }

    /// Whether the day's standing starts told force and power.
    boolean isDriveKnown() {
        return launch.isPresent() && limit.isPresent();
    }

    /// The force of the standing starts, in newtons.
    double launchN(Move move) {
        return launch.orElseThrow().value() + move.of(What.LAUNCH_N);
    }

    /// What is taken for the slope; nothing where the hill is levelled.
    List<String> slopeAssumed() {
        return slope.isLevelled() ? List.of() : List.of(HillSlope.EVEN);
    }

    /// The climb as ridden, its drive of 1 N at the hill's speed, or of 1 N at the most where starts are known.
    ClimbModel model(Move move) {
        var mean = power.load().mean();
        var load = new RoadLoad(
                Math.max(0, mean.rollingCoefficient() + move.of(What.ROLLING)),
                Math.max(0, mean.dragAreaM2() + move.of(What.AREA_M2)));
        var setting = power.road().setting();
        var moved = new Setting(
                setting.massKg() + move.of(What.BIKE_KG) + move.of(What.RIDER_KG),
                setting.turningKg(),
                setting.airKgPerM3() + move.of(What.AIR_KG_PER_M3),
                setting.gravityMps2());
        double riseM = power.rise().valueM() + move.of(What.RISE_M);
        return new ClimbModel(
                slope.along(power.length().valueM(), riseM, move),
                load,
                moved,
                power.wind().headMps() + move.of(What.HEAD_MPS),
                power.entryMps() + move.of(What.ENTRY_MPS),
                shape(move));
    }

    /// The bike under the reference rider in the reference air.
    Setting reference(Move move) {
        var setting = power.road().setting();
        double riderKg = RoadSetting.riderKg(input, group.counted().getFirst().run());
        return new Setting(
                setting.massKg() - riderKg + move.of(What.BIKE_KG) + RoadSetting.REFERENCE_RIDER_KG,
                setting.turningKg(),
                Air.REFERENCE.densityKgPerM3(),
                Gravity.STANDARD_MPS2);
    }

    private Ride.Drive shape(Move move) {
        double cutOffMps = cutOff.map(Figure::value).orElse(Double.POSITIVE_INFINITY) + move.of(What.CUT_OFF_MPS);
        if (isDriveKnown()) {
            double launchN = launchN(move);
            double limitW = limit.orElseThrow().value() + move.of(What.LIMIT_W);
            var thrust = new Thrust(launchN, limitW, cutOffMps, ClimbRules.TAPER_MPS);
            return v -> thrust.forceN(v) / launchN;
        }
        var help = new Thrust(1, 1, cutOffMps, ClimbRules.TAPER_MPS);
        var falling = ClimbModel.falling(power.meanMps(), ClimbRules.FALL + move.fall());
        return v -> falling.forceN(v) * help.help(v);
    }

    /// The ways in which the drive's force may fall: one where starts told it, else three points of what is usual,
    /// which give a mean that is exact to the fifth power.
    ///
    /// How a climb answers to anything leans on it: a drive of one force stalls where one of one power slows down.
    List<Fall> falls() {
        double reach = Math.sqrt(3) * ClimbRules.FALL_SD;
        return isDriveKnown()
                ? List.of(new Fall(0, 1))
                : List.of(new Fall(-reach, 1.0 / 6), new Fall(0, 4.0 / 6), new Fall(reach, 1.0 / 6));
    }

    /// What the standard uncertainty of each thing does to a figure, relative to it: the root mean square over both
    /// ways and over the ways in which the drive's force may fall.
    List<Contribution> contributions(Effect effect) {
        var all = new ArrayList<Contribution>();
        var road = power.road();
        add(all, effect, "mass of the bike", What.BIKE_KG, road.bikeSdKg());
        add(all, effect, "mass of the rider as ridden", What.RIDER_KG, road.riderSdKg());
        add(all, effect, "air density", What.AIR_KG_PER_M3, road.airSdKgPerM3());
        add(all, effect, WIND, What.HEAD_MPS, power.wind().standardUncertainty());
        add(all, effect, "surveyed rise", What.RISE_M, power.rise().standardUncertaintyM());
        double entrySd = group.meanOf(run -> run.entry().standardUncertainty());
        add(all, effect, "speed at the first gate", What.ENTRY_MPS, entrySd);
        cutOff.ifPresent(figure -> add(
                all, effect, "cut-off speed", What.CUT_OFF_MPS, figure.thisDay().standard()));
        all.add(ofLoad(effect));
        all.add(ofDrive(effect));
        all.add(slope.open(effect, falls()));
        return all;
    }

    private void add(List<Contribution> all, Effect effect, String name, What what, double sd) {
        double squares = 0;
        for (var fall : falls()) {
            double up = effect.of(new Move(what, sd, fall.more()), fall.nothing());
            // One way tells enough of a drive that is not the usual one.
            double down = fall.more() == 0 ? effect.of(new Move(what, -sd, 0), NOTHING) : up;
            squares += fall.weight() * (up * up + down * down) / 2;
        }
        all.add(Contribution.typeB(name, Math.sqrt(squares)));
    }

    private Contribution ofLoad(Effect effect) {
        var load = power.load();
        return pair(
                load.assumed() ? "road load (assumed)" : "road load by the coast-down",
                effect.of(new Move(What.ROLLING, load.rollingSd(), 0), NOTHING),
                effect.of(new Move(What.AREA_M2, load.dragAreaSdM2(), 0), NOTHING),
                load.correlation(),
                load.degreesOfFreedom());
    }

    private Contribution ofDrive(Effect effect) {
        if (!isDriveKnown()) {
            double squares = 0;
            for (var fall : falls()) {
                double one = effect.of(fall.nothing(), NOTHING);
                squares += fall.weight() * one * one;
            }
            return Contribution.typeB("how the drive's force falls (assumed)", Math.sqrt(squares));
        }
        var first = launch.orElseThrow();
        var second = limit.orElseThrow();
        return pair(
                "force of the drive by standing starts",
                effect.of(new Move(What.LAUNCH_N, first.thisDay().standard(), 0), NOTHING),
                effect.of(new Move(What.LIMIT_W, second.thisDay().standard(), 0), NOTHING),
                input.correlation(first.key(), second.key()),
                Math.min(first.thisDay().degreesOfFreedom(), second.thisDay().degreesOfFreedom()));
    }

    private static Contribution pair(String name, double first, double second, double rho, double degrees) {
        double square = first * first + second * second + 2 * rho * first * second;
        return new Contribution(name, Contribution.Evaluation.B, Math.sqrt(Math.max(0, square)), degrees, "");
    }
}
