package org.measuredmile.desk.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.measuredmile.demo.ride.SimulatedTrial;
import org.measuredmile.demo.ride.SimulatedTrials;

/// The 95 % intervals hold the truth 95 % of the time, give or take two points, over a thousand simulated days.
class CoverageTest {
    private static final double LEAST = 0.93;
    private static final double MOST = 0.97;
    private static final int FEW = 150;
    private static final int MANY = 1000;
    private static final long[] SEEDS = {11, 12, 13};

    static List<SimulatedTrial> trials() {
        return SimulatedTrials.ALL;
    }

    /// With few days, a share of 93 to 97 % shows itself within the binomial bounds that one study in a thousand
    /// exceeds.
    @ParameterizedTest
    @MethodSource("trials")
    void aFewDaysDoNotContradictTheDemand(SimulatedTrial trial) {
        int least = new BinomialDistribution(FEW, LEAST).inverseCumulativeProbability(0.001);
        int most = new BinomialDistribution(FEW, MOST).inverseCumulativeProbability(0.999);
        assertThat(CoverageStudy.run(trial, 1, FEW, _ -> {})).isNotEmpty().allSatisfy(coverage -> {
            assertThat(coverage.figures()).as(coverage.toString()).isGreaterThan(FEW * 9 / 10);
            assertThat(coverage.heldThisDay() + FEW - coverage.figures())
                    .as(coverage.toString())
                    .isBetween(least, most);
            assertThat(coverage.heldAnyDay() + FEW - coverage.figures())
                    .as(coverage.toString())
                    .isBetween(least, most);
        });
    }

    @Test
    @Tag("long")
    void aThousandDaysHoldTheTruthNinetyFivePerCentOfTheTime() throws IOException {
        var rows = new ArrayList<Coverage>();
        for (var trial : SimulatedTrials.ALL) {
            for (long seed : SEEDS) {
                rows.addAll(CoverageStudy.run(trial, seed, MANY, _ -> {}));
            }
        }
        Files.writeString(Path.of("target", "coverage.md"), CoverageTable.markdown(rows));
        assertThat(rows).isNotEmpty().allSatisfy(row -> {
            assertThat(row.shareThisDay()).as(row.toString()).isBetween(LEAST, MOST);
            assertThat(row.shareAnyDay()).as(row.toString()).isBetween(LEAST, MOST);
        });
    }

    @Test
    void theSameStudyTwiceGivesTheSameCounts() {
        for (var trial : SimulatedTrials.ALL) {
            assertThat(CoverageStudy.run(trial, 3, 5, _ -> {})).isEqualTo(CoverageStudy.run(trial, 3, 5, _ -> {}));
        }
    }
}
