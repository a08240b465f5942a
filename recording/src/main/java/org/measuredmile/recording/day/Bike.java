package org.measuredmile.recording.day;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.quantity.Parsed;
import org.measuredmile.quantity.QuantityKind;
import org.measuredmile.quantity.QuantityText;

/// A bike as its folder describes it.
///
/// Shape: `drive` is `throttle`, `pedal` or `both`; `sensor` is `cadence`, `torque` or `unknown`; text is empty where
/// nothing was written.
public record Bike(
        String id,
        String maker,
        String model,
        OptionalInt modelYear,
        String category,
        String drive,
        String sensor,
        OptionalInt levels,
        String wheelSize,
        Price price,
        Loan loan,
        List<SpecLine> spec) {
    public Bike {
        spec = List.copyOf(spec);
    }

    /// What it costs where and when.
    public record Price(OptionalDouble amount, String currency, String market, String date) {
        public static final Price UNKNOWN = new Price(OptionalDouble.empty(), "", "", "");
    }

    /// How it came to the crew.
    public record Loan(String acquired, String from, String received, String dueBack, String disclosure) {
        public static final Loan UNKNOWN = new Loan("", "", "", "", "");
    }

    /// A bike of which only the id is known.
    public static Bike known(String id) {
        return new Bike(
                id,
                "",
                "",
                OptionalInt.empty(),
                "",
                "",
                "unknown",
                OptionalInt.empty(),
                "",
                Price.UNKNOWN,
                Loan.UNKNOWN,
                List.of());
    }

    /// What the specification claims of an item, in the SI unit of its kind; empty where no line of it can be read.
    public OptionalDouble claimed(String item, QuantityKind kind) {
        return spec.stream()
                .filter(line -> line.item().equals(item))
                .map(line -> QuantityText.parse((line.claimed() + " " + line.unit()).strip(), kind))
                .filter(Parsed.Value.class::isInstance)
                .mapToDouble(read -> ((Parsed.Value) read).si())
                .findFirst();
    }

    /// Maker and model, or the id when neither is known.
    public String title() {
        String title = (maker + " " + model).strip();
        return title.isEmpty() ? id : title;
    }
}
