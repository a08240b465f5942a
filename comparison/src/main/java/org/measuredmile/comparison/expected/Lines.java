package org.measuredmile.comparison.expected;

import java.util.List;
import java.util.Optional;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.comparison.expected.Coordinate.Known;
import org.measuredmile.comparison.expected.ExpectedLine.Bend;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.FigureSpec;
import org.measuredmile.trial.Trials;

/// The expected-value lines there are; another is another line here.
public final class Lines {
    /// The reference rider, with gear, as for every figure at reference conditions.
    private static final double RIDER_KG = 80;

    private static final Variant REFERENCE = Variant.of("at", "reference");
    private static final Variant HIGHEST = Variant.of("levelRole", "highest");

    private static final Coordinate ENERGY = claimed("battery-energy", "claimed battery energy", QuantityKind.ENERGY);
    private static final Coordinate MASS = new Coordinate(
            "mass with its battery", QuantityKind.MASS, "it was not weighed with its battery", bike -> mass(bike));

    public static final List<ExpectedLine> ALL = List.of(
            line(
                            "range-throttle",
                            "Range by throttle for its battery",
                            "range.distance",
                            REFERENCE.with("levelRole", "throttle"))
                    .against(ENERGY, Bend.STRAIGHT, "a battery twice as large should go about twice as far"),
            line("range", "Range at the highest level for its battery", "range.distance", HIGHEST)
                    .against(ENERGY, Bend.STRAIGHT, "a battery twice as large should go about twice as far"),
            line("climb-throttle", "Climb by throttle for its power", "climb.time", REFERENCE.with("drive", "throttle"))
                    .against(
                            measuredPower("throttle"),
                            Bend.INVERSE,
                            "on a hill the time goes with the mass to be lifted over the power there is"),
            line("climb-pedal", "Climb pedalling for its power", "climb.time", REFERENCE.with("drive", "pedal"))
                    .against(
                            measuredPower("pedal"),
                            Bend.INVERSE,
                            "on a hill the time goes with the mass to be lifted over the power there is"),
            line(
                            "climb-claimed",
                            "Climb by throttle for its claimed power",
                            "climb.time",
                            REFERENCE.with("drive", "throttle"))
                    .against(
                            claimedPower(), Bend.INVERSE, "what the maker prints of the motor should show on the hill"),
            line("weight", "Weight for its battery", "weighin.mass", Variant.of("battery", "in"))
                    .against(ENERGY, Bend.STRAIGHT, "a larger battery weighs more, and so does the bike built for it"),
            line(
                            "stopping",
                            "Stopping distance for its mass",
                            "braking.stopping-distance",
                            Variant.of("surface", "dry").with("method", "tape"))
                    .against(
                            MASS, Bend.STRAIGHT, "tyres hold in proportion to the mass, so no line is to be expected"));

    private Lines() {}

    public static Optional<ExpectedLine> of(String id) {
        return ALL.stream().filter(line -> line.id().equals(id)).findFirst();
    }

    private record Begun(String id, String title, FigureSpec figure, Variant variant) {
        ExpectedLine against(Coordinate across, Bend bend, String why) {
            return new ExpectedLine(id, title, across, bend, figure, variant, why);
        }
    }

    private static Begun line(String id, String title, String figure, Variant variant) {
        var trial = Trials.delivering(figure).orElseThrow();
        return new Begun(id, title, trial.declaration().requireFigure(figure), variant);
    }

    private static Coordinate claimed(String item, String words, QuantityKind kind) {
        return new Coordinate(words, kind, "no " + words, bike -> claim(bike, item, kind));
    }

    private static Optional<Known> claim(TestedBike bike, String item, QuantityKind kind) {
        var claimed = bike.bike().claimed(item, kind);
        return claimed.isPresent() ? Optional.of(new Known(claimed.getAsDouble(), 0, "claimed")) : Optional.empty();
    }

    private static Optional<Known> mass(TestedBike bike) {
        return bike.latest(new FigureKey("weighin.mass", Variant.of("battery", "in")))
                .map(result -> new Known(
                        result.figure().value(), result.figure().anyDay().standard(), "weighed"));
    }

    private static Coordinate measuredPower(String drive) {
        String words = "peak wheel power over mass with the reference rider";
        return new Coordinate(
                words,
                QuantityKind.POWER_PER_MASS,
                "no peak power from a standing start, or not weighed",
                bike -> bike.latest(new FigureKey("standingstart.peak-power", Variant.of("drive", drive)))
                        .map(result -> new Known(
                                result.figure().value(),
                                result.figure().anyDay().standard(),
                                "measured"))
                        .flatMap(power -> mass(bike).map(mass -> perMass(power, mass))));
    }

    private static Coordinate claimedPower() {
        return new Coordinate(
                "claimed motor power over mass with the reference rider",
                QuantityKind.POWER_PER_MASS,
                "no claimed motor power, or not weighed",
                bike -> claim(bike, "motor-power", QuantityKind.POWER)
                        .flatMap(power -> mass(bike).map(mass -> perMass(power, mass))));
    }

    private static Known perMass(Known power, Known bike) {
        double massKg = bike.value() + RIDER_KG;
        double value = power.value() / massKg;
        double relative = StrictMath.hypot(power.standard() / power.value(), bike.standard() / massKg);
        return new Known(value, value * relative, power.from());
    }
}
