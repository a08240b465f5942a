package org.measuredmile.recording.spoken;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.measuredmile.quantity.statistics.Draw;
import org.measuredmile.quantity.statistics.Seed;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Mark;
import org.measuredmile.recording.motion.SpeedSource;
import org.measuredmile.recording.spoken.SpokenAgainstTrace.Agreement;

/// Rides and clips of known truth: what is found must be it, within the interval it is given.
class CameraOffsetTest {
    private static final double MPH = 0.44704;
    private static final int DAYS = 200;

    /// A ride of stretches at random speeds, with ramps between them, 1 Hz, 20 minutes.
    private static double[] ride(RandomGenerator random) {
        double[] mps = new double[1200];
        double speed = 0;
        double target = 6;
        for (int i = 0; i < mps.length; i++) {
            if (random.nextDouble() < 0.05) {
                target = random.nextDouble() < 0.25 ? 0 : Draw.rectangular(random, 2, 11);
            }
            speed += Math.clamp(target - speed, -1.6, 0.9);
            mps[i] = Math.max(0, speed + Draw.normal(random, 0, 0.05));
        }
        return mps;
    }

    private static SpeedSource source(double[] mps) {
        double[] times = new double[mps.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = i;
        }
        return new SpeedSource(
                SpeedSource.Kind.RECEIVER,
                new Channel(ChannelKind.SPEED, "speed", "m/s", new Channel.Series(times, mps)),
                0.087,
                "",
                0,
                java.util.Optional.empty());
    }

    private static double at(double[] mps, double timeS) {
        int before = Math.clamp((long) Math.floor(timeS), 0, mps.length - 2);
        return mps[before] + (timeS - before) * (mps[before + 1] - mps[before]);
    }

    /// A clip of five minutes in which the speed on the display is said every 10 to 20 s, and now and then a number
    /// that is no speed of the moment.
    private static List<SpokenReading> clip(double[] mps, double offsetS, RandomGenerator random) {
        double lagS = Draw.normal(random, SpeechLag.MEAN_S, SpeechLag.COMMON_S);
        double scale = Draw.normal(random, 1, 0.01);
        List<Mark> captions = new ArrayList<>();
        for (double timeS = 5; timeS < 300; timeS += Draw.rectangular(random, 10, 20)) {
            double seenS = timeS + offsetS - lagS + Draw.normal(random, 0, SpeechLag.EACH_S);
            boolean wrong = random.nextDouble() < 0.15;
            double mph = wrong ? Draw.rectangular(random, 5, 30) : scale * at(mps, seenS) / MPH;
            String words = String.format(Locale.ROOT, "%.0f miles an hour", mph);
            captions.add(new Mark(Mark.Kind.CAPTION, timeS, timeS + 2, words));
        }
        return SpokenReadings.in(captions);
    }

    @Test
    void theIntervalHoldsTheOffsetAsOftenAsItSays() {
        int found = 0;
        int held = 0;
        for (int i = 0; i < DAYS; i++) {
            RandomGenerator random = new Seed(4711).stream(i);
            double[] mps = ride(random);
            double offsetS = Draw.rectangular(random, 20, 880);
            if (CameraOffset.of(clip(mps, offsetS, random), source(mps)) instanceof CameraOffset.Found one) {
                found++;
                held += one.interval95S().contains(offsetS) ? 1 : 0;
            }
        }
        assertThat(found).as("offsets found").isGreaterThan(DAYS * 8 / 10);
        // Four standard deviations of a binomial proportion around 95 %.
        assertThat((double) held / found).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / found)));
    }

    @Test
    void aClipOfAnotherRideIsRefused() {
        int found = 0;
        for (int i = 0; i < DAYS; i++) {
            RandomGenerator random = new Seed(815).stream(i);
            double[] other = ride(random);
            List<SpokenReading> clip = clip(other, Draw.rectangular(random, 20, 880), random);
            found += CameraOffset.of(clip, source(ride(random))) instanceof CameraOffset.Found ? 1 : 0;
        }
        assertThat(found).isLessThanOrEqualTo(DAYS / 100);
    }

    @Test
    void whenTheSameStretchWasRiddenTwiceTwoOffsetsAreNamed() {
        RandomGenerator random = new Seed(7).stream(0);
        double[] once = ride(random);
        double[] twice = new double[2400];
        System.arraycopy(once, 0, twice, 0, 1200);
        System.arraycopy(once, 0, twice, 1200, 1200);
        var outcome = CameraOffset.of(clip(once, 400, random), source(twice));
        assertThat(outcome).isInstanceOf(CameraOffset.NotFound.class);
        var refused = (CameraOffset.NotFound) outcome;
        assertThat(refused.code()).isEqualTo("two-offsets-fit");
        assertThat(refused.offsetsS()).hasSize(2);
        assertThat(Math.abs(refused.offsetsS().get(0) - refused.offsetsS().get(1)))
                .isCloseTo(1200, within(1.0));
    }

    @Test
    void aRideAtOneSpeedSetsNoClock() {
        double[] mps = new double[1200];
        RandomGenerator random = new Seed(8).stream(0);
        for (int i = 0; i < mps.length; i++) {
            mps[i] = 8 + Draw.normal(random, 0, 0.05);
        }
        var outcome = (CameraOffset.NotFound) CameraOffset.of(clip(mps, 300, random), source(mps));
        assertThat(outcome.code()).isEqualTo("no-offset-fits");
    }

    @Test
    void threeSpeedsAreTooFew() {
        double[] mps = ride(new Seed(9).stream(0));
        List<SpokenReading> three = SpokenReadings.in(List.of(new Mark(
                Mark.Kind.CAPTION,
                0,
                20,
                "5 miles an hour. 12 miles an hour. 9 miles an hour. a hundred and five watts")));
        assertThat(((CameraOffset.NotFound) CameraOffset.of(three, source(mps))).code())
                .isEqualTo("too-few-speeds");
    }

    @Test
    void whatDisagreesWithTheTraceIsFlaggedAndTheRestGetsItsTime() {
        RandomGenerator random = new Seed(10).stream(0);
        double[] mps = ride(random);
        double offsetS = 250;
        List<SpokenReading> said = new ArrayList<>(clip(mps, offsetS, random));
        double truth = at(mps, 100 + offsetS - SpeechLag.MEAN_S);
        double wrongMph = truth / MPH > 12 ? 3 : 24;
        said.addAll(SpokenReadings.in(List.of(
                new Mark(Mark.Kind.CAPTION, 100, 102, wrongMph + " mph"),
                new Mark(Mark.Kind.CAPTION, 110, 112, "twenty two feet four inches"))));
        var found = (CameraOffset.Found) CameraOffset.of(said, source(mps));
        var beside = SpokenAgainstTrace.of(said, found, source(mps));
        var wrong = beside.get(beside.size() - 2);
        assertThat(wrong.agreement()).isEqualTo(Agreement.DISAGREES);
        assertThat(wrong.traceMps().orElseThrow()).isCloseTo(truth, within(1.5));
        assertThat(wrong.differenceMps().orElseThrow())
                .isCloseTo(wrongMph * MPH - wrong.traceMps().orElseThrow(), within(1e-9));
        var distance = beside.getLast();
        assertThat(distance.agreement()).isEqualTo(Agreement.NOT_COMPARED);
        assertThat(distance.traceTimeS()).isCloseTo(110 + found.offsetS(), within(1e-9));
        long agreeing = beside.stream()
                .filter(one -> one.agreement() == Agreement.AGREES)
                .count();
        assertThat(agreeing).isGreaterThanOrEqualTo(found.agreeing());
    }
}
