package org.measuredmile.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.measuredmile.quantity.Unit;
import org.measuredmile.recording.day.Bike;

/// The invented bikes, each with what its maker says and what it really is.
///
/// Shape: one line a bike, in four categories: cargo, step-through, folding, commuter.
/// Unit of the table: price in dollars; mass, claimed mass and battery in kilograms; deceleration in m/s²; take-up and
/// build-up in seconds; speeds in mph; power in watts; claimed range in miles; permitted total in kilograms.
public final class Fleet {
    private static final String TABLE = """
            Zornby Packhorse     |2031|cargo       |both |torque |5|20|5400|38.6|37.0| 4.1|5.99|0.09|0.24|20.0|19.6|750|65|200
            Tullimar Breakwater  |2031|cargo       |pedal|torque |4|24|6150|34.2|33.5| 3.6|6.50|0.08|0.21|20.0|   -|250|55|190
            Zornby Drayman       |2030|cargo       |both |cadence|5|20|3990|41.3|39.5| 5.0|5.54|0.11|0.27|20.0|20.2|750|50|210
            Corrowan Ferrylight  |2031|cargo       |both |torque |3|24|4850|33.1|32.0| 3.4|6.27|0.08|0.22|20.0|19.1|500|60|185
            Mirefoot Osier       |2030|cargo       |pedal|cadence|5|20|3200|29.8|28.9| 3.1|5.71|0.10|0.25|19.5|   -|350|45|170
            Hobbarn Wainscot     |2031|cargo       |both |cadence|7|20|2890|36.4|34.0| 4.3|5.38|0.12|0.28|20.4|20.6|750|70|180
            Ostrelle Lamplight   |2031|step-through|both |cadence|5|26|1890|27.5|26.3| 3.0|6.38|0.09|0.22|20.0|19.4|500|60|140
            Plimble Quayside     |2031|step-through|both |torque |4|27|2450|25.1|24.9| 2.8|6.78|0.08|0.20|20.0|19.8|350|50|140
            Haverdusk Shingle    |2030|step-through|pedal|torque |4|28|2990|22.9|22.5| 2.5|6.89|0.07|0.19|20.0|   -|250|70|135
            Mirefoot Samphire    |2031|step-through|both |cadence|5|26|1490|28.8|27.0| 3.2|5.88|0.11|0.26|20.3|20.1|500|40|136
            Skelloway Marram     |2031|step-through|both |cadence|9|26|1690|29.6|26.3| 3.3|6.05|0.10|0.25|20.8|20.7|750|55|150
            Ostrelle Candlewick  |2030|step-through|both |torque |5|27|2250|24.4|24.0| 2.7|6.66|0.08|0.21|20.0|19.0|500|58|140
            Vessenby Halfpenny   |2031|folding     |both |cadence|3|16|1290|18.9|17.9| 2.0|5.77|0.10|0.24|18.5|17.8|350|25|115
            Quorvane Sixpence    |2031|folding     |pedal|torque |4|20|2690|15.8|15.6| 1.6|6.16|0.08|0.21|19.8|   -|250|30|110
            Pellowick Sloe       |2030|folding     |both |cadence|5|20|1390|21.7|20.9| 2.4|5.66|0.11|0.25|20.1|19.9|500|35|120
            Vessenby Farthing    |2031|folding     |pedal|cadence|1|16| 990|14.6|14.2| 1.4|5.49|0.12|0.26|15.6|   -|250|20|105
            Plimble Satchel      |2030|folding     |both |torque |3|20|1990|19.4|19.0| 2.1|6.10|0.09|0.22|19.9|18.9|350|28|115
            Quorvane Thimble     |2031|folding     |both |cadence|3|14|1150|16.9|15.5| 1.8|5.26|0.12|0.28|15.9|15.8|250|18|100
            Corrowan Daybook     |2031|commuter    |pedal|torque |4|28|3350|20.8|21.3| 2.6|6.94|0.07|0.19|20.0|   -|250|75|135
            Hobbarn Withy        |2031|commuter    |both |cadence|5|27|1750|25.9|24.6| 2.9|6.22|0.10|0.24|20.2|19.7|500|50|140
            Skelloway Causeway   |2030|commuter    |both |torque |5|28|2390|23.7|23.3| 2.7|6.61|0.08|0.21|20.0|19.3|350|60|140
            Haverdusk Almanac    |2031|commuter    |pedal|torque |3|28|2790|19.6|19.4| 2.3|6.83|0.07|0.20|19.9|   -|250|65|130
            Tullimar Tideline    |2031|commuter    |both |torque |4|28|3100|22.2|22.0| 2.6|6.72|0.08|0.20|20.0|20.0|500|62|140
            Pellowick Bramble    |2030|commuter    |both |cadence|5|27|1590|26.7|25.0| 3.0|5.94|0.11|0.26|20.6|20.5|750|45|138
            """;
    private static final String MARKET = "US";
    /// When the makers' pages were read.
    static final String SPEC_DATE = "2031-01-15";
    private static final double LOWEST_LEVEL_SHARE = 0.55;
    private static final double HIGHEST_LEVEL_SHARE = 0.97;

    private Fleet() {}

    /// A bike of the fleet: what is written of it, and what it is.
    public record Member(Bike bike, BikeTruth truth) {}

    /// What the maker of a bike says, as its page has it.
    static FleetSpec.Facts says(String bike) {
        return TABLE.lines()
                .map(line -> row(line.split("\\|")))
                .filter(row -> row.id().equals(bike))
                .findFirst()
                .orElseThrow()
                .says();
    }

    /// All bikes, in the order of the table.
    public static List<Member> members() {
        List<Member> members = new ArrayList<>();
        TABLE.lines().forEach(line -> members.add(member(line.split("\\|"))));
        return List.copyOf(members);
    }

    private static Member member(String[] cells) {
        Row row = row(cells);
        return new Member(row.bike(), row.truth());
    }

    private static Row row(String[] cells) {
        String[] name = cells[0].strip().split(" ", 2);
        return new Row(Makers.id(name[0], name[1]), name[0], name[1], cells);
    }

    /// One line of the table.
    private record Row(String id, String maker, String model, String[] cells) {
        private String text(int column) {
            return cells[column].strip();
        }

        private double number(int column) {
            return Double.parseDouble(text(column));
        }

        private int levels() {
            return Integer.parseInt(text(5));
        }

        Bike bike() {
            var price = new Bike.Price(OptionalDouble.of(number(7)), "USD", MARKET, SPEC_DATE);
            var loan = new Bike.Loan("lent", maker, "", "", Makers.disclosure(maker));
            return new Bike(
                    id,
                    maker,
                    model,
                    OptionalInt.of(Integer.parseInt(text(1))),
                    text(2),
                    text(3),
                    text(4),
                    OptionalInt.of(levels()),
                    text(6) + " in",
                    price,
                    loan,
                    FleetSpec.of(says()));
        }

        FleetSpec.Facts says() {
            return new FleetSpec.Facts(
                    id,
                    text(2),
                    Integer.parseInt(text(6)),
                    number(9),
                    number(10),
                    Integer.parseInt(text(18)),
                    text(17),
                    Integer.parseInt(text(16)),
                    !text(15).equals("-"),
                    levels());
        }

        BikeTruth truth() {
            double cutOff = Unit.MILE_PER_HOUR.toSi(number(14));
            List<Double> levels = new ArrayList<>();
            for (int i = 0; i < levels(); i++) {
                double share = levels() == 1 ? 1 : (double) i / (levels() - 1);
                levels.add(cutOff * (LOWEST_LEVEL_SHARE + share * (HIGHEST_LEVEL_SHARE - LOWEST_LEVEL_SHARE)));
            }
            boolean hasThrottle = !text(15).equals("-");
            return new BikeTruth(
                    id,
                    number(8),
                    number(10),
                    text(2).equals("cargo") ? 0.41 : 0.44,
                    number(11),
                    number(12),
                    number(13),
                    levels,
                    cutOff * 0.42,
                    cutOff,
                    hasThrottle ? OptionalDouble.of(Unit.MILE_PER_HOUR.toSi(number(15))) : OptionalDouble.empty(),
                    number(16));
        }
    }
}
