package org.measuredmile.demo.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/// A satellite receiver: what it makes of a true ride.
///
/// Shape: the true speed is filtered, delayed, blurred by noise that is partly correlated in time, taken as the length
/// of a vector (so it is never negative and rarely 0), and read `rateHz` times a second; now and then no fix comes.
/// Unit: hertz, seconds; `dropOutsPerMinute` counts gaps of 1 to 4 epochs.
/// Source: magnitudes of noise, delay and filter as in reference receivers of bicycle loggers; common practice.
public record ReceiverModel(double rateHz, Noise noise, Filter filter, double delayS, double dropOutsPerMinute) {
    /// Noise of the speed: white, and correlated with a time constant; and of the position, correlated over
    /// minutes.
    ///
    /// Unit: metres per second, seconds, metres; standard deviations.
    public record Noise(double whiteMps, double correlatedMps, double correlationS, double positionM) {
        /// A good receiver in the open.
        public static final Noise OPEN_SKY = new Noise(0.05, 0.05, 0.4, 1.5);
        /// The same beside houses and under trees.
        public static final Noise STREET = new Noise(0.07, 0.05, 0.4, 3);
        /// For tests of the other parts.
        public static final Noise NONE = new Noise(0, 0, 1, 0);
    }

    /// What the receiver does to the true speed before it says it.
    public sealed interface Filter {
        record None() implements Filter {}

        /// First-order lag with a time constant.
        record Lag(double timeConstantS) implements Filter {}

        /// Mean over the last stretch of time.
        record MovingAverage(double widthS) implements Filter {}
    }

    /// What the receiver says at one epoch; without a fix only the time is meaningful.
    ///
    /// Unit: seconds from the ride's start; degrees of WGS-84; metres per second; metres; degrees from true north.
    public record Epoch(
            double timeS,
            boolean hasFix,
            RoadLine.Spot spot,
            double speedMps,
            double altitudeM,
            double courseDegrees) {}

    private static final double POSITION_CORRELATION_S = 60;
    private static final int LONGEST_GAP_EPOCHS = 4;

    /// Ten times a second, in the open, with a short lag: what the crew uses for stops.
    public static ReceiverModel tenHertz() {
        return new ReceiverModel(10, Noise.OPEN_SKY, new Filter.Lag(0.08), 0.2, 0);
    }

    /// Five times a second, averaging over two fifths of a second.
    public static ReceiverModel fiveHertz() {
        return new ReceiverModel(5, Noise.OPEN_SKY, new Filter.MovingAverage(0.4), 0.25, 0);
    }

    /// Once a second, as many handlebar computers do.
    public static ReceiverModel oneHertz() {
        return new ReceiverModel(1, Noise.STREET, new Filter.MovingAverage(1.0), 0.8, 0);
    }

    public ReceiverModel droppingOut(double timesPerMinute) {
        return new ReceiverModel(rateHz, noise, filter, delayS, timesPerMinute);
    }

    /// What the receiver says of a ride along a road, from its first to its last moment.
    public List<Epoch> watch(TrueRide ride, RoadLine road, RandomGenerator random) {
        TrueRide smoothed = TrueRide.of(filtered(ride), ride.stepS());
        var speedAhead = new Wander(noise.correlatedMps(), noise.correlationS(), random);
        var speedAside = new Wander(noise.correlatedMps(), noise.correlationS(), random);
        var ahead = new Wander(noise.positionM(), POSITION_CORRELATION_S, random);
        var aside = new Wander(noise.positionM(), POSITION_CORRELATION_S, random);
        var height = new Wander(2 * noise.positionM(), POSITION_CORRELATION_S, random);
        int epochs = (int) Math.floor(ride.spanS() * rateHz + 1e-9) + 1;
        double stepS = 1 / rateHz;
        int gap = 0;
        List<Epoch> seen = new ArrayList<>(epochs);
        for (int i = 0; i < epochs; i++) {
            double timeS = i / rateHz;
            double along = smoothed.speedAtMps(timeS - delayS)
                    + speedAhead.next(stepS)
                    + noise.whiteMps() * random.nextGaussian();
            double across = speedAside.next(stepS) + noise.whiteMps() * random.nextGaussian();
            RoadLine.Spot spot = road.at(ride.distanceAtM(timeS - delayS) + ahead.next(stepS), aside.next(stepS));
            gap = gap > 0 ? gap - 1 : newGap(random);
            seen.add(new Epoch(
                    timeS,
                    gap == 0,
                    spot,
                    Math.sqrt(along * along + across * across),
                    road.altitudeM() + height.next(stepS),
                    road.bearingDegrees()));
        }
        return seen;
    }

    private int newGap(RandomGenerator random) {
        boolean begins = random.nextDouble() < dropOutsPerMinute / (60 * rateHz);
        return begins ? 1 + random.nextInt(LONGEST_GAP_EPOCHS) : 0;
    }

    private double[] filtered(TrueRide ride) {
        return switch (filter) {
            case Filter.None() -> ride.speedMps();
            case Filter.Lag(double timeConstantS) -> lagged(ride, timeConstantS);
            case Filter.MovingAverage(double widthS) -> averaged(ride, widthS);
        };
    }

    private static double[] lagged(TrueRide ride, double timeConstantS) {
        double[] in = ride.speedMps();
        double[] out = in.clone();
        double kept = StrictMath.exp(-ride.stepS() / timeConstantS);
        for (int i = 1; i < in.length; i++) {
            out[i] = kept * out[i - 1] + (1 - kept) * in[i];
        }
        return out;
    }

    private static double[] averaged(TrueRide ride, double widthS) {
        double[] out = new double[ride.speedMps().length];
        for (int i = 0; i < out.length; i++) {
            double to = i * ride.stepS();
            double from = to - widthS;
            // Before the ride began the bike did what it did at its first moment.
            double before = Math.max(0, -from) * ride.speedMps()[0];
            out[i] = (before + ride.distanceAtM(to) - ride.distanceAtM(Math.max(0, from))) / widthS;
        }
        return out;
    }

    /// A first-order Gauss–Markov process: noise that forgets itself with a time constant.
    private static final class Wander {
        private final double sd;
        private final double timeConstantS;
        private final RandomGenerator random;
        private double value;

        Wander(double sd, double timeConstantS, RandomGenerator random) {
            this.sd = sd;
            this.timeConstantS = timeConstantS;
            this.random = random;
            value = sd * random.nextGaussian();
        }

        double next(double stepS) {
            double kept = StrictMath.exp(-stepS / timeConstantS);
            double now = value;
            value = kept * value + sd * Math.sqrt(1 - kept * kept) * random.nextGaussian();
            return now;
        }
    }
}
