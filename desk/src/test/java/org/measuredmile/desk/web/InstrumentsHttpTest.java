package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.recording.day.FrameRate;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.TestDay;

/// A day made on the web with its instruments, and a second that takes them over.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class InstrumentsHttpTest {
    private static final String FIRST = "2031-06-30-brindle-causeway";
    private static final String SECOND = "2031-07-01-brindle-causeway";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        desk.get("/");
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private TestDay day(String id) {
        return desk.archive().reduced(id).orElseThrow().day();
    }

    private static void row(Map<String, String> form, int row, String... values) {
        String[] names = {"id", "kind", "resolution", "delay", "frameRate"};
        for (int i = 0; i < values.length; i++) {
            form.put("instrument." + row + "." + names[i], values[i]);
        }
    }

    @Test
    @Order(1)
    void instruments_that_cannot_be_come_back_as_typed_each_fault_beside_its_field() {
        var form = ServedArchive.typedDay();
        row(form, 1, "tape 1", "tape", "one cm");
        row(form, 2, "camera-1", "camera", "", "", "often");
        row(form, 3, "camera-1", "stopwatch", "-1 s", "", "25");
        row(form, 4, "scale-1");
        var answer = desk.post("/days/new", form);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("value=\"tape 1\"", "id=\"instrument.1.id-fault\"", "id=\"instrument.1.resolution-fault\"")
                .contains("value=\"often\"", "as 30000/1001, 29.97 or 240")
                .contains("There is a “camera-1” already", "Only a camera has frames", "Above 0")
                .contains("id=\"instrument.4.kind-fault\"");
        assertThat(desk.archive().days()).isEmpty();
    }

    @Test
    @Order(2)
    void instruments_are_kept_in_the_days_own_file() {
        var form = ServedArchive.typedDay();
        row(form, 1, "tape-1", "tape", "1 cm");
        row(form, 3, "camera-1", "camera", "", "", "30000/1001");
        row(form, 4, "receiver-1", "receiver", "", "0.4");
        assertThat(desk.post("/days/new", form).statusCode()).isEqualTo(303);
        assertThat(day(FIRST).instruments())
                .extracting(Instrument::id)
                .containsExactly("tape-1", "camera-1", "receiver-1");
        assertThat(day(FIRST).instrument("tape-1").orElseThrow().resolution()).hasValue(0.01);
        assertThat(day(FIRST).instrument("camera-1").flatMap(Instrument::frameRate))
                .contains(new FrameRate.Steady(30_000, 1001));
        assertThat(day(FIRST).instrument("receiver-1").orElseThrow().delayS()).hasValue(0.4);
        byte[] yaml = Optional.ofNullable(
                        desk.archive().day(FIRST).orElseThrow().folder().texts().get("day.yaml"))
                .orElseThrow();
        assertThat(new String(yaml, StandardCharsets.UTF_8))
                .contains("kind: camera", "frameRate: 30000/1001", "resolution: 0.01 m");
    }

    @Test
    @Order(3)
    void the_next_day_takes_them_over_as_they_are_known_and_adds_to_them() {
        assertThat(desk.get("/days/new").body())
                .contains("<option value=\"" + FIRST + "\" selected>", "tape-1, camera-1, receiver-1");
        var form = ServedArchive.typedDay();
        form.put("date", "2031-07-01");
        form.put("bike", "brindle-causeway");
        form.put("instrumentsOf", FIRST);
        row(form, 1, "tape-1", "tape");
        assertThat(desk.post("/days/new", form).body()).contains("There is a “tape-1” already");
        row(form, 1, "scale-1", "scale", "50 g");
        assertThat(desk.post("/days/new", form).statusCode()).isEqualTo(303);
        assertThat(day(SECOND).instruments().subList(0, 3)).isEqualTo(day(FIRST).instruments());
        assertThat(day(SECOND).instrument("scale-1").orElseThrow().resolution()).hasValue(0.05);
    }

    @Test
    @Order(4)
    void a_recording_is_given_to_the_instrument_that_made_it() {
        byte[] ride = "time_s,speed_mps\n0,5\n0.1,5\n0.2,5\n".getBytes(StandardCharsets.UTF_8);
        desk.upload(Paths.day(SECOND) + "/files", "T1", Map.of("ride.csv", ride));
        String page = Paths.instruments(SECOND);
        assertThat(desk.get(Paths.day(SECOND)).body()).contains("href=\"" + page + "\"");
        assertThat(desk.get(page).body()).contains("ride.csv", "reads to 0.11", "30000/1001 frames a second");
        var wrong = desk.post(page + "/made", Map.of("file.1", "ride.csv", "made.1", "nobody", "who", "T1"));
        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(wrong.body()).contains("no instrument “nobody”");
        var given = Map.of("file.1", "ride.csv", "made.1", "receiver-1", "who", "T1", "why", "its card");
        assertThat(desk.post(page + "/made", given).statusCode()).isEqualTo(303);
        assertThat(day(SECOND).recording("ride.csv").map(RecordingEntry::instrument))
                .contains("receiver-1");
        assertThat(desk.archive().history().getLast().why()).isEqualTo("given: ride.csv to receiver-1: its card");
        assertThat(desk.post(page + "/made", given).body()).contains("Nothing is other than before");
    }

    @Test
    @Order(5)
    void an_instrument_is_added_later_with_who_said_so() {
        String page = Paths.instruments(FIRST);
        assertThat(desk.post(page, Map.of("who", "")).body()).contains("Who says so?");
        assertThat(desk.post(page, Map.of("who", "T1")).body()).contains("What is it called?");
        assertThat(desk.post(page, Map.of("who", "M1", "instrument.1.id", "watch-1", "instrument.1.kind", "stopwatch"))
                        .statusCode())
                .isEqualTo(303);
        assertThat(day(FIRST).instruments()).hasSize(4);
        assertThat(desk.archive().history().getLast().why()).isEqualTo("instrument watch-1 added");
        assertThat(desk.archive().history().getLast().who()).isEqualTo("M1");
    }
}
