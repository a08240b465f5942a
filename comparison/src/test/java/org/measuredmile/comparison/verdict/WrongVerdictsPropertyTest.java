package org.measuredmile.comparison.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.comparison.TestFigures.described;
import static org.measuredmile.comparison.TestFigures.figure;
import static org.measuredmile.comparison.TestFigures.line;
import static org.measuredmile.comparison.TestFigures.tested;

import java.util.Locale;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.budget.Contribution;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.roadload.Air;
import org.measuredmile.trial.Figure;

/// How often a claim close to the truth is called wrongly: at most one in forty, either way.
class WrongVerdictsPropertyTest {
    private static final int CLAIMS = 500;
    /// A share of 1/40 among so many, and three standard deviations of it (binomial).
    private static final double MOST = 0.025 + 3 * Math.sqrt(0.025 * 0.975 / CLAIMS);

    /// What was called, of claims that are all true or all false.
    private record Called(int meets, int fallsShort) {
        double shareOf(int number) {
            return (double) number / CLAIMS;
        }
    }

    private static Called call(java.util.function.Supplier<Verdict> claim) {
        int meets = 0;
        int fallsShort = 0;
        for (int i = 0; i < CLAIMS; i++) {
            var verdict = claim.get();
            meets += verdict == Verdict.MEETS ? 1 : 0;
            fallsShort += verdict == Verdict.FALLS_SHORT ? 1 : 0;
        }
        return new Called(meets, fallsShort);
    }

    private static Verdict verdict(SpecLine line, Figure... figures) {
        return Claims.of(tested(described("Lantern", 1890, line), figures), Map.of())
                .getFirst()
                .verdict();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aMassIsCalledWronglyAtMostOnceInForty(long seed) {
        var random = new Seed(seed).stream(0);

        // The claim is 1 g on the wrong side of the truth, and 1 g on the right side of it.
        var whereFalse = call(() -> weighed(random, -0.001));
        var whereTrue = call(() -> weighed(random, 0.001));
        assertThat(whereFalse.shareOf(whereFalse.meets())).isLessThanOrEqualTo(MOST);
        assertThat(whereTrue.shareOf(whereTrue.fallsShort())).isLessThanOrEqualTo(MOST);
        // A rule that never called anything would pass the above.
        var farOff = call(() -> weighed(random, -1));
        assertThat(farOff.shareOf(farOff.fallsShort())).isGreaterThan(0.95);
    }

    /// Four weighings that scatter by 50 g, their scatter estimated from them, on a scale and a day that are 60
    /// g off.
    private static Verdict weighed(RandomGenerator random, double claimedOverTruthKg) {
        double truth = 20 + 10 * random.nextDouble();
        double common = Draw.normal(random, 0, 0.06);
        double mean = Draw.normal(random, truth + common, 0.05 / 2);
        double scatter = 0.05 * Math.sqrt(Draw.chiSquared(random, 3) / 3);
        var figure = figure(
                "weighin.mass",
                "battery=in",
                mean,
                Contribution.typeA("scatter of 4 runs", scatter / 2, 3),
                Contribution.typeB("scale and day", 0.06));
        return verdict(line("mass", String.format(Locale.ROOT, "%.3f", truth + claimedOverTruthKg), "kg"), figure);
    }

    @ParameterizedTest
    @ValueSource(longs = {4})
    void aRangeAtTheClaimsConditionsIsCalledWronglyAtMostOnceInForty(long seed) {
        var random = new Seed(seed).stream(0);

        var whereFalse = call(() -> ridden(random, 1.0001));
        var whereTrue = call(() -> ridden(random, 0.9999));
        assertThat(whereFalse.shareOf(whereFalse.meets())).isLessThanOrEqualTo(MOST);
        assertThat(whereTrue.shareOf(whereTrue.fallsShort())).isLessThanOrEqualTo(MOST);
    }

    /// A bike of known truth, its figures in error by what they say they are, and a claim for a rider of 60 kg
    /// in the cold at a speed of its own.
    private static Verdict ridden(RandomGenerator random, double claimedOverTruth) {
        double rolling = 0.006 + 0.004 * random.nextDouble();
        double area = 0.5 + 0.2 * random.nextDouble();
        double reference = joulesPerMetre(rolling, area, 80, 293.15, 7);
        double claimed = joulesPerMetre(rolling, area, 60, 278.15, 6);
        double efficiency = 1 + 0.06 * Math.abs(Math.log(reference / claimed)) * Draw.normal(random);
        double truthKm = 50 * reference / claimed * efficiency;
        double first = Draw.normal(random);
        double second = -0.94 * first + Math.sqrt(1 - 0.94 * 0.94) * Draw.normal(random);
        var line = new SpecLine(
                "range",
                String.format(Locale.ROOT, "%.4f", truthKm * claimedOverTruth),
                "km",
                "drive=throttle rider-mass=60 kg temperature=5 °C speed=6 m/s",
                "",
                "",
                "",
                "",
                "",
                Place.NOWHERE);
        return verdict(
                line,
                figure("range.distance", "levelRole=throttle", 48_000, 1_000),
                figure("range.distance", "levelRole=throttle at=reference", Draw.normal(random, 50_000, 1_500), 1_500),
                figure("range.mean-speed", "levelRole=throttle", 7, 0.1),
                figure("weighin.mass", "battery=in", 25, 0.05),
                figure("coastdown.rolling-coefficient", "", rolling + 0.0006 * first, 0.0006),
                figure("coastdown.drag-area", "", area + 0.04 * second, 0.04));
    }

    private static double joulesPerMetre(double rolling, double area, double riderKg, double airK, double mps) {
        double air = new Air(airK, 100_000, 0.5).densityKgPerM3();
        return (25 + riderKg) * 9.80665 * rolling + air * area / 2 * 1.05 * mps * mps;
    }
}
