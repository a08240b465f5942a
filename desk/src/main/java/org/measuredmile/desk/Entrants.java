package org.measuredmile.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.measuredmile.archive.Archive;
import org.measuredmile.archive.FigureQuery;
import org.measuredmile.archive.StoredFigure;
import org.measuredmile.archive.ledger.LedgerEntry;
import org.measuredmile.comparison.standing.Entrant;
import org.measuredmile.comparison.standing.Traits;
import org.measuredmile.quantity.QuantityPrinter;
import org.measuredmile.quantity.ReadingPrinter;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.trial.FigureSpec;

/// What an archive holds of one figure, as entrants of a standing, and how their results are printed.
public final class Entrants {
    private Entrants() {}

    /// The latest accepted figure of each bike, configuration and variant, and with it the results of the
    /// ledgers when they are asked for.
    public static List<Entrant> of(Archive archive, FigureSpec figure, boolean withLedger) {
        var all = of(archive, figure, archive.described());
        return withLedger
                ? all
                : all.stream().filter(entrant -> !entrant.isFromLedger()).toList();
    }

    /// The same with the ledgers', so that a standing can say how many it leaves out.
    ///
    /// Shape: `bikes` are the archive's, by id.
    static List<Entrant> of(Archive archive, FigureSpec figure, SortedMap<String, Bike> bikes) {
        var entrants = new ArrayList<Entrant>();
        archive.figures(FigureQuery.standing(figure.id()))
                .forEach(stored -> entrants.add(entrant(stored, bike(bikes, stored.bike()))));
        archive.ledger(figure.id())
                .forEach(result ->
                        entrants.add(entrant(result, bike(bikes, result.result().bike()))));
        return List.copyOf(entrants);
    }

    private static Bike bike(SortedMap<String, Bike> bikes, String id) {
        var known = bikes.get(id);
        return known == null ? Bike.known(id) : known;
    }

    /// A result of the ledger; what its line leaves open is taken from the bike's folder where there is one.
    private static Entrant entrant(LedgerEntry entry, Bike bike) {
        String category = entry.result().category();
        return new Entrant(
                bike.id(),
                bike.title(),
                category.isEmpty() ? bike.category() : category,
                bike.maker(),
                bike.drive(),
                entry.date(),
                entry.variant(),
                Entrant.LEDGER,
                entry.value(),
                entry.anyDay(),
                entry.budget(),
                new Entrant.Origin(entry.ledger(), ""),
                Traits.of(bike));
    }

    private static Entrant entrant(StoredFigure stored, Bike bike) {
        var figure = stored.figure();
        return new Entrant(
                stored.bike(),
                stored.title(),
                stored.category(),
                bike.maker(),
                stored.drive(),
                stored.date(),
                figure.key().variant(),
                figure.version(),
                figure.value(),
                figure.anyDay(),
                figure.budget(),
                new Entrant.Origin(stored.day(), stored.configuration()),
                Traits.of(bike));
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
