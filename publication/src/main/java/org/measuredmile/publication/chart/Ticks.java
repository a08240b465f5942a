package org.measuredmile.publication.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.measuredmile.quantity.QuantityPrinter;

/// Round values for an axis: 1, 2, 2.5 or 5 times a power of ten apart; by the clock, whole minutes and their parts.
///
/// Shape: rising, evenly spaced, at least two; the first is at or below the range asked for, the last at or above it.
/// Unit: that of the values given.
public record Ticks(List<Tick> ticks) {
    private static final List<BigDecimal> MANTISSAS =
            List.of(BigDecimal.ONE, BigDecimal.TWO, new BigDecimal("2.5"), new BigDecimal("5"));
    private static final int[] CLOCK_STEPS_S = {
        5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 18_000, 36_000, 86_400
    };

    /// A place on the axis and the number printed there.
    public record Tick(double value, String label) {}

    public Ticks {
        ticks = List.copyOf(ticks);
    }

    /// The closest round ticks that cover a range with no more than `most` of them.
    ///
    /// Valid: finite ends, `low <= high`, `most` of 3 and more. A range without width is widened.
    public static Ticks covering(double low, double high, int most) {
        if (!Double.isFinite(low) || !Double.isFinite(high) || low > high || most < 3) {
            throw new IllegalArgumentException("ticks from " + low + " to " + high + ", at most " + most);
        }
        double least = Math.max(Math.abs(low), Math.abs(high)) * 1e-6;
        double room = high - low > least ? 0 : Math.max(Math.abs(low) * 0.05, 0.5);
        double from = low - room;
        double to = high + room;
        int power = (int) Math.floor(StrictMath.log10((to - from) / most)) - 1;
        while (true) {
            for (BigDecimal mantissa : MANTISSAS) {
                BigDecimal step = mantissa.scaleByPowerOfTen(power);
                BigDecimal first = whole(from, step, RoundingMode.FLOOR);
                BigDecimal last = whole(to, step, RoundingMode.CEILING);
                if (last.subtract(first).intValueExact() < most) {
                    return of(first, last, step);
                }
            }
            power++;
        }
    }

    /// Ticks over seconds that people read by the clock.
    ///
    /// Valid: as [#covering]; ranges of up to some weeks.
    static Ticks ofClock(double low, double high, int most) {
        for (int step : CLOCK_STEPS_S) {
            long first = (long) Math.floor(low / step);
            long last = (long) Math.ceil(high / step);
            if (last - first < most) {
                var ticks = new ArrayList<Tick>();
                for (long i = first; i <= last; i++) {
                    ticks.add(new Tick(i * (double) step, clock(i * step, step)));
                }
                return new Ticks(ticks);
            }
        }
        return covering(low, high, most);
    }

    private static String clock(long seconds, int step) {
        long magnitude = Math.abs(seconds);
        String sign = seconds < 0 ? "\u2212" : "";
        if (step >= 600) {
            return sign + magnitude / 3600 + "\u00a0h\u00a0" + twoDigits(magnitude / 60 % 60);
        }
        return sign + magnitude / 60 + ":" + twoDigits(magnitude % 60);
    }

    private static String twoDigits(long number) {
        return number < 10 ? "0" + number : Long.toString(number);
    }

    private static BigDecimal whole(double value, BigDecimal step, RoundingMode mode) {
        return BigDecimal.valueOf(value).divide(step, 0, mode);
    }

    private static Ticks of(BigDecimal first, BigDecimal last, BigDecimal step) {
        var ticks = new ArrayList<Tick>();
        for (BigDecimal i = first; i.compareTo(last) <= 0; i = i.add(BigDecimal.ONE)) {
            BigDecimal value = i.multiply(step);
            BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
            BigDecimal printed = plain.scale() < 0 ? plain.setScale(0) : plain;
            ticks.add(new Tick(value.doubleValue(), QuantityPrinter.digits(printed)));
        }
        return new Ticks(ticks);
    }

    public double low() {
        return ticks.getFirst().value();
    }

    public double high() {
        return ticks.getLast().value();
    }

    /// Only the ticks that lie in a range, which keeps its ends where they are.
    List<Tick> within(double from, double to) {
        double slack = (to - from) * 1e-9;
        return ticks.stream()
                .filter(tick -> tick.value() >= from - slack && tick.value() <= to + slack)
                .toList();
    }
}
