package org.measuredmile.desk;

import java.util.Optional;
import org.measuredmile.comparison.standing.Spread;
import org.measuredmile.quantity.Printed;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.trial.FigureSpec;

/// How the values of a population lie, as text in one system of units.
///
/// Shape: to the place of the second digit of a fifth of the standard deviation.
public record SpreadWords(FigureSpec figure, Spread spread, QuantityPrinter printer) {
    /// The mean, a quantile or an end.
    public String at(double si) {
        return alone(printer.figure(si, step(), figure.kind()));
    }

    /// Empty for a single bike.
    public Optional<String> standardDeviation() {
        if (spread.standardDeviation().isEmpty()) {
            return Optional.empty();
        }
        double si = spread.standardDeviation().getAsDouble();
        String signed = alone(printer.difference(si, step(), figure.kind()));
        return Optional.of(signed.startsWith("+") ? signed.substring(1) : signed);
    }

    private double step() {
        return spread.standardDeviation().orElse(0) / 5;
    }

    private static String alone(Printed printed) {
        return new Printed(printed.value(), "", printed.unit()).text();
    }
}
