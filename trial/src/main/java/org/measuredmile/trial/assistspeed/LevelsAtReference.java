package org.measuredmile.trial.assistspeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.measuredmile.quantity.budget.Budget;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The speeds at reference conditions: the reference rider in the reference air, level and without wind, at the power
/// that the wheel had; as measured where a controller holds them.
///
/// A speed within 3 % of the noted cut-off is the controller's: rider and air move it by nothing. From there to 6 %,
/// and
/// where no cut-off was noted, half the correction is in the budget.
/// Source: the 3 % are the climb's; the 6 % are a house value.
final class LevelsAtReference {
    static final String GOVERNED = "speed-governed";
    private static final double HELD = 0.97;
    private static final double PERHAPS_HELD = 0.94;
    /// A compass point is right within half of one, which moves w·cos φ by so much of w.
    private static final double BEARING_SD = 0.1;
    /// What is open of the square of the wind along two ways: of w²·cos² φ with φ uniform, and of w² read to 30 %.
    private static final double SQUARE_OF_UNKNOWN = 0.71;
    private static final double SQUARE_OF_KNOWN = 0.5;

    private final TrialInput input;
    private final List<Figure> cutOffs;
    private final UsedLoad used;

    LevelsAtReference(TrialInput input, List<Figure> cutOffs) {
        this.input = input;
        this.cutOffs = List.copyOf(cutOffs);
        this.used = UsedLoad.of(input);
    }

    List<Figure> of(List<Figure> asRidden, List<LevelPass> passes) {
        var all = new ArrayList<Figure>();
        var byLevel = LevelFigures.byLevel(passes);
        for (var figure : asRidden) {
            var variant = figure.key().variant();
            byLevel.forEach((level, ridden) -> {
                if (variant.covers(level)) {
                    of(figure, ridden).ifPresent(all::add);
                }
            });
        }
        return all;
    }

    private Optional<Figure> of(Figure figure, List<LevelPass> passes) {
        double share = shareOfCutOff(figure);
        if (share >= HELD) {
            return Optional.of(governed(figure, share));
        }
        var directions = LevelFigures.byDirection(passes);
        boolean isPaired = directions.containsKey("out") && directions.containsKey("back");
        var wind = RoadWind.of(input, List.copyOf(directions.values()), isPaired);
        var run = passes.getFirst().run();
        var road = RoadSetting.of(input, run);
        double riderKg = RoadSetting.riderKg(input, run);
        var model = new SteadyPower(used.load().mean(), road.setting(), road.atReference(riderKg), wind.headsMps());
        double ratio = model.ratio(figure.value());
        if (!Double.isFinite(ratio)) {
            return Optional.empty();
        }
        var parts = new ArrayList<Contribution>();
        figure.budget().stream()
                .filter(part ->
                        !part.input().equals(WindPart.ALONG) && !part.input().equals(WindPart.CHANGING))
                .forEach(part -> parts.add(part.through(ratio)));
        parts.addAll(windParts(model, wind, figure.value()));
        parts.addAll(correction(model, road, figure.value(), ratio));
        var assumed = assumed(figure, road);
        boolean isOff = figure.key().variant().has("level", "off");
        if (!isOff && !(share < PERHAPS_HELD)) {
            boolean isNoted = !Double.isNaN(share);
            parts.add(Contribution.typeB(
                    isNoted ? "whether power or the controller holds it" : "whether a controller holds it",
                    Math.abs(ratio - 1) * figure.value() / 2));
            if (!isNoted) {
                assumed.add("held by its power and not by a controller: no cut-off was noted");
            }
        }
        return Optional.of(brought(figure, ratio, parts, assumed, road));
    }

    /// The speed over the noted cut-off of its drive, or of the other drive where only that was noted; NaN
    /// where none was, and with the motor off, when nothing can be cut off.
    private double shareOfCutOff(Figure figure) {
        var variant = figure.key().variant();
        if (variant.has("level", "off")) {
            return Double.NaN;
        }
        String drive = variant.get("drive").orElse("");
        return cutOffs.stream()
                .filter(one -> one.key().variant().has("drive", drive))
                .findFirst()
                .or(() -> cutOffs.stream().findFirst())
                .map(one -> figure.value() / one.value())
                .orElse(Double.NaN);
    }

    private static Figure governed(Figure figure, double share) {
        return at(figure, figure.value(), figure.budget(), figure.assumed(), List.of(), 1)
                .noting(List.of(Finding.note(
                        GOVERNED,
                        figure.findings().isEmpty()
                                ? org.measuredmile.recording.Place.NOWHERE
                                : figure.findings().getFirst().place(),
                        String.format(
                                Locale.ROOT,
                                "at %.0f %% of the cut-off speed the controller holds it: rider and air do not move "
                                        + "it, and nothing is corrected",
                                100 * share))));
    }

    private static List<Contribution> windParts(SteadyPower model, RoadWind wind, double speedMps) {
        var still = model.inStillAir();
        var power = model.powerW(speedMps).orElseThrow();
        double slower = still.speedMps(model.ridden(), power, 0.1).orElse(speedMps);
        double faster = still.speedMps(model.ridden(), power, -0.1).orElse(speedMps);
        double answer = (faster - slower) / 0.2;
        int ways = wind.headsMps().length;
        double changing = answer * WindPart.CHANGE * wind.windMps() / Math.sqrt(ways);
        double square = 0;
        if (ways > 1) {
            double calm = still.speedMps(model.ridden(), power, 0).orElse(speedMps);
            double open = wind.isBearingKnown() ? SQUARE_OF_KNOWN : wind.isWritten() ? SQUARE_OF_UNKNOWN : 1;
            square = open * Math.abs(speedMps - calm);
        }
        var parts = new ArrayList<Contribution>();
        parts.add(Contribution.typeB(WindPart.CHANGING, StrictMath.hypot(changing, square)));
        if (wind.isBearingKnown()) {
            double open = answer * BEARING_SD * wind.windMps() * wind.oneWay();
            if (open > 0) {
                parts.add(Contribution.typeB("bearing of the wind", open));
            }
        } else if (wind.oneWay() > 0) {
            parts.add(Contribution.typeB(WindPart.ALONG, answer * wind.windMps() / Math.sqrt(2) * wind.oneWay()));
        }
        return parts;
    }

    /// What load, masses and air leave open of the correction.
    private List<Contribution> correction(SteadyPower model, RoadSetting road, double speedMps, double ratio) {
        KnownLoad load = used.load();
        RoadLoad mean = load.mean();
        var here = model.ridden();
        var there = model.reference();
        double byRolling = model.with(new RoadLoad(mean.rollingCoefficient() + load.rollingSd(), mean.dragAreaM2()))
                        .ratio(speedMps)
                - ratio;
        double byArea = model.with(new RoadLoad(mean.rollingCoefficient(), mean.dragAreaM2() + load.dragAreaSdM2()))
                        .ratio(speedMps)
                - ratio;
        double loadSd = load.sd(perUnit(byRolling, load.rollingSd()), perUnit(byArea, load.dragAreaSdM2()));
        double rider = model.with(here.withMass(here.massKg() + road.riderSdKg()), there)
                        .ratio(speedMps)
                - ratio;
        double bike = model.with(
                                here.withMass(here.massKg() + road.bikeSdKg()),
                                there.withMass(there.massKg() + road.bikeSdKg()))
                        .ratio(speedMps)
                - ratio;
        double air = model.with(here.inAir(here.airKgPerM3() + road.airSdKgPerM3()), there)
                        .ratio(speedMps)
                - ratio;
        return List.of(
                new Contribution(
                        "road load, of the correction",
                        Contribution.Evaluation.B,
                        loadSd * speedMps,
                        load.degreesOfFreedom(),
                        ""),
                Contribution.typeB("mass of the rider", Math.abs(rider) * speedMps),
                Contribution.typeB("mass of the bike", Math.abs(bike) * speedMps),
                Contribution.typeB("density of the air", Math.abs(air) * speedMps));
    }

    private static double perUnit(double change, double sd) {
        return sd == 0 ? 0 : change / sd;
    }

    private List<String> assumed(Figure figure, RoadSetting road) {
        var assumed = new ArrayList<String>();
        for (String one : figure.assumed()) {
            if (!one.equals(LevelFigures.USUAL_LOAD)) {
                assumed.add(one);
            }
        }
        assumed.addAll(road.assumed());
        assumed.addAll(used.assumed());
        return assumed;
    }

    private Figure brought(
            Figure figure, double ratio, List<Contribution> parts, List<String> assumed, RoadSetting road) {
        var all = new ArrayList<Figure.Used>(figure.used());
        all.addAll(road.used());
        all.addAll(used.used());
        return at(figure, figure.value() * ratio, parts, assumed, all, ratio);
    }

    private static Figure at(
            Figure figure,
            double value,
            List<Contribution> parts,
            List<String> assumed,
            List<Figure.Used> used,
            double ratio) {
        var anyDay = new Budget(parts);
        var thisDay = new Budget(parts.stream()
                .filter(part ->
                        !part.input().equals("between days") && !part.input().equals(EffortPart.NAME))
                .toList());
        return new Figure(
                new FigureKey(figure.key().figure(), figure.key().variant().with("at", "reference")),
                figure.kind(),
                figure.trial(),
                figure.version(),
                value,
                BearingInterval.around(thisDay, value),
                BearingInterval.around(anyDay, value),
                figure.runs().stream().map(run -> scaled(run, ratio)).toList(),
                anyDay.byWeight(),
                List.of(),
                assumed,
                used,
                figure.findings().stream()
                        .filter(one -> !one.code().equals("gain") && !one.code().startsWith("levels-"))
                        .toList(),
                List.of());
    }

    private static FigureRun scaled(FigureRun run, double ratio) {
        var value =
                run.value().isPresent() ? OptionalDouble.of(run.value().getAsDouble() * ratio) : OptionalDouble.empty();
        return new FigureRun(run.run(), run.state(), run.counted(), run.reason(), value);
    }
}
