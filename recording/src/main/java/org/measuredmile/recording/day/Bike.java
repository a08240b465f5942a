package org.measuredmile.recording.day;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

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

    /// Maker and model, or the id when neither is known.
    public String title() {
        String title = (maker + " " + model).strip();
        return title.isEmpty() ? id : title;
    }
}
