package org.measuredmile.desk.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.measuredmile.demo.ride.SimulatedTrial;
import org.measuredmile.demo.ride.SimulatedTrials;

/// The 95 % intervals hold the truth 95 % of the time, give or take two points, over a thousand simulated days.
class CoverageTest {
    private static final double LEAST = Demand.LEAST_SHARE;
    private static final double MOST = Demand.MOST_SHARE;
    private static final int FEW = 150;
    private static final int MANY = 1000;
    private static final List<Long> SEEDS = List.of(11L, 12L, 13L);

    /// With few days, a share of 93 to 97 % shows itself within the binomial bounds, and a bias of a tenth of the
    /// uncertainty within the normal ones, that one study in a thousand exceeds.
    @Test
    void aFewDaysDoNotContradictTheDemand() {
        int least = new BinomialDistribution(FEW, LEAST).inverseCumulativeProbability(0.001);
        int most = new BinomialDistribution(FEW, MOST).inverseCumulativeProbability(0.999);
        double bias = Demand.MOST_BIAS + 3.1 / Math.sqrt(FEW);
        var rows = CoverageStudies.run(SimulatedTrials.ALL, List.of(1L), FEW, (_, _, _) -> {});
        assertThat(rows).extracting(Coverage::study).contains(titles());
        assertThat(rows).allSatisfy(row -> {
            assertThat(row.figures()).as(row.toString()).isGreaterThan(FEW * 9 / 10);
            assertThat(row.heldThisDay() + FEW - row.figures())
                    .as(row.toString())
                    .isBetween(least, most);
            assertThat(row.heldAnyDay() + FEW - row.figures())
                    .as(row.toString())
                    .isBetween(least, most);
            assertThat(row.biasInUncertainties()).as(row.toString()).isBetween(-bias, bias);
        });
    }

    private static String[] titles() {
        return SimulatedTrials.ALL.stream().map(SimulatedTrial::title).toArray(String[]::new);
    }

    @Test
    @Tag("long")
    void aThousandDaysHoldTheTruthNinetyFivePerCentOfTheTime() throws IOException {
        var rows = CoverageStudies.run(SimulatedTrials.ALL, SEEDS, MANY, (_, _, _) -> {});
        Files.writeString(Path.of("target", "coverage.md"), CoverageTable.markdown(rows));
        assertThat(rows).extracting(Coverage::study).contains(titles());
        assertThat(CoverageTable.markdown(rows)).contains("every figure meets the demand");
    }

    @Test
    void theSameStudyTwiceGivesTheSameCounts() {
        for (var trial : SimulatedTrials.ALL) {
            assertThat(CoverageStudy.run(trial, 3, 5, _ -> {})).isEqualTo(CoverageStudy.run(trial, 3, 5, _ -> {}));
        }
    }
}
