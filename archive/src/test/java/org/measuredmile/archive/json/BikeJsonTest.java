package org.measuredmile.archive.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.measuredmile.recording.Place;
import org.measuredmile.recording.day.Bike;
import org.measuredmile.recording.day.SpecLine;

class BikeJsonTest {
    @Test
    void a_bike_with_all_that_its_folder_says_comes_back_the_same() {
        var mass = new SpecLine(
                "mass", "61.0", "lb", "battery=in", "the page", "2031-01-15", "yes", "p.jpg", "", Place.NOWHERE);
        var bike = new Bike(
                "ostrelle-lamplight",
                "Ostrelle",
                "Lamplight",
                OptionalInt.of(2031),
                "step-through",
                "both",
                "cadence",
                OptionalInt.of(5),
                "26 in",
                new Bike.Price(OptionalDouble.of(1890), "USD", "US", "2031-01-15"),
                new Bike.Loan("lent", "Ostrelle", "2031-04-01", "2031-04-20", "lent by the maker"),
                List.of(
                        mass,
                        new SpecLine("range", "", "", "", "", "", "", "", "", Place.atField("spec.csv", 3, "x"))));

        assertThat(BikeJson.read(Json.parse(Json.compact(BikeJson.write(bike)))))
                .isEqualTo(bike);
    }

    @Test
    void a_bike_of_which_only_the_id_is_known_comes_back_the_same() {
        var bike = Bike.known("heron");

        assertThat(BikeJson.read(BikeJson.write(bike))).isEqualTo(bike);
    }
}
