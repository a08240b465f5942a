package org.measuredmile.trial.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.Profile;
import org.measuredmile.roadload.Ride;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The climb as everything but the climb has it: the force of the standing starts, masses, road load and course.
///
/// It is a check of all of them together: where the ridden time lies outside, one of them is not what was written, or
/// the drive does not push on a long hill as it does at a start. No watch and no trace of the climb enter it but for
/// the
/// speed at the first gate.
/// Source: JCGM 100:2008, 5.1.3, note 2 (sensitivities by differences), 5.2.2 (correlated inputs).
final class ForetoldClimb {
    private static final String NAME = "climb.foretold-time";

    private final TrialInput input;
    private final ClimbGroup group;
    private final ClimbPower power;
    private final Figure launch;
    private final Figure limit;
    private final Optional<Figure> cutOff;

    /// What may be otherwise than it was taken to be.
    private enum Unsure {
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
        CUT_OFF_MPS
    }

    /// A foretold time with what became of it.
    record Foretold(Figure figure, Finding finding) {}

    private ForetoldClimb(TrialInput input, ClimbGroup group, ClimbPower power, Figure launch, Figure limit) {
        this.input = input;
        this.group = group;
        this.power = power;
        this.launch = launch;
        this.limit = limit;
        this.cutOff = used(input, group, Climb.CUT_OFF);
    }

    /// Of every drive and hill whose standing starts told force and power; nothing where the bike would not get up.
    static List<Foretold> of(TrialInput input, List<ClimbGroup> groups) {
        var all = new ArrayList<Foretold>();
        for (var group : groups) {
            var launch = used(input, group, Climb.LAUNCH_FORCE);
            var limit = used(input, group, Climb.POWER_LIMIT);
            if (group.counted().isEmpty() || launch.isEmpty() || limit.isEmpty()) {
                continue;
            }
            group.power(input)
                    .flatMap(power -> new ForetoldClimb(input, group, power, launch.get(), limit.get()).foretold())
                    .ifPresent(all::add);
        }
        return all;
    }

    private static Optional<Figure> used(TrialInput input, ClimbGroup group, String figure) {
        return Optional.ofNullable(input.used().get(new FigureKey(figure, Variant.of("drive", group.drive()))));
    }

    private Optional<Foretold> foretold() {
        var time = timeS(new double[Unsure.values().length]);
        return time.map(seconds -> {
            var budget = new Budget(contributions(seconds));
            var figure = figure(seconds, budget);
            return new Foretold(figure, finding(figure));
        });
    }

    private Optional<Double> timeS(double[] by) {
        var road = power.road().setting();
        double kg = road.massKg() + by(by, Unsure.BIKE_KG) + by(by, Unsure.RIDER_KG);
        var setting =
                new Setting(kg, road.turningKg(), road.airKgPerM3() + by(by, Unsure.AIR_KG_PER_M3), road.gravityMps2());
        var mean = power.load().mean();
        var load = new RoadLoad(
                Math.max(0, mean.rollingCoefficient() + by(by, Unsure.ROLLING)),
                Math.max(0, mean.dragAreaM2() + by(by, Unsure.AREA_M2)));
        double cutOffMps = cutOff.map(Figure::value).orElse(Double.POSITIVE_INFINITY) + by(by, Unsure.CUT_OFF_MPS);
        var thrust = new Thrust(
                launch.value() + by(by, Unsure.LAUNCH_N),
                limit.value() + by(by, Unsure.LIMIT_W),
                cutOffMps,
                ClimbRules.TAPER_MPS);
        var model = new ClimbModel(
                Profile.even(power.length().valueM(), power.rise().valueM() + by(by, Unsure.RISE_M)),
                load,
                setting,
                power.wind().headMps() + by(by, Unsure.HEAD_MPS),
                power.entryMps() + by(by, Unsure.ENTRY_MPS),
                thrust::forceN);
        Ride ride = model.ride(1);
        return ride.finished() ? Optional.of(ride.timeS()) : Optional.empty();
    }

    private static double by(double[] by, Unsure what) {
        return by[what.ordinal()];
    }

    /// What so much more of an input does, in seconds; a hill no longer climbed counts as the whole time.
    private double moved(double timeS, Unsure what, double amount) {
        double[] by = new double[Unsure.values().length];
        by[what.ordinal()] = amount;
        return timeS(by).map(there -> there - timeS).orElse(timeS);
    }

    private List<Contribution> contributions(double timeS) {
        var road = power.road();
        var all = new ArrayList<Contribution>();
        add(all, "mass of the bike", timeS, Unsure.BIKE_KG, road.bikeSdKg());
        add(all, "mass of the rider as ridden", timeS, Unsure.RIDER_KG, road.riderSdKg());
        add(all, "air density", timeS, Unsure.AIR_KG_PER_M3, road.airSdKgPerM3());
        add(all, "wind along the hill", timeS, Unsure.HEAD_MPS, power.wind().standardUncertainty());
        add(all, "surveyed rise", timeS, Unsure.RISE_M, power.rise().standardUncertaintyM());
        double entrySd = group.meanOf(run -> run.entry().standardUncertainty());
        add(all, "speed at the first gate", timeS, Unsure.ENTRY_MPS, entrySd);
        cutOff.ifPresent(figure -> add(
                all,
                "cut-off speed",
                timeS,
                Unsure.CUT_OFF_MPS,
                figure.thisDay().standard()));
        var load = power.load();
        all.add(pair(
                load.assumed() ? "road load (assumed)" : "road load by the coast-down",
                moved(timeS, Unsure.ROLLING, load.rollingSd()),
                moved(timeS, Unsure.AREA_M2, load.dragAreaSdM2()),
                load.correlation(),
                load.degreesOfFreedom()));
        all.add(pair(
                "force of the drive by standing starts",
                moved(timeS, Unsure.LAUNCH_N, launch.thisDay().standard()),
                moved(timeS, Unsure.LIMIT_W, limit.thisDay().standard()),
                input.correlation(launch.key(), limit.key()),
                Math.min(launch.thisDay().degreesOfFreedom(), limit.thisDay().degreesOfFreedom())));
        all.add(Contribution.typeB("an even slope between the gates (assumed)", timeS * ClimbRules.EVEN_SLOPE_SD));
        return all;
    }

    private void add(List<Contribution> all, String name, double timeS, Unsure what, double sd) {
        // The time answers unevenly near the grade that the bike just climbs: both sides count.
        double both = StrictMath.hypot(moved(timeS, what, sd), moved(timeS, what, -sd)) / Math.sqrt(2);
        all.add(Contribution.typeB(name, both));
    }

    private static Contribution pair(String name, double first, double second, double rho, double degrees) {
        double square = first * first + second * second + 2 * rho * first * second;
        return new Contribution(name, Contribution.Evaluation.B, Math.sqrt(Math.max(0, square)), degrees, "");
    }

    private Figure figure(double timeS, Budget budget) {
        var anyDay = budget.plus(new Contribution(
                "between days",
                Contribution.Evaluation.B,
                ClimbRules.TIME.betweenDaysAt(timeS),
                ClimbRules.TIME.dayDegreesOfFreedom(),
                ""));
        var assumed = new ArrayList<>(UsedLoad.of(input).assumed());
        assumed.addAll(power.road().assumed());
        assumed.add("the drive pushes up the hill as it does at a start");
        assumed.add("an even slope between the gates");
        return new Figure(
                new FigureKey(NAME, group.variant()),
                QuantityKind.TIME,
                Climb.DECLARATION.id(),
                Climb.DECLARATION.version(),
                timeS,
                budget.around(timeS),
                anyDay.around(timeS),
                List.of(),
                anyDay.byWeight(),
                List.of(),
                assumed,
                input.used().values().stream().map(Figure::asUsed).toList(),
                List.of(),
                List.of());
    }

    private Finding finding(Figure figure) {
        double riddenS = group.timeS();
        double runsSd = ClimbRules.TIME.betweenRunsAt(riddenS)
                / Math.sqrt(group.counted().size());
        double gap = riddenS - figure.value();
        double most =
                ClimbRules.DISAGREE_BEYOND * StrictMath.hypot(figure.thisDay().standard(), runsSd);
        String words = group.drive()
                + (group.hill().id().isEmpty() ? "" : " on " + group.hill().id())
                + ": ridden in " + ClimbWords.seconds(riddenS)
                + "; starts, masses and road load alone foretell " + ClimbWords.seconds(figure.value())
                + ", apart by at most " + ClimbWords.seconds(most);
        return Math.abs(gap) <= most
                ? Finding.note("foretold", Place.NOWHERE, words)
                : Finding.warning(
                        "foretold-differs",
                        Place.NOWHERE,
                        words,
                        "look at the rise, the masses and the drive's state on the hill: one is not as written");
    }
}
