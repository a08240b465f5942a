package org.measuredmile.recording.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.Finding;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.Recording;

/// How far a wheel really goes for each metre that it says, by satellite distance over a long stretch.
///
/// Wheel and receiver speed are both integrated over the same blocks of time in which both were recorded and the bike
/// rolled. The factor is the quotient of the sums; its own uncertainty comes from how much the blocks differ, and the
/// receiver's scale is added.
/// Unit: `factor` multiplies wheel speed and wheel distance; `standardUncertainty` is relative to 1.
/// Source: quotient of sums and its variance by blocks as in ratio estimation (Cochran, Sampling Techniques, 3rd ed.
/// 1977, chapter 6, from memory); the receiver's scale of 0.3 % is a house value.
public sealed interface WheelScale {
    /// A shorter common way says too little, m.
    double LEAST_WAY_M = 1500;

    /// A factor that was found.
    record Known(double factor, double standardUncertainty, double wayM, int blocks) implements WheelScale {
        /// Whether the wheel's size must have been set wrong: several per cent off, and surely so.
        public boolean isOff() {
            return Math.abs(factor - 1) > MOST_OFF && Math.abs(factor - 1) > 2 * standardUncertainty;
        }

        /// The wheel's channel with every value multiplied.
        public Channel applied(Channel wheel) {
            double[] values = wheel.values().clone();
            for (int i = 0; i < values.length; i++) {
                values[i] *= factor;
            }
            return new Channel(
                    wheel.kind(),
                    wheel.name(),
                    wheel.writtenUnit(),
                    wheel.source(),
                    new Channel.Series(wheel.timesS(), values));
        }

        /// What is to be said of a wheel that is off.
        public Optional<Finding> finding(String file) {
            return isOff()
                    ? Optional.of(Finding.warning(
                            "wheel-size",
                            Place.in(file),
                            String.format(
                                    Locale.ROOT,
                                    "the wheel goes %.3f ± %.3f of what it says, by satellite over %.0f m: its size is"
                                            + " set wrong",
                                    factor,
                                    2 * standardUncertainty,
                                    wayM),
                            "measure the roll-out and set it in the instrument; until then the factor is applied"))
                    : Optional.empty();
        }
    }

    /// No factor, and why not.
    record Unknown(String reason) implements WheelScale {}

    /// More than this from 1 is a finding.
    double MOST_OFF = 0.03;

    /// Slower than this a bike is not rolling steadily enough to compare, m/s.
    double ROLLING_MPS = 2;

    /// Compares the wheel with the receiver's own speed.
    static WheelScale of(Recording recording) {
        var wheel = recording.channel(ChannelKind.WHEEL_SPEED);
        var receiver = recording.channel(ChannelKind.SPEED);
        if (wheel.isEmpty() || receiver.isEmpty()) {
            return new Unknown("a wheel's speed and a receiver's speed are needed");
        }
        return of(wheel.get(), receiver.get());
    }

    /// Compares two channels of one time base.
    static WheelScale of(Channel wheel, Channel receiver) {
        var blocks = Blocks.of(wheel, receiver);
        double wayM = blocks.receiverM.stream().mapToDouble(Double::doubleValue).sum();
        double wheelM = blocks.wheelM.stream().mapToDouble(Double::doubleValue).sum();
        int count = blocks.wheelM.size();
        if (wayM < LEAST_WAY_M || count < Blocks.FEWEST) {
            return new Unknown(String.format(
                    Locale.ROOT,
                    "wheel and receiver rolled together for %.0f m in %d blocks; %.0f m in %d are needed",
                    wayM,
                    count,
                    LEAST_WAY_M,
                    Blocks.FEWEST));
        }
        double factor = wayM / wheelM;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double residual = blocks.receiverM.get(i) - factor * blocks.wheelM.get(i);
            squares += residual * residual;
        }
        double own = Math.sqrt(squares * count / (count - 1)) / wheelM;
        if (own > Blocks.MOST_OWN) {
            return new Unknown(String.format(
                    Locale.ROOT, "wheel and receiver do not keep one ratio: it is unsure by %.1f %%", 200 * own));
        }
        return new Known(factor, StrictMath.hypot(own, Blocks.RECEIVER_SCALE * factor), wayM, count);
    }

    /// The way in blocks of half a minute, by both channels.
    final class Blocks {
        static final int FEWEST = 8;
        static final double MOST_OWN = 0.02;
        static final double RECEIVER_SCALE = 0.003;
        private static final double BLOCK_S = 30;
        private static final double LONGEST_STEP_S = 3;
        private final List<Double> wheelM = new ArrayList<>();
        private final List<Double> receiverM = new ArrayList<>();

        private Blocks() {}

        /// Steps of the receiver over which the wheel was recorded too, both ends of both rolling.
        static Blocks of(Channel wheel, Channel receiver) {
            var blocks = new Blocks();
            double wheelSum = 0;
            double receiverSum = 0;
            double heldS = 0;
            for (int i = 1; i < receiver.size(); i++) {
                double fromS = receiver.timeS(i - 1);
                double toS = receiver.timeS(i);
                var from = Interpolation.at(wheel, fromS, LONGEST_STEP_S);
                var to = Interpolation.at(wheel, toS, LONGEST_STEP_S);
                boolean rolls = from.isPresent()
                        && to.isPresent()
                        && toS - fromS <= LONGEST_STEP_S
                        && Math.min(receiver.value(i - 1), receiver.value(i)) > ROLLING_MPS
                        && Math.min(from.getAsDouble(), to.getAsDouble()) > ROLLING_MPS / 2;
                if (rolls) {
                    wheelSum += (from.getAsDouble() + to.getAsDouble()) / 2 * (toS - fromS);
                    receiverSum += (receiver.value(i - 1) + receiver.value(i)) / 2 * (toS - fromS);
                    heldS += toS - fromS;
                }
                if (heldS >= BLOCK_S) {
                    blocks.wheelM.add(wheelSum);
                    blocks.receiverM.add(receiverSum);
                    wheelSum = 0;
                    receiverSum = 0;
                    heldS = 0;
                }
            }
            return blocks;
        }
    }
}
