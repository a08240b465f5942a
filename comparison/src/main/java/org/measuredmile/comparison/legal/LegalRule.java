package org.measuredmile.comparison.legal;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/// One thing that a class asks for.
///
/// Shape: `limit` is there for the operators that compare numbers. `otherwise` is a wider limit that holds under a
/// condition nobody records, so that only what lies beyond it is outside. `ofMarked` is the factor on the speed that is
/// marked on the bike, where the limit hangs on that; `riderKg` the rider that the text fixes, where it does.
public record LegalRule(
        Measured measured,
        Operator operator,
        Optional<LegalLimit> limit,
        Optional<LegalLimit> otherwise,
        Optional<BigDecimal> ofMarked,
        OptionalDouble riderKg,
        String section,
        String asks) {
    /// What is compared.
    public enum Measured {
        CUT_OFF("cut-off", "cut-off speed"),
        MOTOR_ALONE("motor-alone", "speed by the motor alone"),
        THROTTLE("throttle", "driving without pedalling"),
        MOTOR_POWER("motor-power", "motor power, as claimed or marked"),
        PEDALS("pedals", "pedals"),
        RUN_ON("run-on", "way driven after pedalling stops");

        private final String id;
        private final String words;

        Measured(String id, String words) {
            this.id = id;
            this.words = words;
        }

        public String id() {
            return id;
        }

        public String words() {
            return words;
        }
    }

    /// How the text compares.
    public enum Operator {
        BELOW("below", "below"),
        AT_MOST("at-most", "at most"),
        FITTED("fitted", "fitted"),
        ABSENT("absent", "absent"),
        /// The text does not settle it for a bike that has the thing.
        UNCLEAR("unclear", "not settled by the text");

        private final String id;
        private final String words;

        Operator(String id, String words) {
            this.id = id;
            this.words = words;
        }

        public String id() {
            return id;
        }

        public String words() {
            return words;
        }
    }

    /// The limit as its text has it: `below 20 mph`.
    public String limitWords() {
        return limit.map(one -> operator.words() + " " + one.text()
                        + otherwise
                                .map(wider -> ", " + wider.text() + " at the widest")
                                .orElse(""))
                .orElse(operator.words());
    }
}
