package org.measuredmile.trial.range;

import java.util.List;
import java.util.stream.IntStream;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.trial.Better;
import org.measuredmile.trial.Chapter;
import org.measuredmile.trial.Declaration;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.LevelRole;
import org.measuredmile.trial.ReadingSpec;
import org.measuredmile.trial.RecordingSpec;
import org.measuredmile.trial.RoadSetting;
import org.measuredmile.trial.Saying;
import org.measuredmile.trial.Scatter;
import org.measuredmile.trial.UsedLoad;
import org.measuredmile.trial.VariantKey;
import org.measuredmile.trial.VariantKey.Choice;

/// What the trial asks and delivers. See [Range].
final class RangeDeclaration {
    static final Declaration DECLARATION = declare();

    private RangeDeclaration() {}

    private static Declaration declare() {
        var builder = Declaration.of("range", 1, "Range")
                .purpose("How far a full battery goes, at which speed, and what a mile of it costs.")
                .caution(
                        "A long ride on open roads: plan a way home, lights, water and a telephone; the traffic law and"
                                + " other people come first.")
                .caution("End at the system's own cut-off, never below it, and let the battery cool before it is"
                        + " charged, watched, with its own charger.")
                .follows("common practice, no source")
                .voidWhen("not-full", "the battery was not charged to its end before")
                .voidWhen("level", "another level was used on the way")
                .voidWhen("charged", "the battery was charged on the way")
                .voidWhen("fault", "the bike or its battery reported a fault")
                .voidWhen("route", "the ride left the stated loop")
                .runs(1, 1, false);
        builder.variant(new VariantKey(
                        "drive",
                        "drive",
                        List.of(new Choice("pedal", "pedalling"), new Choice("throttle", "by throttle alone")),
                        "pedal"))
                .variant(new VariantKey("level", "level", List.of(), ""))
                .variant(LevelRole.KEY)
                .variant(band())
                .variant(new VariantKey("price", "with a kilowatt-hour at", List.of(), "").foundByTheTrial())
                .variant(new VariantKey(
                                "at", "conditions", List.of(new Choice("reference", "at reference conditions")), "")
                        .foundByTheTrial());
        readings(builder);
        builder.recording(new RecordingSpec(
                        "the whole ride, in one recording or several",
                        List.of(ChannelKind.SPEED),
                        0.2,
                        "record at least every five seconds, and name each file with the run"))
                .recording(new RecordingSpec(
                        "the battery's voltage and current",
                        List.of(ChannelKind.VOLTAGE, ChannelKind.CURRENT),
                        0.2,
                        "log at least every five seconds"))
                .uses(UsedLoad.ROLLING, UsedLoad.STAND_IN)
                .uses(UsedLoad.DRAG_AREA, UsedLoad.STAND_IN)
                .uses(RoadSetting.WEIGHED, RoadSetting.MASS_STAND_IN);
        figures(builder);
        return builder.handbook(RangeHandbook.PAGE);
    }

    private static VariantKey band() {
        var bands = IntStream.iterate(
                        SpeedBands.LOWEST_KMH,
                        from -> from < SpeedBands.HIGHEST_KMH,
                        from -> from + SpeedBands.WIDTH_KMH)
                .mapToObj(from -> new Choice(
                        from + "-" + (from + SpeedBands.WIDTH_KMH) + "-kmh",
                        String.format(
                                java.util.Locale.ROOT,
                                "at %d to %d km/h (%.0f to %.0f mph)",
                                from,
                                from + SpeedBands.WIDTH_KMH,
                                from / 1.609344,
                                (from + SpeedBands.WIDTH_KMH) / 1.609344)))
                .toList();
        return new VariantKey("band", "speed", bands, "").foundByTheTrial();
    }

    private static void readings(Declaration.Builder builder) {
        builder.reading(ReadingSpec.ofRun("ended", "how it ended", QuantityKind.WORD)
                        .mustBeGiven()
                        .oneOf(Ending.ids())
                        .hint("what was agreed beforehand: assistance ends, or the display says empty"))
                .reading(ReadingSpec.ofRun("distance", "distance", QuantityKind.DISTANCE)
                        .plausible(500, 500_000)
                        .by(Instrument.Kind.WHEEL, 100)
                        .hint("only where there is no recording, or beside it"))
                .reading(ReadingSpec.ofRun("riding-time", "riding time", QuantityKind.TIME)
                        .plausible(60, 86_400)
                        .by(Instrument.Kind.STOPWATCH, 60)
                        .hint("without pauses"))
                .reading(ReadingSpec.ofRun("ascent", "ascent", QuantityKind.LENGTH)
                        .plausible(0, 10_000)
                        .hint("from a map or a barometer, where known better than by the recording"))
                .reading(ReadingSpec.ofRun("stops", "stops", QuantityKind.COUNT)
                        .plausible(0, 2000)
                        .hint("how often the bike stood, where no recording tells"))
                .reading(ReadingSpec.ofRun("laps", "laps", QuantityKind.COUNT)
                        .plausible(1, 500)
                        .hint("whole laps of the loop"))
                .reading(ReadingSpec.ofRun("wall-energy", "energy put back at the wall", QuantityKind.ENERGY)
                        .plausible(3600, 3.6e7)
                        .by(Instrument.Kind.WALL_METER, 36_000)
                        .hint("by the wall meter until the charger says full"))
                .reading(ReadingSpec.ofRun("charger-efficiency", "charger's efficiency", QuantityKind.RATIO)
                        .plausible(0.5, 1)
                        .hint("where it was measured"))
                .reading(ReadingSpec.ofRun("usable-energy", "usable energy, measured earlier", QuantityKind.ENERGY)
                        .plausible(36_000, 3.6e7)
                        .hint("of this battery, from an earlier ride to its end"))
                .reading(ReadingSpec.ofRun("rider-power", "rider's mean power", QuantityKind.POWER)
                        .plausible(0, 500)
                        .hint("by a power meter; without one the correction to reference is wide"))
                .reading(ReadingSpec.ofDay("energy-price", "price of energy", QuantityKind.MONEY_PER_ENERGY)
                        .plausible(0, 5 / 3.6e6)
                        .hint("at the socket, with its money: 0.32 EUR/kWh"))
                .reading(ReadingSpec.ofDay("wind-speed", "wind speed", QuantityKind.SPEED)
                        .plausible(0, 30))
                .reading(ReadingSpec.ofDay("air-temperature", "air temperature", QuantityKind.TEMPERATURE)
                        .plausible(230, 330))
                .reading(ReadingSpec.ofDay("battery-temperature", "battery temperature", QuantityKind.TEMPERATURE)
                        .plausible(230, 340));
    }

    private static void figures(Declaration.Builder builder) {
        var way = new Scatter(0.03, 8, 0.05, 8, true);
        var bound = new Scatter(0, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, true);
        builder.figure(of("distance", "range", QuantityKind.DISTANCE, Better.MORE)
                        .by("level", "levelRole", "at")
                        .speaksForTheTrial()
                        .scatter(way)
                        .called("range", "goes", "on a charge", "on one charge")
                        .meaning("from full until assistance ended or the display said empty")
                        .says(Saying.of("{ride}, on one charge {bike} went {value}", "range {ride}")
                                .meanOf("ride", "rides")
                                .atReference("{ride}, on one charge {bike} would go {value}")))
                .figure(of("at-least", "ridden at least", QuantityKind.DISTANCE, Better.NEITHER)
                        .by("level", "levelRole")
                        .scatter(bound)
                        .called("at least")
                        .meaning("a ride that stopped early: the range is this or more")
                        .says(Saying.of(
                                        "{ride}, on a ride that was stopped early {bike} went {value}",
                                        "distance ridden {ride}")
                                .from("ride", "rides")
                                .atLeast()))
                .figure(of("predicted", "range, predicted", QuantityKind.DISTANCE, Better.NEITHER)
                        .by("level", "levelRole")
                        .scatter(way)
                        .called("predicted range", "would go")
                        .meaning("worked out from the energy of a ride that stopped early; a prediction, not a result")
                        .says(Saying.of(
                                        "{ride}, by the energy of a ride stopped early, {bike} would go {value}",
                                        "predicted range {ride}")
                                .from("ride", "rides")))
                .figure(of("riding-time", "riding time", QuantityKind.TIME, Better.NEITHER)
                        .by("level", "levelRole")
                        .scatter(new Scatter(0.03, 8, 0.06, 8, true))
                        .says(Saying.of(
                                        "{ride}, the riding time of {bike’s} range ride was {value}",
                                        "riding time {ride}")
                                .meanOf("ride", "rides")))
                .figure(of("mean-speed", "mean speed while riding", QuantityKind.SPEED, Better.NEITHER)
                        .by("level", "levelRole")
                        .scatter(new Scatter(0.015, 8, 0.03, 8, true))
                        .says(Saying.of(
                                        "{ride}, pauses left out, the mean speed of {bike’s} range ride was {value}",
                                        "mean speed while riding {ride}")
                                .meanOf("ride", "rides")))
                .figure(of("ascent", "ascent", QuantityKind.LENGTH, Better.NEITHER)
                        .by("level", "levelRole")
                        .says(Saying.of("{ride}, in all {bike’s} range ride climbed {value}", "ascent {ride}")
                                .meanOf("ride", "rides"))
                        .scatter(new Scatter(0.02, 8, 0.02, 8, true)));
        energies(builder);
    }

    private static void energies(Declaration.Builder builder) {
        builder.figure(of("energy", "energy out of the battery", QuantityKind.ENERGY, Better.MORE)
                        .by("level", "levelRole")
                        .scatter(new Scatter(0.01, 8, 0.02, 8, true))
                        .called("usable energy")
                        .says(Saying.of(
                                        "{ride}, until it was empty {bike’s} battery gave {value}",
                                        "usable energy {ride}")
                                .meanOf("ride", "rides")
                                .ends("smallest", "largest")))
                .figure(of("energy-per-distance", "energy per distance", QuantityKind.ENERGY_PER_DISTANCE, Better.LESS)
                        .by("level", "levelRole", "at")
                        .scatter(new Scatter(0.03, 8, 0.05, 8, true))
                        .called("consumption", "uses", "per mile", "per kilometre")
                        .says(Saying.of("{ride}, out of its battery {bike} used {value}", "energy per distance {ride}")
                                .meanOf("ride", "rides")
                                .atReference("{ride}, out of its battery {bike} would use {value}")))
                .figure(of("usable-share", "usable share of the nominal energy", QuantityKind.RATIO, Better.MORE)
                        .by("level", "levelRole")
                        .says(Saying.of(
                                        "{ride}, of the energy on its label {bike’s} battery gave {value}",
                                        "usable share of the nominal energy {ride}")
                                .meanOf("ride", "rides"))
                        .scatter(new Scatter(0.01, 8, 0.02, 8, true)))
                .figure(of(
                                "wall-energy-per-distance",
                                "energy at the wall per distance",
                                QuantityKind.ENERGY_PER_DISTANCE,
                                Better.LESS)
                        .says(Saying.of(
                                        "{ride}, at the wall, with what charging loses, {bike} used {value}",
                                        "energy at the wall per distance {ride}")
                                .meanOf("ride", "rides"))
                        .by("level", "levelRole")
                        .scatter(new Scatter(0.03, 8, 0.05, 8, true)));
        costs(builder);
    }

    private static void costs(Declaration.Builder builder) {
        builder.figure(of("cost-per-distance", "cost per distance", QuantityKind.MONEY_PER_DISTANCE, Better.LESS)
                        .says(Saying.of(
                                        "{ride}, by the price of energy that day, {bike} cost {value}",
                                        "cost per distance {ride}")
                                .meanOf("ride", "rides"))
                        .by("level", "levelRole", "price")
                        .meaning("energy at the wall times its price, in the money of that price; nothing else")
                        .scatter(new Scatter(0.03, 8, 0.05, 8, true)))
                .figure(of(
                                "energy-at-speed",
                                "energy per distance by speed",
                                QuantityKind.ENERGY_PER_DISTANCE,
                                Better.LESS)
                        .by("level", "levelRole", "band")
                        .scatter(new Scatter(0.03, 8, 0.05, 8, true))
                        .meaning("of the pieces of the ride at that speed, hills and wind as they were")
                        .says(Saying.of(
                                        "{ride}, {band}, out of its battery {bike} used {value}",
                                        "energy per distance {band} {ride}")
                                .from("ride", "rides")))
                .figure(of(
                                "gain-at-tenth-slower",
                                "further by riding a tenth slower",
                                QuantityKind.RATIO,
                                Better.NEITHER)
                        .by("level", "levelRole")
                        .scatter(new Scatter(0.02, 8, 0.02, 8, true))
                        .meaning("by the road load, at reference conditions")
                        .says(Saying.of(
                                        "{ride}, ridden a tenth slower {bike} would go further by {value}",
                                        "gain in range by riding a tenth slower {ride}")
                                .from("ride", "rides")));
    }

    private static FigureSpec of(String name, String title, QuantityKind kind, Better better) {
        return FigureSpec.of("range." + name, title, kind, better, Chapter.HOW_FAR);
    }

    static FigureSpec figure(String name) {
        return DECLARATION.requireFigure("range." + name);
    }
}
