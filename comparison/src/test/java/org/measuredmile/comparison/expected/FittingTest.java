package org.measuredmile.comparison.expected;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.measuredmile.comparison.TestedBike;
import org.measuredmile.quantity.Interval;
import org.measuredmile.quantity.budget.Uncertainty;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;
import org.measuredmile.recording.day.Variant;
import org.measuredmile.trial.Figure;
import org.measuredmile.trial.FigureKey;

class FittingTest {
    private static final ExpectedLine RANGE = Lines.of("range").orElseThrow();
    private static final double WATT_HOUR_J = 3600;
    private static final LocalDate DAY = LocalDate.of(2031, 4, 1);

    /// Twelve bikes of 300 to 850 Wh that go 100 m per watt-hour, each up to 1,100 m further or less far.
    private static List<TestedBike> fleet() {
        return new ArrayList<>(IntStream.range(0, 12)
                .mapToObj(i -> bike("bike-" + i, 300 + 50 * i, 100 * (300 + 50 * i) + 200 * (i * 5 % 12) - 1100))
                .toList());
    }

    private static TestedBike bike(String id, double wattHours, double rangeM) {
        return bike(id, wattHours, rangeM, Variant.of("level", "5").with("levelRole", "highest"));
    }

    private static TestedBike bike(String id, double wattHours, double rangeM, Variant variant) {
        var claim = new SpecLine("battery-energy", "" + wattHours, "Wh", "", "", "", "", "", "", Place.NOWHERE);
        var plain = Bike.known(id);
        var bike = new Bike(
                id,
                "Maker",
                id,
                OptionalInt.empty(),
                "cargo",
                "both",
                "torque",
                OptionalInt.empty(),
                "",
                plain.price(),
                plain.loan(),
                wattHours > 0 ? List.of(claim) : List.of());
        return new TestedBike(bike, List.of(result(id, rangeM, 500, variant)));
    }

    private static TestedBike.Result result(String id, double value, double standard, Variant variant) {
        var known = new Uncertainty(standard, 20, Interval.around(value, 2 * standard));
        var figure = new Figure(
                new FigureKey("range.distance", variant),
                RANGE.figure().kind(),
                "range",
                1,
                value,
                known,
                known,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        return new TestedBike.Result(figure, DAY, DAY + "-" + id, "", true);
    }

    private static Expectation.Fitted fitted(List<TestedBike> bikes) {
        return (Expectation.Fitted) Fitting.of(RANGE, bikes);
    }

    @Test
    void the_line_goes_through_the_middle_of_the_bikes() {
        var line = fitted(fleet());
        assertThat(line.slope() * WATT_HOUR_J).isEqualTo(100, within(10.0));
        assertThat(line.slope95().contains(100 / WATT_HOUR_J)).isTrue();
        assertThat(line.showsRelation()).isTrue();
        assertThat(line.bikes()).hasSize(12);
        assertThat(line.outside()).isEmpty();
    }

    @Test
    void nothing_is_expected_beyond_the_bikes() {
        var line = fitted(fleet());
        assertThat(line.at(300 * WATT_HOUR_J)).isPresent();
        assertThat(line.at(850 * WATT_HOUR_J)).isPresent();
        assertThat(line.at(299.9 * WATT_HOUR_J)).isEmpty();
        assertThat(line.at(850.1 * WATT_HOUR_J)).isEmpty();
    }

    @Test
    void a_bike_that_goes_half_as_far_lies_outside_and_leaves_the_line_where_it_was() {
        var bikes = fleet();
        double before = fitted(bikes).at(600 * WATT_HOUR_J).orElseThrow().value();
        bikes.add(bike("short", 600, 30_000));
        var line = fitted(bikes);
        assertThat(line.outside()).singleElement().satisfies(one -> {
            assertThat(one.bike()).isEqualTo("short");
            assertThat(one.place()).isEqualTo(JudgedBike.Place.OUTSIDE);
            assertThat(one.isAbove()).isFalse();
        });
        assertThat(line.at(600 * WATT_HOUR_J).orElseThrow().value()).isEqualTo(before, within(600.0));
    }

    @Test
    void a_bike_whose_interval_reaches_into_the_band_is_said_to() {
        var band = new Interval(10, 20);
        assertThat(JudgedBike.Place.of(15, Interval.around(15, 30), band)).isEqualTo(JudgedBike.Place.INSIDE);
        assertThat(JudgedBike.Place.of(21, Interval.around(21, 1), band))
                .isEqualTo(JudgedBike.Place.OUTSIDE_BUT_REACHING);
        assertThat(JudgedBike.Place.of(21, Interval.around(21, 0.9), band)).isEqualTo(JudgedBike.Place.OUTSIDE);
        assertThat(JudgedBike.Place.of(9, Interval.around(9, 1), band))
                .isEqualTo(JudgedBike.Place.OUTSIDE_BUT_REACHING);
    }

    @Test
    void a_bike_measured_worse_than_the_others_has_a_wider_band() {
        var bikes = fleet();
        var highest = Variant.of("level", "5").with("levelRole", "highest");
        var claimed = bike("vague", 600, 60_000).bike();
        bikes.add(new TestedBike(claimed, List.of(result("vague", 60_000, 8_000, highest))));
        var line = fitted(bikes);
        var vague = line.bikes().stream()
                .filter(one -> one.bike().equals("vague"))
                .findFirst()
                .orElseThrow();
        assertThat(vague.band().halfWidth())
                .isGreaterThan(2 * 7_900.0)
                .isGreaterThan(line.at(600 * WATT_HOUR_J).orElseThrow().band().halfWidth());
    }

    @Test
    void bikes_without_a_claim_or_with_another_result_are_left_out_with_the_reason() {
        var bikes = fleet();
        bikes.add(bike("unclaimed", 0, 50_000));
        bikes.add(bike(
                "at-reference", 500, 50_000, Variant.of("levelRole", "highest").with("at", "reference")));
        bikes.add(bike("lowest", 500, 90_000, Variant.of("levelRole", "lowest")));
        var line = fitted(bikes);
        assertThat(line.bikes()).hasSize(12);
        assertThat(line.leftOut())
                .extracting(Expectation.LeftOut::bike)
                .containsExactlyInAnyOrder("unclaimed", "at-reference", "lowest");
    }

    @Test
    void seven_bikes_make_no_line() {
        assertThat(Fitting.of(RANGE, fleet().subList(0, 7)))
                .isInstanceOfSatisfying(
                        Expectation.NoLine.class,
                        none -> assertThat(none.found()).isEqualTo(7));
    }

    @Test
    void bikes_that_all_claim_the_same_make_no_line() {
        var alike = IntStream.range(0, 10)
                .mapToObj(i -> bike("bike-" + i, 500, 50_000 + i))
                .toList();
        assertThat(Fitting.of(RANGE, alike)).isInstanceOf(Expectation.NoLine.class);
    }

    @Test
    void a_range_that_does_not_go_with_the_battery_is_noted() {
        var bikes = IntStream.range(0, 12)
                .mapToObj(i -> bike("bike-" + i, 300 + 50 * i, 50_000 + (i * 5 % 12) * 1000))
                .toList();
        var line = fitted(bikes);
        assertThat(line.showsRelation()).isFalse();
        assertThat(line.findings()).extracting(one -> one.code()).containsExactly("no-relation");
    }
}
