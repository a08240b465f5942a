package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.recording.day.DayFolder;
import tools.jackson.databind.JsonNode;

/// The invented clip, whose camera was switched on 11.4 s into the recording of the ride.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class InspectClipTest {
    private Path clip = Path.of("");
    private Path ride = Path.of("");
    private Path other = Path.of("");

    @BeforeAll
    void write(@TempDir Path folder) throws IOException {
        DayFolder day = DemoFleet.days(DemoFleet.SEED).stream()
                .filter(one -> one.name().endsWith("skelloway-causeway"))
                .findFirst()
                .orElseThrow();
        clip = copy(day, folder, "ride-along.vtt");
        ride = copy(day, folder, "levels-out.csv");
        other = copy(day, folder, "starts-pedal-out.csv");
    }

    private static Path copy(DayFolder day, Path folder, String name) throws IOException {
        try (var bytes =
                Optional.ofNullable(day.recordings().get(name)).orElseThrow().open()) {
            return Files.write(folder.resolve(name), bytes.readAllBytes());
        }
    }

    private static JsonNode first(Object... arguments) {
        return mile(arguments).json().path(0);
    }

    @Test
    void eachNumberSaidIsShownWithItsTimeAndWhatItSeemsToBe() {
        var found = first("inspect", clip, "--json");
        assertThat(found.path("format").asString()).isNotEmpty();
        var sign = found.path("spoken").path(5);
        assertThat(sign.path("at").asDouble()).isCloseTo(52.5, within(1.0));
        assertThat(sign.path("quantity").asString()).isEqualTo("speed");
        assertThat(sign.path("unit").asString()).isEqualTo("m/s");
        assertThat(sign.path("unitSaid").asString()).isEqualTo("mph");
        // 30 mph by the statute mile of 1609.344 m.
        assertThat(sign.path("value").asDouble()).isCloseTo(30 * 0.44704, within(1e-9));
        var weight = found.path("spoken").path(8);
        assertThat(weight.path("quantity").asString()).isEqualTo("mass");
        // 52 lb 4 oz by the pound of 0.45359237 kg.
        assertThat(weight.path("value").asDouble()).isCloseTo(52.25 * 0.45359237, within(1e-9));
        assertThat(found.path("cameraOffsets").isEmpty()).isTrue();
        assertThat(mile("inspect", clip).out())
                .contains("seems to be", "speed", "mass", "name a recording of the ride");
    }

    @Test
    void besideTheRideTheCamerasOffsetIsGivenWithItsUncertaintyAndTheSignIsFlagged() {
        var offset =
                first("inspect", clip, ride, "--json").path("cameraOffsets").path(0);
        assertThat(offset.path("recording").asString()).isEqualTo("levels-out.csv");
        assertThat(offset.path("interval95").path(0).asDouble()).isLessThan(11.4);
        assertThat(offset.path("interval95").path(1).asDouble()).isGreaterThan(11.4);
        assertThat(offset.path("standardUncertainty").asDouble()).isBetween(0.4, 1.5);
        assertThat(offset.path("why").isNull()).isTrue();
        var compared = offset.path("compared");
        assertThat(compared.path(5).path("agreement").asString()).isEqualTo("disagrees");
        assertThat(compared.path(5).path("difference").asDouble()).isGreaterThan(2);
        assertThat(compared.path(8).path("agreement").asString()).isEqualTo("not-compared");
        assertThat(compared.valueStream()
                        .filter(one -> one.path("agreement").asString().equals("agrees")))
                .hasSizeGreaterThan(8);
        assertThat(mile("inspect", clip, ride, "--units", "imperial").out())
                .contains("against levels-out.csv (receiver speed): +")
                .contains("DISAGREES: ")
                .contains("\"30 miles an hour\"");
    }

    @Test
    void besideAnotherRideItIsSaidWhyThereIsNoOffset() {
        var offset =
                first("inspect", clip, other, "--json").path("cameraOffsets").path(0);
        assertThat(offset.path("offset").isNull()).isTrue();
        assertThat(offset.path("why").path("code").asString()).isEqualTo("no-offset-fits");
        assertThat(mile("inspect", clip, other).out()).contains("not set: ", "[no-offset-fits]");
    }
}
