package org.measuredmile.publication.chart;

import org.measuredmile.quantity.Dimension;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.Unit;
import org.measuredmile.quantity.UnitSystem;

/// What a chart's numbers are and which system they are shown in first.
public record Scale(QuantityKind kind, UnitSystem system) {
    public Unit unit() {
        return kind.shown(system);
    }

    /// The same quantity in the other system.
    public Scale other() {
        return new Scale(kind, system.other());
    }

    /// Whether the other system has a unit of its own for it.
    public boolean hasOther() {
        return other().unit() != unit();
    }

    public QuantityPrinter printer() {
        return QuantityPrinter.desk(system);
    }

    double shown(double si) {
        return unit().fromSi(si);
    }

    String symbol() {
        return unit().symbol();
    }

    /// Round ticks over a range of SI values.
    Ticks ticks(double lowSi, double highSi, int most) {
        double low = shown(lowSi);
        double high = shown(highSi);
        boolean byTheClock = kind.si().dimension() == Dimension.TIME && high - low > 60;
        return byTheClock ? Ticks.ofClock(low, high, most) : Ticks.covering(low, high, most);
    }
}
