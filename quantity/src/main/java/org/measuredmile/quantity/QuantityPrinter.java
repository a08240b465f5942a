package org.measuredmile.quantity;

import java.math.BigDecimal;
import org.measuredmile.quantity.Rounding.Rounded;

/// Prints quantities for people of one system, with the digits of one kind of page.
///
/// Shape: values and half-widths go in in SI units, unrounded; each is converted, then rounded once. No-break
/// spaces hold a number and its unit together; nothing depends on a locale.
/// Error: IllegalArgumentException for what is not a finite number, and for a negative half-width.
public record QuantityPrinter(UnitSystem system, Digits digits) {
    private static final String MINUS = "\u2212";

    /// How many digits a half-width is given.
    public enum Digits {
        /// Two: the crew's pages, tables, exports.
        DESK,
        /// One, or two when it begins with 1: published pages and prose.
        PROSE,
        /// One, or 1½ where it begins with 1: what is said aloud.
        SPEECH
    }

    /// A quantity in the crew's own system and in the other.
    public record InBoth(Printed first, Printed other) {}

    public static QuantityPrinter desk(UnitSystem system) {
        return new QuantityPrinter(system, Digits.DESK);
    }

    public static QuantityPrinter prose(UnitSystem system) {
        return new QuantityPrinter(system, Digits.PROSE);
    }

    public static QuantityPrinter speech(UnitSystem system) {
        return new QuantityPrinter(system, Digits.SPEECH);
    }

    /// The same digits in the other system.
    public QuantityPrinter other() {
        return new QuantityPrinter(system.other(), digits);
    }

    /// A value with the half-width of its interval: `21.40 ± 0.61 ft`, `1:19.4 ± 1.8 s`, `4 h 38 ± 12 min`.
    ///
    /// Shape: with a half-width of 0 the value stands alone, to six digits at most.
    public Printed figure(double si, double halfWidthSi, QuantityKind kind) {
        if (kind.si().dimension() == Dimension.TIME) {
            return DurationText.print(si, halfWidthSi, this);
        }
        Unit unit = kind.shown(system);
        return of(round(unit.decimalFromSi(si), unit.differenceDecimalFromSi(halfWidthSi)), unit);
    }

    /// A value with its half-width in a given unit, converted and rounded once, as numbers still.
    public Rounded rounded(double si, double halfWidthSi, Unit unit) {
        return round(unit.decimalFromSi(si), unit.differenceDecimalFromSi(halfWidthSi));
    }

    /// The same in this system and in the other, each rounded by its own half-width.
    public InBoth figureInBoth(double si, double halfWidthSi, QuantityKind kind) {
        return new InBoth(figure(si, halfWidthSi, kind), other().figure(si, halfWidthSi, kind));
    }

    /// A difference of two values, with its sign: `+0.82 ± 0.63 ft`; offsets of temperature scales drop out.
    public Printed difference(double si, double halfWidthSi, QuantityKind kind) {
        Printed plain;
        if (kind.si().dimension() == Dimension.TIME) {
            plain = figure(si, halfWidthSi, kind);
        } else {
            Unit unit = kind.shown(system);
            plain = of(round(unit.differenceDecimalFromSi(si), unit.differenceDecimalFromSi(halfWidthSi)), unit);
        }
        boolean signed =
                plain.value().startsWith(MINUS) || plain.value().chars().allMatch(c -> "0.:".indexOf(c) >= 0);
        return signed ? plain : new Printed("+" + plain.value(), plain.plusMinus(), plain.unit());
    }

    /// A value without an interval, to a stated number of digits after the point; times of a minute and more by
    /// the clock.
    public Printed value(double si, QuantityKind kind, int decimals) {
        Unit unit = kind.shown(system);
        return unit == Unit.SECOND ? clock(Rounding.toDecimals(si, decimals)) : in(unit, si, decimals);
    }

    /// A value in a given unit, to a stated number of digits after the point.
    public static Printed in(Unit unit, double si, int decimals) {
        return new Printed(digits(Rounding.toDecimals(unit.decimalFromSi(si), decimals)), "", unit.symbol());
    }

    /// An interval in words: `from 20.8 to 22.0 ft`, its ends rounded to the place of its half-width in prose;
    /// one value where both ends print alike.
    public String interval(Interval si, QuantityKind kind) {
        Unit unit = kind.shown(system);
        BigDecimal halfWidth = unit.differenceDecimalFromSi(si.halfWidth());
        QuantityPrinter prose = prose(system);
        BigDecimal low = prose.round(unit.decimalFromSi(si.low()), halfWidth).value();
        BigDecimal high = prose.round(unit.decimalFromSi(si.high()), halfWidth).value();
        Printed from = unit == Unit.SECOND ? clock(low) : new Printed(digits(low), "", unit.symbol());
        Printed to = unit == Unit.SECOND ? clock(high) : new Printed(digits(high), "", unit.symbol());
        if (from.equals(to)) {
            return to.text();
        }
        String fromText = from.unit().equals(to.unit()) ? from.number() : from.text();
        return "from" + Printed.NO_BREAK_SPACE + fromText + " to" + Printed.NO_BREAK_SPACE + to.text();
    }

    /// A lower bound: `at least 25.0 mi`.
    public String atLeast(double si, QuantityKind kind, int decimals) {
        return "at least" + Printed.NO_BREAK_SPACE + value(si, kind, decimals).text();
    }

    /// An upper bound: `at most 25.0 mi`.
    public String atMost(double si, QuantityKind kind, int decimals) {
        return "at most" + Printed.NO_BREAK_SPACE + value(si, kind, decimals).text();
    }

    /// A chance in whole per cent: `72 %`, `over 99 %`, `under 1 %`.
    ///
    /// Valid: from 0 to 1; anything else is an IllegalArgumentException.
    public static String chance(double probability) {
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("chance " + probability + " is not from 0 to 1");
        }
        String perCent = Printed.NO_BREAK_SPACE + "%";
        if (probability > 0.99) {
            return "over" + Printed.NO_BREAK_SPACE + "99" + perCent;
        }
        if (probability < 0.01) {
            return "under" + Printed.NO_BREAK_SPACE + "1" + perCent;
        }
        return Rounding.toDecimals(Unit.PER_CENT.decimalFromSi(probability), 0) + perCent;
    }

    /// A value that is known exactly, to six digits without the zeros at its end.
    private static BigDecimal shortened(BigDecimal value) {
        BigDecimal stripped = Rounding.toSignificant(value.doubleValue(), 6).stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private static Printed clock(BigDecimal seconds) {
        boolean plain = seconds.abs().compareTo(BigDecimal.valueOf(60)) < 0;
        return new Printed(DurationText.clock(seconds), "", plain ? Unit.SECOND.symbol() : "");
    }

    Rounded round(BigDecimal value, BigDecimal halfWidth) {
        if (halfWidth.signum() == 0) {
            return new Rounded(shortened(value), BigDecimal.ZERO);
        }
        return switch (digits) {
            case DESK -> Rounding.forDesk(value, halfWidth);
            case PROSE -> Rounding.forProse(value, halfWidth);
            case SPEECH -> Rounding.forSpeech(value, halfWidth);
        };
    }

    private static Printed of(Rounded rounded, Unit unit) {
        boolean exact = rounded.plusMinus().signum() == 0;
        return new Printed(digits(rounded.value()), exact ? "" : digits(rounded.plusMinus()), unit.symbol());
    }

    /// A decimal as it is printed: true minus, comma between thousands from four digits on, no sign on a zero.
    public static String digits(BigDecimal number) {
        String plain = number.abs().toPlainString();
        int point = plain.indexOf('.');
        int whole = point < 0 ? plain.length() : point;
        var printed = new StringBuilder(plain);
        for (int i = whole - 3; i > 0; i -= 3) {
            printed.insert(i, ',');
        }
        return number.signum() < 0 ? MINUS + printed : printed.toString();
    }
}
