package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.archive.ledger.LedgerEntry;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.quantity.Unit;
import org.measuredmile.trial.FigureSpec;

/// What an archive holds of one figure, as entrants of a standing, and how their results are printed.
public final class Entrants {
    private Entrants() {}

    /// The latest accepted figure of each bike, configuration and variant, and with it the results of the ledgers,
    /// so that a standing can say how many it leaves out.
    public static List<Entrant> of(Archive archive, FigureSpec figure, boolean withLedger) {
        var makers = new TreeMap<String, String>();
        archive.bikes().forEach(bike -> makers.put(bike.id(), bike.maker()));
        var entrants = new ArrayList<Entrant>();
        archive.figures(FigureQuery.standing(figure.id()))
                .forEach(stored -> entrants.add(entrant(stored, makers.getOrDefault(stored.bike(), ""))));
        if (withLedger) {
            archive.ledger(figure.id()).forEach(result -> entrants.add(entrant(result)));
        }
        return entrants;
    }

    private static Entrant entrant(LedgerEntry entry) {
        return new Entrant(
                entry.result().bike(),
                entry.result().bike(),
                entry.result().category(),
                "",
                "",
                entry.date(),
                entry.variant(),
                Entrant.LEDGER,
                entry.value(),
                entry.anyDay(),
                entry.budget());
    }

    private static Entrant entrant(StoredFigure stored, String maker) {
        var figure = stored.figure();
        return new Entrant(
                stored.bike(),
                stored.title(),
                stored.category(),
                maker,
                stored.drive(),
                stored.date(),
                figure.key().variant(),
                figure.version(),
                figure.value(),
                figure.anyDay(),
                figure.budget());
    }

    /// An entrant's result with the half-width of its any-day interval. A length of the ledger is printed as it is
    /// read off a tape, in feet and half inches, where feet are shown.
    public static String printed(FigureSpec figure, Entrant entrant, QuantityPrinter printer) {
        double halfWidth = entrant.anyDay().interval95().halfWidth();
        var printed = printer.figure(entrant.value(), halfWidth, figure.kind());
        boolean isByTape = entrant.isFromLedger() && figure.kind().shown(printer.system()) == Unit.FOOT;
        return isByTape
                ? ReadingPrinter.feetAndHalfInches(entrant.value()) + " ± " + printed.plusMinus() + " " + printed.unit()
                : printed.text();
    }
}
