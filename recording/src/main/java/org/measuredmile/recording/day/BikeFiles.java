package org.measuredmile.recording.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.measuredmile.quantity.Interval;

/// Reads a bike's folder: bike.yaml and spec.csv.
final class BikeFiles {
    static final List<String> DRIVES = List.of("throttle", "pedal", "both");
    static final List<String> SENSORS = List.of("cadence", "torque", "unknown");
    static final List<String> ACQUIRED = List.of("lent", "bought");
    private static final int FIRST_YEAR = 1890;
    private static final int LAST_YEAR = 2200;
    private static final int MOST_LEVELS = 99;

    private BikeFiles() {}

    static Optional<Bike> read(YamlFields from, List<SpecLine> spec) {
        Optional<String> id = from.needed("id", "the bike's id, as ostrelle-lamplight");
        String maker = from.text("maker");
        String model = from.text("model");
        var year = from.wholeNumber("modelYear", FIRST_YEAR, LAST_YEAR);
        String category = from.text("category");
        String drive = from.word("drive", DRIVES).orElse("");
        String sensor = from.word("sensor", SENSORS).orElse("unknown");
        var levels = from.wholeNumber("levels", 0, MOST_LEVELS);
        String wheelSize = from.text("wheelSize");
        Bike.Price price = price(from.mapping("price"));
        var loan = new Bike.Loan(
                from.word("acquired", ACQUIRED).orElse(""),
                from.text("from"),
                date(from, "received"),
                date(from, "dueBack"),
                from.text("disclosure"));
        from.nameUnknown();
        return id.map(one ->
                new Bike(one, maker, model, year, category, drive, sensor, levels, wheelSize, price, loan, spec));
    }

    private static Bike.Price price(YamlFields from) {
        if (from.isEmpty()) {
            return Bike.Price.UNKNOWN;
        }
        var amount = from.within(
                "amount",
                FieldText.plainNumber(from.text("amount"), from.at("amount")),
                new Interval(0, Double.MAX_VALUE),
                "0 or more");
        var price = new Bike.Price(amount, from.text("currency"), from.text("market"), date(from, "date"));
        from.nameUnknown();
        return price;
    }

    private static String date(YamlFields from, String key) {
        return from.date(key).map(Object::toString).orElse("");
    }

    static List<SpecLine> spec(FileText text, Faults faults) {
        Optional<CsvTable> table = CsvTable.read(text, DayFiles.SPEC_COLUMNS, List.of("item"), faults);
        if (table.isEmpty()) {
            return List.of();
        }
        List<SpecLine> spec = new ArrayList<>();
        for (CsvTable.Row row : table.get().rows()) {
            var cells = new Cells(table.get(), row, faults);
            Optional<String> item = cells.needed("item", "what the line is about, as mass");
            if (item.isPresent()) {
                spec.add(new SpecLine(
                        item.get(),
                        cells.text("claimed"),
                        cells.text("unit"),
                        cells.text("conditions"),
                        cells.text("source"),
                        cells.text("date"),
                        cells.text("seen"),
                        cells.text("photo"),
                        cells.text("note"),
                        cells.place()));
            }
        }
        return spec;
    }
}
