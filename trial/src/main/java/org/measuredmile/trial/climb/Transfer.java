package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Profile;
import org.measuredmile.roadload.Ride;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// From a climb as ridden to the same climb at reference conditions: two ratios, and what each thing that is not known
/// exactly does to them.
///
/// The drive's force falls with speed as the day's standing starts have it, else as one over the speed to the power
/// 1 ± 0.35. Sensitivities are differences of one standard uncertainty.
/// Source: JCGM 100:2008, 5.1.3, note 2 (sensitivities by differences), 5.2.2 (correlated inputs).
final class Transfer {
    private final TrialInput input;
    private final ClimbGroup group;
    private final ClimbPower power;
    private final Inputs known;
    private final Optional<Figure> launch;
    private final Optional<Figure> limit;
    private final Optional<Figure> cutOff;
    /// The strength found last, from which the next is looked for.
    private double near;

    /// Of time and of lowest speed, at reference over as ridden.
    record Ratios(double time, double lowest) {}

    /// Contributions relative to the figure.
    record Parts(List<Contribution> time, List<Contribution> lowest) {}

    /// All that a transfer rests on. `launchN` 0 where no standing start told it.
    private record Inputs(
            double bikeKg,
            double riderKg,
            double airKgPerM3,
            double headMps,
            double rolling,
            double areaM2,
            double riseM,
            double entryMps,
            double fall,
            double launchN,
            double limitW,
            double cutOffMps) {}

    Transfer(TrialInput input, ClimbGroup group, ClimbPower power) {
        this.input = input;
        this.group = group;
        this.power = power;
        this.launch = used(Climb.LAUNCH_FORCE);
        this.limit = used(Climb.POWER_LIMIT);
        this.cutOff = used(Climb.CUT_OFF);
        this.near = Math.max(1, power.watts() / power.meanMps());
        double riderKg = RoadSetting.riderKg(input, group.counted().getFirst().run());
        boolean isKnown = launch.isPresent() && limit.isPresent();
        this.known = new Inputs(
                power.road().setting().massKg() - riderKg,
                riderKg,
                power.road().setting().airKgPerM3(),
                power.wind().headMps(),
                power.load().mean().rollingCoefficient(),
                power.load().mean().dragAreaM2(),
                power.rise().valueM(),
                power.entryMps(),
                ClimbRules.FALL,
                isKnown ? launch.orElseThrow().value() : 0,
                isKnown ? limit.orElseThrow().value() : 0,
                cutOff.map(Figure::value).orElse(Double.POSITIVE_INFINITY));
    }

    private Optional<Figure> used(String figure) {
        return Optional.ofNullable(input.used().get(new FigureKey(figure, Variant.of("drive", group.drive()))));
    }

    Optional<Ratios> nominal() {
        return ratios(known);
    }

    String whyNone() {
        return model(known).strength(power.timeS(), near).isEmpty()
                ? "no drive of this kind takes the hill in the time measured"
                : "at the reference mass the bike would not climb it";
    }

    private Setting ridden(Inputs in) {
        var setting = power.road().setting();
        return new Setting(in.bikeKg + in.riderKg, setting.turningKg(), in.airKgPerM3, setting.gravityMps2());
    }

    private ClimbModel model(Inputs in) {
        var hill = Profile.even(power.length().valueM(), in.riseM);
        var load = new RoadLoad(in.rolling, in.areaM2);
        return new ClimbModel(hill, load, ridden(in), in.headMps, in.entryMps, shape(in));
    }

    private Optional<Ratios> ratios(Inputs in) {
        var reference = new RoadSetting(ridden(in), 0, 0, 0, 0, List.of(), List.of()).atReference(in.riderKg);
        var model = model(in);
        var strength = model.strength(power.timeS(), near);
        if (strength.isEmpty()) {
            return Optional.empty();
        }
        near = strength.getAsDouble();
        Ride asRidden = model.ride(strength.getAsDouble());
        Ride calm = model.calmIn(reference).ride(strength.getAsDouble());
        return calm.finished()
                ? Optional.of(new Ratios(calm.timeS() / asRidden.timeS(), calm.lowestMps() / asRidden.lowestMps()))
                : Optional.empty();
    }

    private Ride.Drive shape(Inputs in) {
        var help = new Thrust(1, 1, in.cutOffMps, ClimbRules.TAPER_MPS);
        if (in.launchN > 0) {
            var thrust = new Thrust(in.launchN, in.limitW, in.cutOffMps, ClimbRules.TAPER_MPS);
            return v -> thrust.forceN(v) / in.launchN;
        }
        var falling = ClimbModel.falling(power.meanMps(), in.fall);
        return v -> falling.forceN(v) * help.help(v);
    }

    List<String> assumed() {
        var all = new ArrayList<String>();
        all.add("an even slope between the gates");
        if (known.launchN == 0) {
            all.add("drive force falling as one over the speed to the power 1 ± 0.35: no standing start told it");
        }
        all.addAll(power.road().assumed());
        all.addAll(UsedLoad.of(input).assumed());
        if (!power.wind().assumed().isEmpty()) {
            all.add(power.wind().assumed());
        }
        return all;
    }

    private interface Change {
        Inputs by(Inputs in);
    }

    /// What each input's standard uncertainty does to both ratios, relative to them.
    Parts parts(Ratios nominal) {
        var time = new ArrayList<Contribution>();
        var lowest = new ArrayList<Contribution>();
        var road = power.road();
        add(time, lowest, "mass of the bike", nominal, in -> bike(in, road.bikeSdKg()));
        add(time, lowest, "mass of the rider as ridden", nominal, in -> rider(in, road.riderSdKg()));
        add(time, lowest, "air density", nominal, in -> air(in, road.airSdKgPerM3()));
        add(
                time,
                lowest,
                "wind along the hill",
                nominal,
                in -> wind(in, power.wind().standardUncertainty()));
        add(time, lowest, "surveyed rise", nominal, in -> rise(in, power.rise().standardUncertaintyM()));
        double entrySd = group.meanOf(run -> run.entry().standardUncertainty());
        add(time, lowest, "speed at the first gate", nominal, in -> entry(in, entrySd));
        addLoad(time, lowest, nominal);
        addDrive(time, lowest, nominal);
        var even = Contribution.typeB("an even slope between the gates (assumed)", ClimbRules.EVEN_SLOPE_SD);
        time.add(even);
        lowest.add(even);
        return new Parts(time, lowest);
    }

    private double[] moved(Ratios nominal, Change change) {
        var there = ratios(change.by(known));
        // A step after which the hill cannot be climbed tells that the ratio is not known at all.
        return there.map(one -> new double[] {one.time() / nominal.time() - 1, one.lowest() / nominal.lowest() - 1})
                .orElse(new double[] {1, 1});
    }

    private void add(List<Contribution> time, List<Contribution> lowest, String input, Ratios nominal, Change change) {
        double[] moved = moved(nominal, change);
        time.add(Contribution.typeB(input, Math.abs(moved[0])));
        lowest.add(Contribution.typeB(input, Math.abs(moved[1])));
    }

    /// Of an input that does more one way than the other, the root mean square of both.
    private static void addBothWays(
            List<Contribution> time, List<Contribution> lowest, String input, double[] up, double[] down) {
        time.add(Contribution.typeB(input, StrictMath.hypot(up[0], down[0]) / Math.sqrt(2)));
        lowest.add(Contribution.typeB(input, StrictMath.hypot(up[1], down[1]) / Math.sqrt(2)));
    }

    private void addPair(
            List<Contribution> time, List<Contribution> lowest, Contribution named, double[][] moved, double rho) {
        for (int k = 0; k < 2; k++) {
            double a = moved[0][k];
            double b = moved[1][k];
            double sd = Math.sqrt(Math.max(0, a * a + b * b + 2 * rho * a * b));
            (k == 0 ? time : lowest)
                    .add(new Contribution(named.input(), Contribution.Evaluation.B, sd, named.degreesOfFreedom(), ""));
        }
    }

    private void addLoad(List<Contribution> time, List<Contribution> lowest, Ratios nominal) {
        var load = power.load();
        double[][] moved = {
            moved(nominal, in -> load(in, load.rollingSd(), 0)), moved(nominal, in -> load(in, 0, load.dragAreaSdM2()))
        };
        String name = load.assumed() ? "road load (assumed)" : "road load by the coast-down";
        var named = new Contribution(name, Contribution.Evaluation.B, 0, load.degreesOfFreedom(), "");
        addPair(time, lowest, named, moved, load.correlation());
    }

    private void addDrive(List<Contribution> time, List<Contribution> lowest, Ratios nominal) {
        cutOff.ifPresent(figure -> add(
                time,
                lowest,
                "cut-off speed",
                nominal,
                in -> drive(in, 0, 0, figure.thisDay().standard(), 0)));
        if (known.launchN == 0) {
            addBothWays(
                    time,
                    lowest,
                    "how the drive's force falls (assumed)",
                    moved(nominal, in -> drive(in, 0, 0, 0, ClimbRules.FALL_SD)),
                    moved(nominal, in -> drive(in, 0, 0, 0, -ClimbRules.FALL_SD)));
            return;
        }
        var first = launch.orElseThrow();
        var second = limit.orElseThrow();
        double[][] moved = {
            moved(nominal, in -> drive(in, first.thisDay().standard(), 0, 0, 0)),
            moved(nominal, in -> drive(in, 0, second.thisDay().standard(), 0, 0))
        };
        double degrees =
                Math.min(first.thisDay().degreesOfFreedom(), second.thisDay().degreesOfFreedom());
        var named =
                new Contribution("force of the drive by standing starts", Contribution.Evaluation.B, 0, degrees, "");
        addPair(time, lowest, named, moved, input.correlation(first.key(), second.key()));
    }

    private static Inputs bike(Inputs in, double kg) {
        return copy(in, in.bikeKg + kg, in.riderKg, in.airKgPerM3, in.headMps, in.riseM, in.entryMps);
    }

    private static Inputs rider(Inputs in, double kg) {
        return copy(in, in.bikeKg, in.riderKg + kg, in.airKgPerM3, in.headMps, in.riseM, in.entryMps);
    }

    private static Inputs air(Inputs in, double kgPerM3) {
        return copy(in, in.bikeKg, in.riderKg, in.airKgPerM3 + kgPerM3, in.headMps, in.riseM, in.entryMps);
    }

    private static Inputs wind(Inputs in, double mps) {
        return copy(in, in.bikeKg, in.riderKg, in.airKgPerM3, in.headMps + mps, in.riseM, in.entryMps);
    }

    private static Inputs rise(Inputs in, double metres) {
        return copy(in, in.bikeKg, in.riderKg, in.airKgPerM3, in.headMps, in.riseM + metres, in.entryMps);
    }

    private static Inputs entry(Inputs in, double mps) {
        return copy(in, in.bikeKg, in.riderKg, in.airKgPerM3, in.headMps, in.riseM, in.entryMps + mps);
    }

    private static Inputs copy(
            Inputs in, double bike, double rider, double air, double head, double rise, double entry) {
        return new Inputs(
                bike,
                rider,
                air,
                head,
                in.rolling,
                in.areaM2,
                rise,
                entry,
                in.fall,
                in.launchN,
                in.limitW,
                in.cutOffMps);
    }

    private static Inputs load(Inputs in, double rolling, double areaM2) {
        return new Inputs(
                in.bikeKg,
                in.riderKg,
                in.airKgPerM3,
                in.headMps,
                in.rolling + rolling,
                in.areaM2 + areaM2,
                in.riseM,
                in.entryMps,
                in.fall,
                in.launchN,
                in.limitW,
                in.cutOffMps);
    }

    private static Inputs drive(Inputs in, double launchN, double limitW, double cutOffMps, double fall) {
        return new Inputs(
                in.bikeKg,
                in.riderKg,
                in.airKgPerM3,
                in.headMps,
                in.rolling,
                in.areaM2,
                in.riseM,
                in.entryMps,
                in.fall + fall,
                in.launchN + launchN,
                in.limitW + limitW,
                in.cutOffMps + cutOffMps);
    }
}
