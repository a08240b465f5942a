package org.measuredmile.trial.range;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.Figure.FigureRun;
import org.measuredmile.trial.RunMean;
import org.measuredmile.trial.TrialInput;
import org.measuredmile.trial.UsedLoad;

/// The figures of one level, from all its rides.
final class RangeFigures {
    private final TrialInput input;
    private final RangeRules rules;
    private final Variant level;
    private final List<RangeRun> rides;
    private final List<Figure> figures = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    /// Drawn once for each ride and what is known of it: distance and energy share it.
    private final Map<String, ReferenceRatio> ratios = new TreeMap<>();

    RangeFigures(TrialInput input, RangeRules rules, Variant level, List<RangeRun> rides) {
        this.input = input;
        this.rules = rules;
        this.level = level;
        this.rides = rides;
    }

    List<Figure> figures() {
        return figures;
    }

    List<Finding> findings() {
        return findings;
    }

    RangeFigures compute() {
        var emptied = only(RangeRun::isEmptied);
        var stopped = only(ride -> !ride.isEmptied());
        var range = mean("distance", level, emptied, RangeRun::distanceM, RangeRun::scale);
        range.ifPresent(figures::add);
        mean("riding-time", level, emptied, ride -> ride.way().orElseThrow().ridingS(), _ -> List.of())
                .ifPresent(figures::add);
        mean("mean-speed", level, rides, ride -> speed(ride), RangeRun::scale).ifPresent(figures::add);
        mean("ascent", level, emptied, ride -> ride.way().orElseThrow().ascentM(), RangeFigures::ascent)
                .ifPresent(figures::add);
        energies(emptied);
        var cost = mean("energy-per-distance", level, measured(rides), RangeRun::joulesPerMetre, RangeFigures::cost);
        cost.ifPresent(figures::add);
        wall();
        bands();
        range.ifPresent(one -> atReference(one, emptied, false));
        cost.ifPresent(one -> atReference(one, measured(rides), true));
        slower();
        if (range.isEmpty()) {
            early(stopped);
        }
        return this;
    }

    private List<RangeRun> only(java.util.function.Predicate<RangeRun> which) {
        return rides.stream().filter(which).toList();
    }

    private static List<RangeRun> measured(List<RangeRun> of) {
        return of.stream()
                .filter(ride -> ride.energy().filter(EnergyOut::isMeasured).isPresent())
                .toList();
    }

    private static OptionalDouble speed(RangeRun ride) {
        return ride.way().map(RiddenWay::meanSpeedMps).orElse(OptionalDouble.empty());
    }

    private static List<Contribution> cost(RangeRun ride) {
        var parts = new ArrayList<>(ride.energyParts());
        parts.addAll(ride.scale());
        return parts;
    }

    private static List<Contribution> ascent(RangeRun ride) {
        var way = ride.way().orElseThrow();
        double relative = way.ascentM().isPresent() && way.ascentM().getAsDouble() > 0
                ? way.ascentSdM() / way.ascentM().getAsDouble()
                : 0;
        return List.of(Contribution.typeB("heights and what counts as a rise", relative));
    }

    private void energies(List<RangeRun> emptied) {
        var known = measured(emptied);
        mean("energy", level, known, RangeRun::energyJ, RangeRun::energyParts).ifPresent(figures::add);
        var nominal = new EnergyReader(input, rules, rides.getFirst().run()).nominalJ();
        nominal.ifPresent(joules -> mean(
                        "usable-share",
                        level,
                        known,
                        ride -> OptionalDouble.of(ride.energy().orElseThrow().joules() / joules),
                        RangeRun::energyParts)
                .ifPresent(figures::add));
    }

    private void wall() {
        mean(
                        "wall-energy-per-distance",
                        level,
                        rides,
                        ride -> atWall(ride).perMetre(),
                        ride -> atWall(ride).parts())
                .ifPresent(figures::add);
        EnergyPrice.of(input).ifPresent(this::money);
    }

    private void money(EnergyPrice price) {
        mean(
                        "cost-per-distance",
                        level.with("price", price.label()),
                        rides,
                        ride -> charged(ride)
                                .map(one -> OptionalDouble.of(
                                        price.perJoule() * one.perMetre().orElseThrow()))
                                .orElse(OptionalDouble.empty()),
                        ride -> charged(ride).map(AtWall::parts).orElse(List.of()))
                .map(figure -> figure.assuming("the price of energy as written: " + price.written()))
                .ifPresent(figures::add);
    }

    /// What a metre of a ride took at the wall, and how well that is known.
    private record AtWall(OptionalDouble perMetre, List<Contribution> parts) {}

    private AtWall atWall(RangeRun ride) {
        var parts = new ArrayList<>(ride.scale());
        parts.add(Contribution.typeB("scale of the wall meter", rules.wallScale()));
        var read = input.readings().of(ride.run().id(), "wall-energy");
        return new AtWall(
                read.isPresent() && ride.way().isPresent()
                        ? OptionalDouble.of(
                                read.get().si() / ride.way().orElseThrow().distanceM())
                        : OptionalDouble.empty(),
                parts);
    }

    /// By the wall meter, else by the battery's log and what the charger makes of it.
    private Optional<AtWall> charged(RangeRun ride) {
        var metered = atWall(ride);
        if (metered.perMetre().isPresent()) {
            return Optional.of(metered);
        }
        if (ride.energy().filter(EnergyOut::isMeasured).isEmpty()
                || ride.joulesPerMetre().isEmpty()) {
            return Optional.empty();
        }
        var parts = new ArrayList<>(cost(ride));
        parts.add(Contribution.typeB(
                "charger's efficiency (assumed)", rules.chargerEfficiencySd() / rules.chargerEfficiency()));
        return Optional.of(
                new AtWall(OptionalDouble.of(ride.joulesPerMetre().getAsDouble() / rules.chargerEfficiency()), parts));
    }

    /// A mean of the rides that have a value, its common parts those of the first one that counts.
    private Optional<Figure> mean(
            String name,
            Variant variant,
            List<RangeRun> of,
            Function<RangeRun, OptionalDouble> value,
            Function<RangeRun, List<Contribution>> parts) {
        var mean = RunMean.of(RangeDeclaration.DECLARATION, "range." + name, variant, input.scatter());
        boolean isFirst = true;
        for (var ride : of) {
            var own = ride.way().isPresent() ? value.apply(ride) : OptionalDouble.empty();
            if (own.isEmpty()) {
                continue;
            }
            mean.run(
                    new FigureRun(ride.run().id(), ride.run().state(), ride.counts(), ride.reason(), own),
                    ride.run().direction());
            if (ride.counts() && isFirst) {
                isFirst = false;
                parts.apply(ride).forEach(part -> mean.common(part.through(own.getAsDouble())));
                ride.assumed().forEach(mean::assumed);
            }
        }
        return mean.figureIfAny();
    }

    private void bands() {
        var logged = rides.stream()
                .filter(RangeRun::counts)
                .filter(ride -> ride.energy().flatMap(EnergyOut::log).isPresent()
                        && ride.way().orElseThrow().journey().isPresent())
                .findFirst();
        if (logged.isEmpty()) {
            return;
        }
        var ride = logged.get();
        var log = ride.energy().orElseThrow().log().orElseThrow();
        var journey = ride.way().orElseThrow().journey().orElseThrow();
        for (var band : SpeedBands.of(journey, log).bands()) {
            mean(
                            "energy-at-speed",
                            level.with("band", band.value()),
                            List.of(ride),
                            _ -> OptionalDouble.of(band.joulesPerMetre()),
                            one -> {
                                var parts = cost(one);
                                parts.add(Contribution.typeA(
                                        "pieces of the ride",
                                        band.standardUncertainty() / Math.abs(band.joulesPerMetre()),
                                        band.pieces() - 1.0));
                                return parts;
                            })
                    .ifPresent(figures::add);
        }
    }

    private void atReference(Figure asRidden, List<RangeRun> of, boolean isCost) {
        var counted = of.stream().filter(RangeRun::counts).findFirst().orElseThrow();
        var ratio = ratio(counted);
        var run = counted.run();
        if (ratio.isEmpty()) {
            findings.add(Finding.warning(
                    "no-reference",
                    run.place(),
                    "run " + run.id() + " has no riding time, so that nothing can be said at reference conditions",
                    "record the ride, or write its riding time down"));
            return;
        }
        String against = ratio.get().reasonAgainst(rules);
        if (!against.isEmpty()) {
            findings.add(Finding.refused(
                    "no-reference",
                    run.place(),
                    against,
                    "ride by throttle alone or with a power meter, on a calm day"));
            return;
        }
        var load = UsedLoad.of(input);
        var conditions = counted.conditions().orElseThrow();
        var reference = new ReferenceFigure(asRidden, ratio.get(), isCost)
                .assuming(counted.assumed())
                .assuming(load.assumed())
                .using(load.used())
                .using(conditions.setting().used());
        narrow(reference, counted, load.load());
        figures.add(reference.figure());
    }

    /// What a coast-down or a power meter would make of it.
    private void narrow(ReferenceFigure figure, RangeRun ride, KnownLoad load) {
        var conditions = ride.conditions().orElseThrow();
        if (load.assumed()) {
            figure.narrowedBy("a coast-down of this bike", ratio(ride, conditions.spreads(), coasted(load)));
        }
        if (conditions.spreads().riderSd() > rules.recordedRiderSd()) {
            figure.narrowedBy(
                    "a power meter on the ride",
                    ratio(ride, conditions.spreads().withRider(rules.recordedRiderSd()), load));
        }
    }

    /// As well known as five pairs make it: drag area 6 %, rolling 8 %, leaning on each other.
    private static KnownLoad coasted(KnownLoad load) {
        return new KnownLoad(
                load.mean(),
                0.08 * load.mean().rollingCoefficient(),
                0.06 * load.mean().dragAreaM2(),
                UsedLoad.USUAL_LEANING,
                8,
                false,
                "by a coast-down");
    }

    private Optional<ReferenceRatio> ratio(RangeRun ride) {
        return ride.conditions()
                .map(known -> ratio(ride, known.spreads(), UsedLoad.of(input).load()));
    }

    private ReferenceRatio ratio(RangeRun ride, ReferenceRatio.Spreads spreads, KnownLoad load) {
        return ratios.computeIfAbsent(
                ride.run().id() + spreads + load,
                _ -> ReferenceRatio.of(ride.conditions().orElseThrow().ride(), reference(ride), load, spreads, rules));
    }

    private RideConditions reference(RangeRun ride) {
        var known = ride.conditions().orElseThrow();
        return known.ride().atReference(known.setting().atReference(known.riderKg()), riderAtReferenceW(ride));
    }

    private double riderAtReferenceW(RangeRun ride) {
        return ride.run().variant().has("drive", "throttle") ? 0 : rules.riderW();
    }

    private void slower() {
        var ride = rides.stream().filter(RangeRun::counts).findFirst();
        if (ride.isEmpty() || ride.get().conditions().isEmpty()) {
            return;
        }
        SlowerRide.of(reference(ride.get()), UsedLoad.of(input).load(), rules)
                .flatMap(gain -> mean(
                        "gain-at-tenth-slower",
                        level,
                        List.of(ride.get()),
                        _ -> OptionalDouble.of(gain.best()),
                        _ -> List.of(Contribution.typeB("road load", gain.standardUncertainty() / gain.best()))))
                .ifPresent(figures::add);
    }

    private void early(List<RangeRun> stopped) {
        mean("at-least", level, stopped, RangeRun::distanceM, RangeRun::scale).ifPresent(figures::add);
        var counted = stopped.stream().filter(RangeRun::counts).findFirst();
        if (counted.isEmpty()) {
            return;
        }
        var prediction = new Prediction(input, rules, counted.get());
        switch (prediction.find()) {
            case Prediction.Refused(String reason) ->
                findings.add(Finding.warning(
                        "no-prediction",
                        Place.NOWHERE,
                        "run " + counted.get().run().id() + " stopped early and no range can be predicted: " + reason,
                        "ride on to the end, or log the battery over three laps and 30 % of it"));
            case Prediction.Found(EarlyStop stop, List<String> assumed) ->
                mean("predicted", level, List.of(counted.get()), _ -> OptionalDouble.of(stop.predictedM()), one -> {
                            var parts = new ArrayList<>(one.scale());
                            parts.add(stop.byLaps().through(1 / stop.predictedM()));
                            parts.add(stop.byEnergy().through(1 / stop.predictedM()));
                            return parts;
                        })
                        .ifPresent(figures::add);
        }
    }
}
