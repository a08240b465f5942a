package org.measuredmile.trial.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.day.Course.Surveyed;
import org.measuredmile.roadload.KnownLoad;
import org.measuredmile.roadload.RoadLoad;
import org.measuredmile.roadload.Setting;
import org.measuredmile.trial.RoadSetting;

/// Each contribution to a climb's power is the power's own change by a small step of that input (JCGM 100:2008, 5.1.3,
/// note 2), for climbs of any kind.
class ClimbPowerPropertyTest {
    private static final double GRAVITY = 9.80665;
    private static final double STEP = 1e-5;

    /// A climb and what is known of it.
    private record Drawn(
            double kg,
            double turningKg,
            double air,
            double rolling,
            double area,
            double head,
            double length,
            double rise,
            double time,
            double entry,
            double exit) {
        static Drawn of(RandomGenerator random) {
            double length = 100 + 500 * random.nextDouble();
            return new Drawn(
                    80 + 80 * random.nextDouble(),
                    1 + 3 * random.nextDouble(),
                    0.95 + 0.35 * random.nextDouble(),
                    0.004 + 0.012 * random.nextDouble(),
                    0.4 + 0.4 * random.nextDouble(),
                    -1 + 4 * random.nextDouble(),
                    length,
                    length * (0.02 + 0.1 * random.nextDouble()),
                    length / (2 + 6 * random.nextDouble()),
                    1 + 6 * random.nextDouble(),
                    1 + 6 * random.nextDouble());
        }

        ClimbPower power() {
            var setting = new Setting(kg, turningKg, air, GRAVITY);
            var load = new KnownLoad(new RoadLoad(rolling, area), 0.002, 0.05, -0.4, 7, false, "as in the example");
            var road = new RoadSetting(setting, 0.6, 0.8, 0.9, 0.02, List.of(), List.of());
            return new ClimbPower(
                    road,
                    load,
                    new HillWind(head, 0.5, ""),
                    new Surveyed(length, 0.4),
                    new Surveyed(rise, 0.1),
                    time,
                    entry,
                    exit);
        }

        Drawn with(String input, double by) {
            return new Drawn(
                    kg + (input.equals("kg") ? by : 0),
                    turningKg + (input.equals("turning") ? by : 0),
                    air + (input.equals("air") ? by : 0),
                    rolling + (input.equals("rolling") ? by : 0),
                    area + (input.equals("area") ? by : 0),
                    head + (input.equals("head") ? by : 0),
                    length + (input.equals("length") ? by : 0),
                    rise + (input.equals("rise") ? by : 0),
                    time + (input.equals("time") ? by : 0),
                    entry + (input.equals("entry") ? by : 0),
                    exit + (input.equals("exit") ? by : 0));
        }

        /// What a unit more of an input does to the power, by the middle of two small steps.
        double slope(String input) {
            return (with(input, STEP).power().watts()
                            - with(input, -STEP).power().watts())
                    / (2 * STEP);
        }
    }

    static Stream<Drawn> climbs() {
        var seed = new Seed(20_310_611).child("climbs");
        return IntStream.range(0, 40).mapToObj(i -> Drawn.of(seed.stream(i)));
    }

    @ParameterizedTest
    @MethodSource("climbs")
    void everyContributionIsThePowersOwnChange(Drawn climb) {
        var power = climb.power();
        var exactly = withinPercentage(0.01);

        assertThat(power.byMass().standardUncertainty())
                .isCloseTo(Math.abs(climb.slope("kg")) * power.road().massSdKg(), exactly);
        assertThat(power.byWheels().standardUncertainty()).isCloseTo(Math.abs(climb.slope("turning")) * 0.9, exactly);
        assertThat(power.byRise().standardUncertainty()).isCloseTo(climb.slope("rise") * 0.1, exactly);
        assertThat(power.byLength().standardUncertainty()).isCloseTo(Math.abs(climb.slope("length")) * 0.4, exactly);
        assertThat(power.byAir().standardUncertainty()).isCloseTo(Math.abs(climb.slope("air")) * 0.02, exactly);
        assertThat(power.byWind().standardUncertainty()).isCloseTo(Math.abs(climb.slope("head")) * 0.5, exactly);
        assertThat(power.perEntry()).isCloseTo(climb.slope("entry"), exactly);
        assertThat(power.perExit()).isCloseTo(climb.slope("exit"), exactly);
        assertThat(power.perSecond()).isCloseTo(climb.slope("time"), exactly);
    }

    @ParameterizedTest
    @MethodSource("climbs")
    void theRoadLoadsTwoNumbersLeanOnEachOther(Drawn climb) {
        double byRolling = climb.slope("rolling") * 0.002;
        double byArea = climb.slope("area") * 0.05;

        assertThat(climb.power().byRoadLoad().standardUncertainty())
                .isCloseTo(
                        Math.sqrt(byRolling * byRolling + byArea * byArea - 2 * 0.4 * byRolling * byArea),
                        withinPercentage(0.01));
        assertThat(climb.power().byRoadLoad().degreesOfFreedom()).isEqualTo(7);
    }
}
