package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// Yearly flow of the Nile at Aswan, 1871 to 1970, in 10⁸ m³: the standard example of a change in level, at 1898.
///
/// Source: G. W. Cobb (1978), The problem of the Nile: conditional solution to a changepoint problem, Biometrika 65,
/// 243–251; values and the change from memory, the values held against their known sum.
class ChangePointsReferenceTest {
    private static final double[] NILE = {
        1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140,
        1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969,
        831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759, 781, 865,
        845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050,
        918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740
    };

    @Test
    void theValuesAreTheSeriesWhoseMeanIsPublished() {
        assertThat(NILE).hasSize(100);
        assertThat(Arrays.stream(NILE).average().orElseThrow()).isCloseTo(919.35, within(1e-9));
    }

    @ParameterizedTest(name = "least length {0}")
    @ValueSource(ints = {1, 5, 20})
    void theNileFellOnceIn1898(int least) {
        var sums = new RunningSums(NILE);
        double penalty = new ChangePoints.Wander(125, 1).penalty(NILE.length, 1);
        var pieces = ChangePoints.of(new Span(0, 100), sums::constantCost, penalty, least);
        assertThat(pieces).containsExactly(new Span(0, 28), new Span(28, 100));
        assertThat(1871 + pieces.getFirst().to() - 1).isEqualTo(1898);
        assertThat(sums.mean(0, 28)).isCloseTo(1097.75, within(0.005));
        assertThat(sums.mean(28, 100)).isCloseTo(849.97, within(0.005));
    }
}
