package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/// The simulated ride keeps energy, converges with its step, and agrees with an ODE library (Hipparchus's
/// Dormand-Prince 8(5,3) integrator).
class RidePropertyTest {
    static IntStream seeds() {
        return IntStream.range(0, 40);
    }

    private record Case(Profile profile, Ride.Plan plan) {}

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static Case any(int seed) {
        var random = new Random(seed);
        int cells = 3 + random.nextInt(10);
        double[] distances = new double[cells + 1];
        double[] heights = new double[cells + 1];
        for (int i = 1; i <= cells; i++) {
            distances[i] = distances[i - 1] + between(random, 5, 60);
            heights[i] = heights[i - 1] + between(random, -0.05, 0.06) * (distances[i] - distances[i - 1]);
        }
        var setting = new Setting(between(random, 85, 140), between(random, 1, 4), between(random, 1.0, 1.3), 9.80665);
        var load = new RoadLoad(between(random, 0.005, 0.015), between(random, 0.4, 0.8));
        var thrust = new Thrust(
                between(random, 140, 260), between(random, 350, 900), between(random, 7, 12), between(random, 0.5, 2));
        double wind = between(random, -2, 2);
        return new Case(
                new Profile(distances, heights),
                new Ride.Plan(load, setting, thrust::forceN, wind, between(random, 2, 8)));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void workOfTheDriveIsHeightSpeedRollingAndAir(int seed) {
        var one = any(seed);
        var ride = Ride.along(one.profile(), one.plan(), 0.05);
        assertThat(ride.finished()).isTrue();
        var setting = one.plan().setting();
        double last = ride.speedsMps()[ride.speedsMps().length - 1];
        double kinetic = setting.effectiveKg()
                * (last * last - one.plan().startMps() * one.plan().startMps())
                / 2;
        double potential =
                setting.massKg() * setting.gravityMps2() * one.profile().riseM();
        double spent = 0;
        int at = 0;
        for (int cell = 0; cell < one.profile().cells(); cell++) {
            int steps = (int) Math.ceil(one.profile().cellM(cell) / 0.05 - 1e-9);
            double step = one.profile().cellM(cell) / steps;
            for (int k = 0; k < steps; k++, at++) {
                double v = (ride.speedsMps()[at] + ride.speedsMps()[at + 1]) / 2;
                spent += step
                        * (one.plan().load().rollingN(setting, one.profile().grade(cell))
                                + one.plan().load().dragN(setting, v, one.plan().headWindMps()));
            }
        }
        assertThat(ride.workJ()).isCloseTo(kinetic + potential + spent, within(1e-4 * Math.abs(ride.workJ()) + 0.05));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void halvingTheStepChangesNothingThatMatters(int seed) {
        var one = any(seed);
        double coarse = Ride.along(one.profile(), one.plan(), 1).timeS();
        double fine = Ride.along(one.profile(), one.plan(), 0.5).timeS();
        double finest = Ride.along(one.profile(), one.plan(), 0.02).timeS();
        // Where thrust has corners the order of the rule is lost, and less than a millisecond in ten seconds.
        assertThat(coarse).isCloseTo(finest, within(1e-4 * finest));
        assertThat(fine).isCloseTo(finest, within(5e-5 * finest));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void speedsAgreeWithAnOdeLibrary(int seed) {
        var one = any(seed);
        var ride = Ride.along(one.profile(), one.plan());
        double[] state = {0, one.plan().startMps()};
        double grade = one.profile().grade(0);
        double end = Math.min(one.profile().cellM(0), ride.distanceM());
        // Time to the end of the first cell by the ride, then the library's way and speed at that time.
        int steps = (int) Math.ceil(one.profile().cellM(0) - 1e-9);
        double timeS = Ride.along(
                        Profile.even(one.profile().cellM(0), one.profile().cellM(0) * sine(grade)), one.plan())
                .timeS();
        var library = new DormandPrince853Integrator(1e-6, 1, 1e-10, 1e-10);
        var reached = library.integrate(motion(one.plan(), grade), new ODEState(0, state), timeS);
        assertThat(reached.getPrimaryState()[0]).isCloseTo(end, within(5e-3));
        assertThat(reached.getPrimaryState()[1]).isCloseTo(ride.speedsMps()[steps], within(2e-3));
    }

    private static double sine(double grade) {
        return grade / Math.sqrt(1 + grade * grade);
    }

    private static OrdinaryDifferentialEquation motion(Ride.Plan plan, double grade) {
        return new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double net =
                        plan.drive().forceN(y[1]) - plan.load().forceN(plan.setting(), y[1], grade, plan.headWindMps());
                return new double[] {y[1], net / plan.setting().effectiveKg()};
            }
        };
    }

    @Test
    void startsFromRestAndReachesTheSpeedThatTheThrustHolds() {
        var setting = new Setting(105, 1.5, 1.2, 9.80665);
        var load = new RoadLoad(0.009, 0.6);
        var thrust = new Thrust(200, 500, 9, 1);
        var ride = Ride.along(Profile.even(2000, 0), new Ride.Plan(load, setting, thrust::forceN, 0, 0));
        double held = Balance.speedMps(load, setting, thrust::forceN, 0, 0).orElseThrow();
        double last = ride.speedsMps()[ride.speedsMps().length - 1];
        assertThat(last).isCloseTo(held, within(1e-3));
        assertThat(Arrays.stream(ride.speedsMps()).max().orElseThrow()).isLessThanOrEqualTo(held + 1e-6);
    }

    @Test
    void stallsWhereTheThrustCannotCarryOn() {
        var setting = new Setting(125, 1.5, 1.2, 9.80665);
        var load = new RoadLoad(0.009, 0.6);
        var thrust = new Thrust(60, 500, 9, 1);
        var ride = Ride.along(Profile.even(300, 18), new Ride.Plan(load, setting, thrust::forceN, 0, 4));
        assertThat(ride.finished()).isFalse();
        // Kinetic energy over the force that is missing, up to the speed at which a bike is pushed.
        assertThat(ride.distanceM()).isBetween(20.0, 60.0);
    }

    /// Constant power of 5 m/s at 105 kg on 6 % (C_rr 0.009): 399.233 W; worked example computed apart from
    /// this code.
    @Test
    void constantPowerOnAHillAtOtherMasses() {
        var load = new RoadLoad(0.009, 0.6);
        var setting = new Setting(105, 1.575, 1.19, 9.80665);
        double power = 5 * load.forceN(setting, 5, slope(0.06), 0);
        assertThat(power).isCloseTo(399.233, within(0.7));
        Ride.Drive drive = v -> power / v;
        assertThat(Balance.speedMps(load, setting.withMass(85), drive, slope(0.06), 0)
                        .orElseThrow())
                .isCloseTo(5.76336, within(2e-3));
        assertThat(Balance.speedMps(load, setting.withMass(125), drive, slope(0.06), 0)
                        .orElseThrow())
                .isCloseTo(4.37457, within(2e-3));
    }

    /// The example takes 6 % as the sine of the slope.
    private static double slope(double sine) {
        return sine / Math.sqrt(1 - sine * sine);
    }

    @Test
    void steepestStartBalancesForceAndSlope() {
        var load = new RoadLoad(0.009, 0.6);
        var setting = new Setting(105, 1.575, 1.19, 9.80665);
        double grade = Balance.steepestStart(load, setting, 200);
        assertThat(load.forceN(setting, 0, grade, 0)).isCloseTo(200, within(1e-9));
    }
}
