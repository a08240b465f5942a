package org.measuredmile.recording.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Format;
import org.measuredmile.recording.Recording;
import org.measuredmile.recording.Segment;

/// How often two files are taken for one ride: conversions of known truth, and bikes that only ride together.
///
/// Errors of receivers: 1.5 m that drift over half a minute and 0.3 m from fix to fix (common practice, no source).
class SameRidePropertyTest {
    private static final int PAIRS = 1000;
    private static final int SECONDS = 600;
    private static final double METRES_A_DEGREE = 111_195;

    /// How a logger writes: positions to so many decimals, speeds to steps of so much, with or without positions.
    private record Writing(int decimals, double stepMps, boolean positions) {
        private double degrees(double value) {
            double scale = Math.pow(10, decimals);
            return Math.rint(value * scale) / scale;
        }

        private double mps(double value) {
            return Math.rint(value / stepMps) * stepMps;
        }
    }

    /// One bike's way and what its receiver makes of it.
    private record Bike(double[] northM, double[] eastM, double[] mps) {
        private Recording written(String name, Writing writing, int fromS, int toS) {
            double[] timesS = new double[toS - fromS];
            double[][] values = new double[3][toS - fromS];
            for (int i = 0; i < timesS.length; i++) {
                timesS[i] = i;
                values[0][i] = writing.degrees(50 + northM[fromS + i] / METRES_A_DEGREE);
                values[1][i] = writing.degrees(8 + eastM[fromS + i] / METRES_A_DEGREE / 0.643);
                values[2][i] = writing.mps(mps[fromS + i]);
            }
            List<Channel> channels = new ArrayList<>();
            if (writing.positions) {
                channels.add(channel(ChannelKind.LATITUDE, timesS, values[0]));
                channels.add(channel(ChannelKind.LONGITUDE, timesS, values[1]));
            }
            channels.add(channel(ChannelKind.SPEED, timesS, values[2]));
            return new Recording(
                    name,
                    Format.GPX,
                    "",
                    Optional.of(Instrumented.NINE.plus(Duration.ofSeconds(fromS))),
                    true,
                    timesS.length,
                    timesS,
                    List.of(new Segment(0, timesS.length - 1)),
                    channels,
                    new TreeMap<>(),
                    List.of());
        }

        private static Channel channel(ChannelKind kind, double[] timesS, double[] values) {
            return new Channel(kind, kind.id(), "", new Channel.Series(timesS, values));
        }
    }

    /// A slow wander about 0.
    private static double[] wander(Random random, double deviation, double overS) {
        double[] values = new double[SECONDS];
        double keep = Math.exp(-1 / overS);
        values[0] = deviation * random.nextGaussian();
        for (int i = 1; i < SECONDS; i++) {
            values[i] = keep * values[i - 1] + deviation * Math.sqrt(1 - keep * keep) * random.nextGaussian();
        }
        return values;
    }

    /// Two bikes a length apart that hold their distance, the speed limited by their motors as such rides are;
    /// each with its own receiver.
    private static Bike[] together(Random random) {
        double[] gusts = wander(random, 1.5, 20);
        double[] turns = wander(random, 0.3, 60);
        double[] gapM = wander(random, 0.5, 15);
        double wayM = 0;
        double[][] way = new double[2][SECONDS];
        double[] headings = new double[SECONDS];
        for (int i = 0; i < SECONDS; i++) {
            wayM += Math.clamp(6.4 + gusts[i], 0, 6.94);
            headings[i] = turns[i] + i / 300.0;
            way[0][i] = wayM;
            way[1][i] = wayM - 2.5 - gapM[i];
        }
        Bike[] bikes = new Bike[2];
        for (int bike = 0; bike < 2; bike++) {
            double[] driftN = wander(random, 1.5, 30);
            double[] driftE = wander(random, 1.5, 30);
            double[][] values = new double[3][SECONDS];
            double north = 0;
            double east = 0;
            for (int i = 0; i < SECONDS; i++) {
                double stepM = way[bike][i] - way[bike][Math.max(0, i - 1)];
                north += stepM * Math.cos(headings[i]);
                east += stepM * Math.sin(headings[i]);
                values[0][i] = north + (bike == 1 ? -2.5 : 0) + driftN[i] + 0.3 * random.nextGaussian();
                values[1][i] = east + driftE[i] + 0.3 * random.nextGaussian();
                values[2][i] = Math.max(0, stepM + 0.05 * random.nextGaussian());
            }
            bikes[bike] = new Bike(values[0], values[1], values[2]);
        }
        return bikes;
    }

    private static boolean taken(Recording one, Recording two) {
        DayChecks checks = Instrumented.check(Instrumented.day(), one, two);
        return !checks.leftOut().isEmpty();
    }

    /// Speeds to a kilometre an hour, a tenth of one, a thousandth of a metre a second.
    @ParameterizedTest
    @ValueSource(doubles = {1 / 3.6, 0.1 / 3.6, 0.001})
    void bikesThatRideTogetherAreTwoRides(double stepMps) {
        Random random = new Random(20_310_514);
        int wrong = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            Bike[] bikes = together(random);
            boolean positions = pair % 2 == 0;
            Writing first = new Writing(positions ? 5 + pair % 3 : 7, stepMps, positions);
            Writing second = new Writing(5 + pair % 2, stepMps, positions);
            wrong += taken(bikes[0].written("a", first, 0, SECONDS), bikes[1].written("b", second, 0, SECONDS)) ? 1 : 0;
        }
        // None in a thousand: the rate is under 0.3 % (rule of three, 95 %; Hanley and Lippman-Hand,
        // JAMA 249 (1983) 1743).
        assertThat(wrong).isZero();
    }

    @Test
    void aRideWrittenAgainIsOneRideWhateverTheRounding() {
        Random random = new Random(20_310_515);
        int found = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            Bike bike = together(random)[0];
            Writing first = new Writing(7, 0.001, true);
            Writing second = new Writing(5 + pair % 3, pair % 2 == 0 ? 0.001 : 0.1 / 3.6, pair % 5 != 0);
            int cut = random.nextInt(300);
            found += taken(bike.written("a", first, 0, SECONDS), bike.written("b", second, cut, SECONDS)) ? 1 : 0;
        }
        assertThat(found).isEqualTo(PAIRS);
    }

    @Test
    void twoReceiversOnOneBikeAreTwoRecordings() {
        Random random = new Random(20_310_516);
        int wrong = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            Bike first = together(random)[0];
            double[] driftN = wander(random, 1.5, 30);
            double[] driftE = wander(random, 1.5, 30);
            Bike second = new Bike(first.northM.clone(), first.eastM.clone(), first.mps.clone());
            for (int i = 0; i < SECONDS; i++) {
                second.northM[i] += driftN[i];
                second.eastM[i] += driftE[i];
                second.mps[i] += 0.05 * random.nextGaussian();
            }
            Writing writing = new Writing(6, 0.01, true);
            wrong += taken(first.written("a", writing, 0, SECONDS), second.written("b", writing, 0, SECONDS)) ? 1 : 0;
        }
        assertThat(wrong).isZero();
    }
}
