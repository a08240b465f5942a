package org.measuredmile.recording.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.quantity.statistics.LineFit;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.motion.SecondMeans.Span;

/// Sums, slopes and integrals that many trials rest on, against what they shorten.
class SumsReferenceTest {
    private static Channel channel(double[] times, double[] values) {
        return new Channel(ChannelKind.SPEED, "v", "m/s", new Channel.Series(times, values));
    }

    /// Any stretch's line and residuals are those of the line fitted to it alone, missing values left out.
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void runningSumsAreTheLineOfEachStretch(long seed) {
        var random = new Seed(seed).child("sums").stream(0);
        double[] values = new double[60];
        for (int i = 0; i < values.length; i++) {
            values[i] = random.nextDouble() < 0.1 ? Double.NaN : 5 + 0.03 * i + random.nextDouble();
        }
        var sums = new RunningSums(values);
        int from = random.nextInt(20);
        int to = from + 10 + random.nextInt(30);
        double[] times = new double[sums.count(from, to)];
        double[] there = new double[times.length];
        int next = 0;
        double mean = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                times[next] = i;
                there[next++] = values[i];
                mean += values[i] / times.length;
            }
        }
        var line = LineFit.through(times, there);
        double aboutMean = 0;
        double aboutLine = 0;
        for (int i = 0; i < next; i++) {
            aboutMean += Math.pow(there[i] - mean, 2);
            aboutLine += Math.pow(there[i] - line.at(times[i]), 2);
        }

        assertThat(sums.mean(from, to)).isCloseTo(mean, within(1e-12));
        assertThat(sums.constantCost(from, to)).isCloseTo(aboutMean, within(1e-9));
        assertThat(sums.lineCost(from, to)).isCloseTo(aboutLine, within(1e-9));
        assertThat(sums.slope(from, to)).isCloseTo(line.at(1) - line.at(0), within(1e-9));
        assertThat(Slope.of(times, there, 0, times.length)).isCloseTo(line.at(1) - line.at(0), within(1e-9));
    }

    @Test
    void fewerValuesThanALineNeedsHaveNone() {
        var sums = new RunningSums(new double[] {3, Double.NaN, 5});

        assertThat(sums.slope(0, 2)).isZero();
        assertThat(sums.slope(0, 3)).isEqualTo(1);
        assertThat(sums.lineCost(0, 3)).isZero();
        assertThat(Slope.of(new double[] {2, 2}, new double[] {1, 3}, 0, 2)).isZero();
    }

    /// 2 + 3·t from 0 to 4 s, told by uneven samples: 2·t + 1.5·t² and t² + 0.5·t³; as its ends are beyond them.
    @ParameterizedTest
    @CsvSource({"0, 0, 0", "1, 3.5, 1.5", "1.7, 7.735, 5.3465", "4, 32, 48", "5, 46, 87", "-1, -2, 1"})
    void aLineAddedUpOnceAndTwice(double timeS, double once, double twice) {
        double[] times = {0, 0.5, 2, 2.2, 4};
        double[] values = {2, 3.5, 8, 8.6, 14};
        var integral = new RunningIntegral(channel(times, values));

        assertThat(integral.once(timeS)).isCloseTo(once, within(1e-9));
        assertThat(integral.twice(timeS)).isCloseTo(twice, within(1e-9));
        assertThat(integral.mean(0, 4)).isCloseTo(8, within(1e-12));
    }

    /// 7 to 9 m/s over 1 s and so on: seconds of which half the samples are missing are missing.
    @Test
    void secondsAreMeansOfTheirSamplesAndMissingWhereHalfAreMissing() {
        double[] times = {10.0, 10.25, 10.5, 10.75, 11.0, 12.0, 12.25, 12.5, 12.75, 13.0, 13.25};
        double[] speeds = {1, 2, 3, 4, 9, 5, 5, 6, 6, 7, 8};
        var means = SecondMeans.of(channel(times, speeds));

        assertThat(means.startS()).isEqualTo(10);
        assertThat(means.timeS(2)).isEqualTo(12);
        assertThat(means.speedMps()[0]).isEqualTo(2.5);
        assertThat(means.isPresent(1)).isFalse();
        assertThat(means.speedMps()[2]).isEqualTo(5.5);
        assertThat(means.speedMps()[3]).isEqualTo(7.5);
        assertThat(means.times(2).speedMps()[2]).isEqualTo(11);
        assertThat(means.presentIn(new Span(0, 4))).containsExactly(0, 2, 3);
    }

    @Test
    void aBikeMovesBetweenItsStandsAndItsLongGaps() {
        double no = Double.NaN;
        var means = new SecondMeans(new double[] {0, 2, 3, no, 3, 0.5, 4, 4, no, no, 4, 2}, 0);

        assertThat(means.moving(2, 1)).isEqualTo(List.of(new Span(1, 5), new Span(6, 8), new Span(10, 12)));
        assertThat(means.moving(2, 2)).isEqualTo(List.of(new Span(1, 5), new Span(6, 12)));
    }
}
