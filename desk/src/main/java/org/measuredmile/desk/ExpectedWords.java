package org.measuredmile.desk;

import org.measuredmile.comparison.expected.Coordinate;
import org.measuredmile.comparison.expected.Expectation;
import org.measuredmile.comparison.expected.ExpectedLine.Bend;
import org.measuredmile.comparison.expected.JudgedBike;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Rounding;

/// The sentences of an expected-value line, alike on the command line and on its page.
public final class ExpectedWords {
    private ExpectedWords() {}

    /// Where a bike stands across: with its uncertainty where it was measured.
    public static String across(Coordinate.Known known, QuantityKind kind, QuantityPrinter printer) {
        // 1.96: that of a normal distribution, as the coordinate tells no degrees of freedom.
        return printer.figure(known.value(), 1.959964 * known.standard(), kind).text();
    }

    /// The slope with its interval, in the units shown: `0.061 mi per Wh (95 %: 0.048 to 0.075)`.
    public static String slope(Expectation.Fitted fitted, QuantityPrinter printer) {
        var line = fitted.line();
        var up = line.figure().kind().shown(printer.system());
        var across = line.across().kind().shown(printer.system());
        boolean straight = line.bend() == Bend.STRAIGHT;
        double oneAcross = straight ? across.differenceToSi(1) : 1 / across.toSi(1);
        double factor = up.differenceFromSi(1) * oneAcross;
        var interval =
                new Interval(fitted.slope95().low() * factor, fitted.slope95().high() * factor);
        String per = straight ? " per " + across.symbol() : " times one over " + across.symbol();
        return "slope " + digits(fitted.slope() * factor) + " " + up.symbol() + per + " (95 %: "
                + digits(interval.low())
                + " to " + digits(interval.high()) + "), the median of the slopes between all pairs of bikes; "
                + line.bend().words();
    }

    private static String digits(double value) {
        return QuantityPrinter.digits(Rounding.toSignificant(value, 3));
    }

    /// What the band is, and how many bikes lie outside it by chance alone.
    public static String band(Expectation.Fitted fitted) {
        int n = fitted.bikes().size();
        long outside = fitted.outside().size();
        return "the band holds 95 of 100 further bikes measured as well as these " + n + "; " + outside + " of " + n
                + " lie outside, by chance alone it would be about "
                + Rounding.toDecimals(0.05 * n, 0) + "; nothing is said beyond these bikes' range";
    }

    /// How a bike lies to the band, in words.
    public static String place(JudgedBike bike) {
        String side = bike.isAbove() ? "above the band" : "below the band";
        return switch (bike.place()) {
            case INSIDE -> "inside the band";
            case OUTSIDE_BUT_REACHING -> side + ", but its own interval reaches into it";
            case OUTSIDE -> side + " with its whole interval";
        };
    }
}
