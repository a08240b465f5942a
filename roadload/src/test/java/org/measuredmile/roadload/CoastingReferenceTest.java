package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.roadload.Coasting.Along;

class CoastingReferenceTest {
    private static final Setting LIGHT = new Setting(105, 1.5, 1.2, 9.80665);

    /// 40 CFR 86.529-98: coast-down times from 70 to 60 km/h that the table prints as 2.95, 3.99, 4.85 and 6.18
    /// s, from its own forces A + C·V² in N and N/(km/h)².
    @ParameterizedTest
    @CsvSource({
        "100, 0.0, 0.0224, 2.9526",
        "150, 4.32, 0.0238, 3.9944",
        "200, 8.69, 0.0252, 4.8480",
        "300, 17.43, 0.0279, 6.1852"
    })
    void coastDownTimesOfTheFederalRegulation(double mass, double a, double c, double expected) {
        var setting = new Setting(mass, 0, 2, 1);
        var load = new RoadLoad(Math.max(a, 1e-9) / mass, c * 3.6 * 3.6);
        assertThat(Coasting.timeS(load, setting, 70 / 3.6, 60 / 3.6)).isCloseTo(expected, within(5e-4));
    }

    /// 40 CFR 86.529-98: road load of 104.9 N at 65 km/h for 150 kg.
    @Test
    void roadLoadOfTheFederalRegulation() {
        var load = new RoadLoad(4.32 / 150, 0.0238 * 3.6 * 3.6);
        assertThat(load.forceN(new Setting(150, 0, 2, 1), 65 / 3.6)).isCloseTo(104.875, within(1e-3));
    }

    /// Closed form, computed apart from this code.
    @Test
    void timeAndWayOfASlowBike() {
        var setting = new Setting(110, 1.44746, 1.225, 9.80665);
        var load = new RoadLoad(0.0080, 0.60);
        assertThat(Coasting.timeS(load, setting, 32 / 3.6, 16 / 3.6)).isCloseTo(20.618, within(1e-3));
        assertThat(Coasting.distanceM(load, setting, 32 / 3.6, 16 / 3.6)).isCloseTo(130.878, within(1e-3));
        assertThat(Coasting.timeS(load, setting, 32 / 3.6, 0)).isCloseTo(67.066, within(1e-3));
        assertThat(Coasting.distanceM(load, setting, 32 / 3.6, 0)).isCloseTo(223.434, within(1e-3));
    }

    /// The closed form v(t) = √(a/b)·tan(atan(u₀√(b/a)) − √(ab)·t) − w at 1, 5, 10, 20 and 30 s, computed apart
    /// from this code: still air; out against 0.8 m/s up 0.2 %; the way back.
    @ParameterizedTest
    @CsvSource({
        "0, 0, 10.562596, 9.064583, 7.606669, 5.516276, 4.040375",
        "0.002, 0.8, 10.490447, 8.762753, 7.104142, 4.753598, 3.099203",
        "-0.002, -0.8, 10.631244, 9.355474, 8.096397, 6.268886, 4.973731"
    })
    void integrationGivesTheClosedForm(
            double grade, double wind, double at1, double at5, double at10, double at20, double at30) {
        double[] times = {0, 1, 5, 10, 20, 30};
        double[] speeds = Coasting.speedsMps(new RoadLoad(0.008, 0.55), LIGHT, new Along(grade, wind), 11, times, 0.1);
        // The closed form takes the slope as small: sin θ = tan θ.
        assertThat(speeds).containsExactly(new double[] {11, at1, at5, at10, at20, at30}, within(5e-6));
    }

    /// Worked example of the equation of motion with Runge-Kutta steps of half a second, computed apart from
    /// this code.
    @Test
    void halfSecondStepsAreFineEnough() {
        var setting = new Setting(105, 1.575, 1.19, 9.80665);
        double[] speeds = Coasting.speedsMps(
                new RoadLoad(0.008, 0.6), setting, Along.LEVEL_AND_CALM, 9.72, new double[] {0, 10, 20, 30, 40}, 0.5);
        assertThat(speeds).containsExactly(new double[] {9.72, 6.72996, 4.84786, 3.49558, 2.42900}, within(1e-5));
        assertThat(Coasting.timeS(new RoadLoad(0.008, 0.6), setting, 9.72, speeds[4]))
                .isCloseTo(40, within(1e-5));
    }

    private static List<CoastDown.Run> sixRuns() throws IOException {
        var runs = new ArrayList<CoastDown.Run>();
        try (InputStream file =
                Objects.requireNonNull(CoastingReferenceTest.class.getResourceAsStream("/coastdown/six-runs.csv"))) {
            var lines = new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .toList();
            for (int run = 1; run <= 6; run++) {
                String prefix = run + ",";
                var cells = lines.stream()
                        .filter(line -> line.startsWith(prefix))
                        .map(line -> line.split(",", -1))
                        .toList();
                runs.add(new CoastDown.Run(
                        cells.getFirst()[1].equals("1"),
                        cells.stream()
                                .mapToDouble(cell -> Double.parseDouble(cell[2]))
                                .toArray(),
                        cells.stream()
                                .mapToDouble(cell -> Double.parseDouble(cell[3]))
                                .toArray()));
            }
        }
        return runs;
    }

    private static CoastDown.Found settled(CoastDown.Outcome outcome) {
        assertThat(outcome).isInstanceOf(CoastDown.Outcome.Settled.class);
        return ((CoastDown.Outcome.Settled) outcome).found();
    }

    /// Six generated runs of known truth (see ORIGIN.md): estimates and correlations of an independent
    /// least-squares library's fit to them, with ten free parameters.
    @Test
    void sixRunsGiveTheParametersOfAnIndependentFit() throws IOException {
        var runs = sixRuns();
        var found = settled(CoastDown.fit(runs, LIGHT, CoastDown.Before.NOTHING, 0.0476465));
        assertThat(runs.stream().mapToInt(run -> run.timesS().length).sum()).isEqualTo(993);
        assertThat(found.load().rollingCoefficient()).isCloseTo(0.0079414967, within(3e-7));
        assertThat(found.load().dragAreaM2()).isCloseTo(0.55128140, within(2e-5));
        assertThat(found.grade()).isCloseTo(0.0017937698, within(2e-7));
        assertThat(found.headWindMps()).isCloseTo(0.85405977, within(2e-4));
        assertThat(Math.sqrt(found.covariance()[0][0])).isCloseTo(5.99921e-5, within(1e-7));
        assertThat(Math.sqrt(found.covariance()[1][1])).isCloseTo(2.23365e-3, within(5e-6));
        assertThat(found.correlationOfLoad()).isCloseTo(-0.93733, within(1e-3));
        assertThat(found.reducedChiSquare()).isCloseTo(1, within(0.01));
    }

    /// The same file: force at 25 km/h on the level, and its uncertainty with and without the covariance.
    @Test
    void forceIsKnownBetterThanEitherParameter() throws IOException {
        var found = settled(CoastDown.fit(sixRuns(), LIGHT, CoastDown.Before.NOTHING, 0.0476465));
        double rollingSd = Math.sqrt(found.covariance()[0][0]);
        double areaSd = Math.sqrt(found.covariance()[1][1]);
        var known = new KnownLoad(
                found.load(), rollingSd, areaSd, found.correlationOfLoad(), Double.POSITIVE_INFINITY, false, "");
        assertThat(known.mean().forceN(LIGHT, 25 / 3.6)).isCloseTo(24.12877, within(2e-4));
        assertThat(known.forceSdN(LIGHT, 25 / 3.6)).isCloseTo(0.022551, within(2e-4));
        var apart = new KnownLoad(found.load(), rollingSd, areaSd, 0, Double.POSITIVE_INFINITY, false, "");
        assertThat(apart.forceSdN(LIGHT, 25 / 3.6)).isCloseTo(0.089405, within(2e-4));
    }

    /// The same file, one direction only without slope and wind: a fit that looks perfect and is 45 % wrong;
    /// and both directions without them: a residual ten times the noise.
    @Test
    void slopeAndWindMustBeFreeAndBothWaysRidden() throws IOException {
        var fixed = new CoastDown.Before(0.009, Double.POSITIVE_INFINITY, 0.6, Double.POSITIVE_INFINITY, 1e-9, 0, 1e-9);
        var out = sixRuns().stream().filter(CoastDown.Run::out).toList();
        var oneWay = settled(CoastDown.fit(out, LIGHT, fixed, 0.05));
        assertThat(oneWay.load().rollingCoefficient()).isCloseTo(0.0116005, within(2e-6));
        assertThat(oneWay.load().dragAreaM2()).isCloseTo(0.624523, within(2e-4));
        assertThat(oneWay.reducedChiSquare()).isLessThan(1);
        var bothWays = settled(CoastDown.fit(sixRuns(), LIGHT, fixed, 0.05));
        assertThat(Math.sqrt(bothWays.reducedChiSquare()) * 0.05).isCloseTo(0.47093, within(2e-3));
    }

    /// Worked example of a pair, speeds every five seconds; computed apart from this code.
    @Test
    void aPairOutAndBackIsSolved() {
        var setting = new Setting(105, 1.575, 1.19, 9.80665);
        double[] times = {0, 5, 10, 15, 20, 25, 30, 35, 40};
        var runs = List.of(
                new CoastDown.Run(
                        true, times, new double[] {9.72, 7.77, 6.311, 5.163, 4.225, 3.432, 2.744, 2.134, 1.581}),
                new CoastDown.Run(
                        false, times, new double[] {9.70, 8.249, 7.12, 6.208, 5.447, 4.797, 4.228, 3.721, 3.262}));
        var found = settled(CoastDown.fit(runs, setting, CoastDown.Before.NOTHING, 0.05));
        assertThat(found.load().rollingCoefficient()).isCloseTo(0.00800, within(4e-6));
        assertThat(found.load().dragAreaM2()).isCloseTo(0.6001, within(3e-4));
        assertThat(found.grade()).isCloseTo(0.00100, within(5e-6));
        assertThat(found.headWindMps()).isCloseTo(0.8007, within(3e-3));
        assertThat(found.correlationOfLoad()).isCloseTo(-0.934, within(2e-3));
        assertThat(Math.sqrt(found.covariance()[0][0])).isCloseTo(0.00027, within(1e-5));
    }
}
