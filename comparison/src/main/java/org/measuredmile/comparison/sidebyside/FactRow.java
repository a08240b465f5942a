package org.measuredmile.comparison.sidebyside;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.Rounding;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;

/// What makers say of the bikes, as they say it: nothing of it was measured.
///
/// Shape: `words` in the order of the bikes, empty text where nothing is stated.
public record FactRow(String item, String title, List<String> words) {
    /// Items of the specification, in the order a buyer asks, and how they are called.
    private static final List<String[]> ITEMS = List.of(
            new String[] {"class", "Class on its label"},
            new String[] {"class-label", "Class on its label"},
            new String[] {"battery-energy", "Battery, claimed"},
            new String[] {"motor-power", "Motor, claimed"},
            new String[] {"mass", "Mass, claimed"},
            new String[] {"permitted-total", "Permitted total, claimed"},
            new String[] {"range", "Range, claimed"});

    public FactRow {
        words = List.copyOf(words);
    }

    /// The rows in which at least one bike states something.
    static List<FactRow> of(List<TestedBike> bikes) {
        var rows = new ArrayList<FactRow>();
        rows.add(row("price", "Price", bikes, FactRow::price));
        rows.add(row("category", "Kind", bikes, Bike::category));
        rows.add(row("wheel-size", "Wheels", bikes, Bike::wheelSize));
        for (String[] item : ITEMS) {
            rows.add(row(item[0], item[1], bikes, bike -> claimed(bike, item[0])));
        }
        rows.removeIf(row -> row.words().stream().allMatch(String::isEmpty));
        return rows;
    }

    private static FactRow row(String item, String title, List<TestedBike> bikes, Function<Bike, String> words) {
        return new FactRow(
                item, title, bikes.stream().map(TestedBike::bike).map(words).toList());
    }

    /// Amount, currency, market and date, as stated: `1890 USD, US, 2031-01-15`.
    public static String price(Bike bike) {
        var price = bike.price();
        if (price.amount().isEmpty()) {
            return "";
        }
        double amount = price.amount().getAsDouble();
        int digits = amount == Math.rint(amount) ? 0 : 2;
        String words = Rounding.toDecimals(amount, digits).toPlainString() + " " + price.currency();
        return words.strip() + more(price.market()) + more(price.date());
    }

    private static String more(String words) {
        return words.isEmpty() ? "" : ", " + words;
    }

    private static String claimed(Bike bike, String item) {
        return first(bike, item)
                .map(line -> (line.claimed() + " " + line.unit()).strip())
                .orElse("");
    }

    private static Optional<SpecLine> first(Bike bike, String item) {
        return bike.spec().stream()
                .filter(line -> line.item().equals(item) && !line.claimed().isBlank())
                .findFirst();
    }
}
