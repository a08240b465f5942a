package org.measuredmile.trial.standingstart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.roadload.Thrust;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;
import org.measuredmile.trial.Outcome;

/// Launch force, power limit and reference conditions: days of known truth, and the handbook's example.
class StartThrustTest {
    private static final double BIKE_KG = 28;
    private static final double RIDER_KG = 90;

    private static Figure figure(Outcome outcome, String key) {
        return outcome.figures().stream()
                .filter(figure -> figure.key().text().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static Outcome day(double launchN, double powerW) {
        var day = StartDays.day().rider(RIDER_KG).weighed(BIKE_KG, 0.05);
        var ride = StartDays.ride();
        String[] ids = {"s-1", "s-2", "s-3", "s-4", "s-5", "s-6"};
        for (int i = 0; i < ids.length; i++) {
            day.run(ids[i], i % 2 == 0 ? "out" : "back");
            ride.stand(3).thrust(launchN, powerW, RIDER_KG + BIKE_KG, 12).brake(0);
        }
        return day.recording(ride.stand(2).seen("starts.csv", 10, 3), ids).reduce();
    }

    @Test
    void forceAndPowerOfADayAreFoundWithinTheirIntervals() {
        double[][] truths = {{200, 700}, {160, 900}, {260, 800}};
        for (double[] truth : truths) {
            var outcome = day(truth[0], truth[1]);
            var launch = figure(outcome, "standingstart.launch-force drive=throttle");
            var power = figure(outcome, "standingstart.power-limit drive=throttle");
            assertThat(launch.thisDay().interval95().contains(truth[0])).isTrue();
            assertThat(power.thisDay().interval95().contains(truth[1])).isTrue();
            assertThat(launch.thisDay().standard() / launch.value()).isBetween(0.01, 0.06);
            assertThat(power.thisDay().standard() / power.value()).isBetween(0.01, 0.07);
        }
    }

    @Test
    void forceAndPowerLeanOnEachOtherThroughMassAndScatter() {
        var outcome = day(200, 700);
        var drive = Variant.of("drive", "throttle");
        var launch = new FigureKey("standingstart.launch-force", drive);
        var power = new FigureKey("standingstart.power-limit", drive);
        assertThat(outcome.correlations()).singleElement().satisfies(one -> {
            assertThat(one.isBetween(launch, power)).isTrue();
            assertThat(one.coefficient()).isBetween(0.2, 0.99);
        });
    }

    /// A bike of 28 ± 4 kg under a rider of 90 kg: the fit made anew with more mass tells a force that is larger by
    /// nearly as much, 4/121 with the wheels' turning.
    @Test
    void anUnweighedBikeMovesTheForceByItsShareOfTheMass() {
        var day = StartDays.day().rider(RIDER_KG);
        var ride = StartDays.ride();
        for (String direction : new String[] {"out", "back"}) {
            day.run("s-" + direction, direction);
            ride.stand(3).thrust(200, 700, RIDER_KG + BIKE_KG, 12).brake(0);
        }
        var outcome = day.recording(ride.stand(2).seen("starts.csv", 10, 3), "s-out", "s-back")
                .reduce();
        for (String name : new String[] {"launch-force", "power-limit"}) {
            var figure = figure(outcome, "standingstart." + name + " drive=throttle");
            double byMass = figure.budget().stream()
                    .filter(one -> one.input().equals("mass of bike and rider"))
                    .findFirst()
                    .orElseThrow()
                    .standardUncertainty();
            assertThat(byMass / figure.value()).isBetween(0.02, 4 / 115.0);
        }
    }

    /// A rider of 80 kg in place of 90 on a bike of 28 kg with 3 kg of turning mass.
    @Test
    void aLighterReferenceRiderMakesTimesAndDistancesShorter() {
        var outcome = day(200, 700);
        var ridden = figure(outcome, "standingstart.ramp-time-to drive=throttle to=15-mph");
        var reference = figure(outcome, "standingstart.ramp-time-to at=reference drive=throttle to=15-mph");
        assertThat(reference.value() / ridden.value()).isCloseTo(111.0 / 121.0, within(0.015));
        assertThat(reference.runs()).hasSameSizeAs(ridden.runs());
        assertThat(reference.budget()).anyMatch(one -> one.input().equals("correction to reference conditions"));
        assertThat(reference.anyDay().standard())
                .isGreaterThan(ridden.anyDay().standard() * reference.value() / ridden.value());
        assertThat(figure(outcome, "standingstart.distance-to at=reference drive=throttle to=15-mph")
                        .value())
                .isLessThan(figure(outcome, "standingstart.distance-to drive=throttle to=15-mph")
                        .value());
    }

    @Test
    void aWatchAloneIsBroughtToReferenceTooAndSaysWhatItAssumes() {
        var outcome = StartDays.day()
                .rider(100)
                .weighed(BIKE_KG, 0.05)
                .run("s-1", "out")
                .reading("s-1", "time-to-15-mph", "4.62 s")
                .run("s-2", "back")
                .reading("s-2", "time-to-15-mph", "4.78 s")
                .reduce();
        var reference = figure(outcome, "standingstart.time-to at=reference drive=throttle to=15-mph");
        assertThat(reference.value()).isBetween(3.8, 4.3);
        assertThat(reference.assumed()).anyMatch(one -> one.contains("power limit sets in"));
        assertThat(outcome.figures()).noneMatch(one -> one.key().figure().equals("standingstart.launch-force"));
    }

    @Test
    void withoutTheRidersMassThereIsNeitherForceNorReference() {
        var outcome = StartDays.day()
                .run("s-1", "out")
                .reading("s-1", "time-to-15-mph", "4.62 s")
                .reduce();
        assertThat(outcome.figures())
                .noneMatch(one -> one.key().variant().get("at").isPresent());
    }

    /// The handbook's example, in closed form: t = m·v₁/F + m·(v² − v₁²)/(2P) and s = m·v₁²/(2F) + m·(v³ −
    /// v₁³)/(3P), v₁ = P/F.
    @Test
    void theModelAgreesWithTheClosedFormOfTheHandbook() {
        var free = new RoadLoad(0, 0);
        var thrust = Thrust.ofPower(200, 800);
        var heavy = new StartModel(thrust, free, new Setting(110, 0, 1.2, 9.80665));
        var light = new StartModel(thrust, free, new Setting(100, 0, 1.2, 9.80665));
        assertThat(heavy.timeS(8)).isCloseTo(5.5, within(1e-3));
        assertThat(heavy.distanceM(8)).isCloseTo(24.933, within(5e-3));
        assertThat(light.timeS(8)).isCloseTo(5.0, within(1e-3));
        assertThat(light.distanceM(8)).isCloseTo(22.667, within(5e-3));
        var weak = new StartModel(Thrust.ofPower(5, 800), new RoadLoad(0.01, 0.6), new Setting(110, 3, 1.2, 9.80665));
        assertThat(weak.timeS(8)).isInfinite();
    }
}
