package org.measuredmile.comparison.standing;

import java.math.BigDecimal;
import java.util.Optional;

/// A band of numbers, both ends belonging to it: `400-600`, `400-`, `-600`, or one number alone.
///
/// Shape: an end that is missing bounds nothing; the low end is never above the high one.
public record Band(Optional<BigDecimal> low, Optional<BigDecimal> high) {
    private static final String NUMBER = "\\d{1,9}(\\.\\d{1,6})?";

    /// Reads a band; empty where the text is none.
    public static Optional<Band> parse(String text) {
        if (text.matches(NUMBER)) {
            var alone = Optional.of(new BigDecimal(text));
            return Optional.of(new Band(alone, alone));
        }
        int dash = text.indexOf('-');
        if (dash < 0 || text.length() == 1) {
            return Optional.empty();
        }
        String low = text.substring(0, dash);
        String high = text.substring(dash + 1);
        boolean isReadable = isEnd(low) && isEnd(high);
        return isReadable ? Optional.of(new Band(end(low), end(high))).filter(Band::isInOrder) : Optional.empty();
    }

    private static boolean isEnd(String text) {
        return text.isEmpty() || text.matches(NUMBER);
    }

    private static Optional<BigDecimal> end(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(text));
    }

    private boolean isInOrder() {
        return low.flatMap(first -> high.map(last -> first.compareTo(last) <= 0))
                .orElse(true);
    }

    /// Whether a number lies in the band, compared as the decimal that it prints as.
    public boolean holds(double number) {
        var exact = BigDecimal.valueOf(number);
        return low.filter(end -> exact.compareTo(end) < 0).isEmpty()
                && high.filter(end -> exact.compareTo(end) > 0).isEmpty();
    }

    /// The band as it is written, always in the same way.
    public String text() {
        if (low.isPresent() && low.equals(high)) {
            return low.get().toPlainString();
        }
        return low.map(BigDecimal::toPlainString).orElse("") + "-"
                + high.map(BigDecimal::toPlainString).orElse("");
    }

    /// The band in words: `400 to 600`, `400 or more`, `up to 600`.
    public String words() {
        if (low.isEmpty()) {
            return "up to " + high.map(BigDecimal::toPlainString).orElse("");
        }
        String from = low.get().toPlainString();
        if (high.isEmpty()) {
            return from + " or more";
        }
        return low.equals(high) ? from : from + " to " + high.get().toPlainString();
    }
}
