package org.measuredmile.comparison.shortlist;

import java.util.Locale;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.recording.day.Variant;

/// One thing a reader wants of a bike.
///
/// Shape: `text` is the wish as it is printed back, which reads back as the same wish.
public sealed interface Wish {
    String text();

    /// Which side of a limit is wanted.
    enum Side {
        LESS("<"),
        AT_MOST("<="),
        MORE(">"),
        AT_LEAST(">=");

        private final String sign;

        Side(String sign) {
            this.sign = sign;
        }

        String sign() {
            return sign;
        }

        boolean wantsLess() {
            return this == LESS || this == AT_MOST;
        }

        /// Whether an exactly known value is on this side.
        boolean holds(double value, double limit) {
            return switch (this) {
                case LESS -> value < limit;
                case AT_MOST -> value <= limit;
                case MORE -> value > limit;
                case AT_LEAST -> value >= limit;
            };
        }
    }

    /// The bike moves off on a grade with the rider and holds a walking pace there, by its own drive.
    ///
    /// Unit: grade as rise over run.
    record Climbs(double grade, String text) implements Wish {}

    /// A measured figure lies on one side of a limit.
    ///
    /// Unit: `limitSi` in the SI unit of the figure. `asked` names the keys of the variant that are stated; the
    /// others
    /// follow from what the bikes have.
    record OfFigure(String name, String figure, Variant asked, Side side, double limitSi, String text)
            implements Wish {}

    /// The price, as stated by the seller, lies on one side of a limit; `currency` is empty where none was written.
    record OfPrice(Side side, double amount, String currency, String text) implements Wish {}

    /// Something the maker claims lies on one side of a limit.
    record OfClaim(String item, QuantityKind kind, Side side, double limitSi, String text) implements Wish {}

    /// A fact in words, or yes and no.
    record OfFact(Fact fact, String wanted, String text) implements Wish {}

    /// Facts that are compared as words.
    enum Fact {
        CATEGORY,
        MAKER,
        DRIVE,
        SENSOR,
        THROTTLE;

        String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
