package org.measuredmile.recording.day;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/// How many pictures a camera takes a second.
public sealed interface FrameRate {
    /// Always the same, as an exact ratio in lowest terms: 30000 frames in 1001 seconds.
    ///
    /// Error: IllegalArgumentException when either is not above 0.
    record Steady(long frames, long seconds) implements FrameRate {
        public Steady {
            if (frames <= 0 || seconds <= 0) {
                throw new IllegalArgumentException(frames + " frames in " + seconds + " s");
            }
            long common =
                    BigInteger.valueOf(frames).gcd(BigInteger.valueOf(seconds)).longValueExact();
            frames /= common;
            seconds /= common;
        }

        private static final Pattern WRITTEN = Pattern.compile(
                "(\\d{1,7}(?:[.,]\\d{1,9})?)(?: */ *(\\d{1,7}))? *(?:Hz|hz|fps|1/s|/s|frames (?:a|per) second)?");

        private static Optional<FrameRate> read(String text) {
            Matcher written = WRITTEN.matcher(text);
            if (!written.matches()) {
                return Optional.empty();
            }
            var first = new BigDecimal(written.group(1).replace(',', '.'));
            boolean isRatio = written.group(2) != null;
            long second = isRatio ? Long.parseLong(written.group(2)) : 1;
            if (first.signum() == 0 || second == 0 || (isRatio && first.scale() > 0)) {
                return Optional.empty();
            }
            return Optional.of(isRatio ? new Steady(first.longValueExact(), second) : of(first));
        }

        private static Steady of(BigDecimal hertz) {
            BigDecimal plain = hertz.stripTrailingZeros();
            int scale = Math.max(0, plain.scale());
            return new Steady(
                    plain.movePointRight(scale).longValueExact(),
                    BigInteger.TEN.pow(scale).longValueExact());
        }

        /// The time from one frame to the next, in seconds.
        public double periodS() {
            return (double) seconds / frames;
        }

        /// The time that so many frames take, in seconds, rounded once.
        public double secondsOf(long count) {
            return (double) count * seconds / frames;
        }

        @Override
        public String text() {
            // A decimal ends only where nothing but twos and fives divides.
            long rest = seconds;
            while (rest % 2 == 0) {
                rest /= 2;
            }
            while (rest % 5 == 0) {
                rest /= 5;
            }
            return rest == 1
                    ? BigDecimal.valueOf(frames)
                            .divide(BigDecimal.valueOf(seconds))
                            .toPlainString()
                    : frames + "/" + seconds;
        }
    }

    /// As the light allows: the number of a frame tells no time.
    record Variable() implements FrameRate {
        @Override
        public String text() {
            return VARIABLE;
        }
    }

    String VARIABLE = "variable";

    /// As it is written in day.yaml: `30000/1001`, `59.94`, `variable`.
    String text();

    /// A rate in frames a second, to nine digits after the point.
    static FrameRate ofHertz(double hertz) {
        return Steady.of(BigDecimal.valueOf(hertz).setScale(9, RoundingMode.HALF_EVEN));
    }

    /// The rate that a text states, with or without its unit; nothing when it states none.
    static Optional<FrameRate> parse(String text) {
        if (text.strip().equalsIgnoreCase(VARIABLE)) {
            return Optional.of(new Variable());
        }
        return Steady.read(text.strip());
    }
}
