package org.measuredmile.roadload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.assertj.core.api.Assertions.within;

import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/// Draws of a road load have the moments that it states; sums of its two numbers the uncertainty that follows.
class KnownLoadPropertyTest {
    private static final int DRAWS = 200_000;

    private static KnownLoad load(double correlation, double degreesOfFreedom) {
        return new KnownLoad(
                new RoadLoad(0.0085, 0.62), 0.0006, 0.03, correlation, degreesOfFreedom, false, "measured");
    }

    /// Student's t with ν degrees of freedom has the variance ν/(ν − 2) (JCGM 101:2008, 6.4.9.4, note 2); a factor
    /// common to both numbers leaves their correlation as it is.
    @ParameterizedTest
    @CsvSource({"-0.6, Infinity", "0.8, Infinity", "0, Infinity", "-0.6, 8"})
    void drawsHaveTheStatedMoments(double correlation, double degreesOfFreedom) {
        var load = load(correlation, degreesOfFreedom);
        var random = RandomGeneratorFactory.of("L64X128MixRandom").create(7);
        double[] sums = new double[5];
        for (int i = 0; i < DRAWS; i++) {
            var drawn = load.draw(random);
            double rolling = (drawn.rollingCoefficient() - 0.0085) / 0.0006;
            double area = (drawn.dragAreaM2() - 0.62) / 0.03;
            sums[0] += rolling;
            sums[1] += area;
            sums[2] += rolling * rolling;
            sums[3] += area * area;
            sums[4] += rolling * area;
        }
        double variance = Double.isInfinite(degreesOfFreedom) ? 1 : degreesOfFreedom / (degreesOfFreedom - 2);
        // Six standard deviations of each mean; those of the squares are wider for the t, whose kurtosis is 4.5.
        assertThat(sums[0] / DRAWS).isCloseTo(0, within(0.015));
        assertThat(sums[1] / DRAWS).isCloseTo(0, within(0.015));
        assertThat(sums[2] / DRAWS).isCloseTo(variance, within(0.04));
        assertThat(sums[3] / DRAWS).isCloseTo(variance, within(0.04));
        assertThat(sums[4] / Math.sqrt(sums[2] * sums[3])).isCloseTo(correlation, within(0.015));
    }

    /// Nothing rolls without resistance: house limits of 0.001 and 0.05 m².
    @Test
    void drawsStayAboveWhatPhysicsAllows() {
        var vague = new KnownLoad(new RoadLoad(0.002, 0.1), 0.01, 0.5, 0, Double.POSITIVE_INFINITY, true, "vague");
        var random = RandomGeneratorFactory.of("L64X128MixRandom").create(7);
        double lowestRolling = 1;
        double lowestArea = 1;
        for (int i = 0; i < 1000; i++) {
            var drawn = vague.draw(random);
            lowestRolling = Math.min(lowestRolling, drawn.rollingCoefficient());
            lowestArea = Math.min(lowestArea, drawn.dragAreaM2());
        }
        assertThat(lowestRolling).isEqualTo(0.001);
        assertThat(lowestArea).isEqualTo(0.05);
    }

    /// JCGM 100:2008, 5.2.2, note 1: wholly correlated inputs add linearly, with their signs.
    @Test
    void whollyCorrelatedNumbersAddLinearly() {
        assertThat(load(1, 5).sd(100, 10)).isCloseTo(0.06 + 0.3, within(1e-12));
        assertThat(load(-1, 5).sd(100, 10)).isCloseTo(0.3 - 0.06, within(1e-12));
        assertThat(load(0, 5).sd(100, 10)).isCloseTo(Math.hypot(0.06, 0.3), within(1e-12));
    }

    /// F = m·g·C_rr + ½·ρ·C_dA·v²: 104 kg · 9.81 m/s² · 0.0006 and 1.2 kg/m³ · 64 m²/s² · 0.03 m² / 2, by hand.
    @Test
    void forceIsAsUncertainAsItsTwoParts() {
        var setting = new Setting(104, 1.8, 1.2, 9.81);
        assertThat(load(0, 5).forceSdN(setting, 8)).isCloseTo(Math.hypot(0.612144, 1.152), within(1e-9));
    }

    @Test
    void impossibleUncertaintiesAreRefused() {
        var mean = new RoadLoad(0.0085, 0.62);
        assertThatNoException().isThrownBy(() -> new KnownLoad(mean, 0, 0, 1, 5, false, ""));
        assertThatIllegalArgumentException().isThrownBy(() -> new KnownLoad(mean, -1e-9, 0, 0, 5, false, ""));
        assertThatIllegalArgumentException().isThrownBy(() -> new KnownLoad(mean, 0, -1e-9, 0, 5, false, ""));
        assertThatIllegalArgumentException().isThrownBy(() -> new KnownLoad(mean, 0, 0, -1.001, 5, false, ""));
    }

    /// The limits are those that the widths' own words say: to 40 mm, from 40 to 75 mm, over 75 mm.
    @ParameterizedTest
    @CsvSource({
        "0.028, NARROW",
        "0.040, NARROW",
        "0.0401, WIDE",
        "0.057, WIDE",
        "0.075, WIDE",
        "0.0751, FAT",
        "0.102, FAT"
    })
    void tyresAreSortedByTheirWidth(double metres, LoadPrior.Tyre tyre) {
        assertThat(LoadPrior.Tyre.ofWidth(metres)).isEqualTo(tyre);
    }

    @Test
    void aPriorSaysWhatItWasAssumedFor() {
        assertThat(LoadPrior.of(LoadPrior.Tyre.FAT, LoadPrior.Posture.UPRIGHT).origin())
                .isEqualTo("assumed for fat tyres and an upright rider");
    }
}
