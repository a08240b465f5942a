package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.recording.day.DayFolder;
import org.measuredmile.recording.day.Reading;

/// Times typed as a camera's frames: on a day with two cameras, of 30000/1001 and of 60 frames a second, and on one
/// without any.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FramesHttpTest {
    private static final String FRAMES = "frames 1203 to 1266";
    private static final String NAMED = FRAMES + " by camera-1";
    private static final String BARE = "/days/2031-06-30-brindle-causeway/trials/standingstart";

    private ServedArchive desk;
    private String day = "";
    private String sheet = "";

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DayFolder filmed = DemoFleet.days(DemoFleet.SEED).stream()
                .filter(one -> one.name().endsWith("skelloway-causeway"))
                .findFirst()
                .orElseThrow();
        desk.archive().importDay(filmed, new Act("T1", "invented"));
        day = filmed.name();
        sheet = Paths.trial(day, "standingstart");
        desk.get("/");
        desk.post("/days/new", ServedArchive.typedDay());
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private static Map<String, String> run(String time) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("variant.drive", "pedal");
        fields.put("state", "good");
        fields.put("direction", "out");
        fields.put("reading.time-to-10-mph", time);
        fields.put("who", "T1");
        return fields;
    }

    private Reading last(String id) {
        return desk.archive().reduced(id).orElseThrow().day().readings().getLast();
    }

    @Test
    @Order(1)
    void the_seconds_are_told_before_anything_is_kept() {
        int before = desk.archive().history().size();
        // 63 frames of 30000/1001 a second take 63 · 1001 / 30000 = 2.1021 s, half a frame 0.0167 s; arithmetic.
        assertThat(desk.post(sheet + "/told", run(NAMED)).body())
                .contains(NAMED + " is 2.102", "each end ± 0.017", "half a frame");
        var typed = run(NAMED);
        typed.put("act", "look");
        var looked = desk.post(sheet, typed);
        assertThat(looked.statusCode()).isEqualTo(200);
        assertThat(looked.body()).contains("value=\"" + NAMED + "\"", "2.102", "± 0.017");
        assertThat(desk.archive().history()).hasSize(before);
    }

    @Test
    @Order(2)
    void frames_are_kept_as_typed_and_count_by_the_camera() {
        assertThat(desk.post(sheet, run(NAMED)).statusCode()).isEqualTo(303);
        assertThat(last(day).written()).isEqualTo(FRAMES);
        assertThat(last(day).instrument()).isEqualTo("camera-1");
        String run = last(day).run();
        assertThat(desk.get(Paths.run(day, run)).body()).contains(FRAMES);
    }

    @Test
    @Order(3)
    void without_a_rate_it_is_said_what_to_write_and_the_text_stays() {
        var answer = desk.post(BARE, run(FRAMES));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("value=\"" + FRAMES + "\"", "frames tell a time only by a camera whose frame rate is known")
                .contains("as in 63 frames at 30000/1001");
        assertThat(desk.get(BARE).body()).contains("or frames 1203 to 1266 at 30000/1001");
        assertThat(desk.post(BARE, run(FRAMES + " at 30000/1001")).statusCode()).isEqualTo(303);
        assertThat(last("2031-06-30-brindle-causeway").written()).isEqualTo(FRAMES + " at 30000/1001");
    }

    @Test
    @Order(4)
    void a_variable_rate_and_frames_in_the_wrong_order_are_refused_with_their_reason() {
        assertThat(desk.post(BARE, run(FRAMES + " at variable")).body())
                .contains("frame rate is variable, so its frames tell no time", FRAMES + " at variable");
        assertThat(desk.post(BARE, run("frames 1266 to 1203 at 25")).body()).contains("names no frames in their order");
        assertThat(desk.post(sheet, run("63 frames at 25 by camera-1")).body())
                .contains("25 frames a second stand with the reading, 30000/1001 with the camera camera-1");
        assertThat(desk.post(BARE, run("frames 1203 to 1204 at 25")).body()).contains("cannot be");
    }

    @Test
    @Order(5)
    void of_several_cameras_the_one_is_named() {
        assertThat(desk.get(sheet).body()).contains("or frames 1203 to 1266 by camera-1");
        var answer = desk.post(sheet, run(FRAMES));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("There are several cameras; say which, as in frames 1203 to 1266 by camera-1");
        assertThat(desk.post(sheet, run("frames 1203 to 1323 by camera-60")).statusCode())
                .isEqualTo(303);
        assertThat(last(day).written()).isEqualTo("frames 1203 to 1323");
        assertThat(last(day).instrument()).isEqualTo("camera-60");
    }
}
