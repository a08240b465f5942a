package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.recording.day.RecordingEntry;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;
import org.measuredmile.recording.day.Window;
import org.measuredmile.trial.RunResult;

/// Three stops in a file whose clock counts from zero: found, moved, split, voided, in the order of the tests.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class RunWindowsHttpTest {
    private static final String DAY = "2031-06-30-brindle-causeway";
    private static final String FILE = "stops.csv";

    private ServedArchive desk;
    private double firstStopM;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        desk.get("/");
        assertThat(desk.post("/days/new", ServedArchive.typedDay()).statusCode())
                .isEqualTo(303);
        desk.post(Paths.day(DAY) + "/check", Map.of("by", "M1", "secondPerson", "T1"));
        desk.upload(Paths.day(DAY) + "/files", "T1", Map.of(FILE, threeStops()));
        firstStopM = distanceM(stops().getFirst());
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    /// Ten samples a second: 6 s at 20 mph, a stop at 6 m/s², 3 s of standing, three times over.
    private static byte[] threeStops() {
        var text = new StringBuilder("time_s,speed_mps\n");
        int sample = 0;
        for (int stop = 0; stop < 3; stop++) {
            for (int i = 0; i < 105; i++) {
                double speed = Math.max(0, 8.94 - Math.max(0, i - 60) * 0.6);
                double noise = 0.03 * StrictMath.sin(1.7 * sample);
                text.append(String.format(Locale.ROOT, "%.1f,%.3f%n", sample++ / 10.0, Math.max(0, speed + noise)));
            }
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private List<RunResult> stops() {
        var outcomes = desk.archive().reduced(DAY).orElseThrow().outcomes();
        return Stream.ofNullable(outcomes.get("braking"))
                .flatMap(outcome -> outcome.runs().stream())
                .toList();
    }

    private RunResult stop(String id) {
        return stops().stream().filter(run -> run.run().equals(id)).findFirst().orElseThrow();
    }

    private TestDay day() {
        return desk.archive().reduced(DAY).orElseThrow().day();
    }

    private Run written(String id) {
        return day().runs().stream()
                .filter(run -> run.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private Window window(String id) {
        return day().recording(FILE)
                .flatMap((RecordingEntry entry) -> entry.window(id))
                .orElseThrow();
    }

    private HttpResponse<String> post(String run, String act, Map<String, String> fields) {
        return desk.post(Paths.run(DAY, run) + act, fields);
    }

    private static double distanceM(RunResult run) {
        return run.value("braking.braking-distance").orElseThrow().value();
    }

    @Test
    @Order(1)
    void ends_that_cannot_be_come_back_as_typed_with_every_fault_beside_its_field() {
        String found = stops().get(1).run();
        long before = desk.archive().history().size();
        var answer = post(found, "/window", Map.of("from", "31 apples", "to", "-2", "who", ""));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("value=\"31 apples\"", "id=\"from-fault\"")
                .contains("value=\"-2\"", "id=\"to-fault\"")
                .contains("Who says so?");
        var turned = post(found, "/window", Map.of("from", "14", "to", "12,5", "who", "T1"));
        assertThat(turned.body()).contains("value=\"12,5\"", "The run ends before it begins");
        var beyond = post(found, "/window", Map.of("from", "14", "to", "900", "who", "T1"));
        assertThat(beyond.body()).contains("The recording ends at 31.400 s");
        var elsewhere = post(found, "/window", Map.of("from", "1", "to", "2", "recording", "none.csv", "who", "T1"));
        assertThat(elsewhere.body()).contains("“none.csv” is no recording of this day");
        assertThat(desk.archive().history()).hasSize((int) before);
    }

    @Test
    @Order(2)
    void a_found_run_that_is_moved_is_written_down_with_its_ends_and_stays_proposed() {
        var found = stops().get(1);
        var answer =
                post(found.run(), "/window", Map.of("from", "11", "to", "20.75", "who", "T1", "why", "the middle one"));
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location")).contains(Paths.run(DAY, "1"));
        assertThat(written("1").state()).isEqualTo(Run.State.PROPOSED);
        assertThat(window("1")).isEqualTo(new Window(11, 20.75));
        assertThat(distanceM(stop("1"))).isCloseTo(distanceM(found), within(0.1));
        assertThat(stops()).hasSize(3).noneMatch(run -> run.run().equals(found.run()));
        var act = desk.archive().history().getLast();
        assertThat(act.who()).isEqualTo("T1");
        assertThat(act.why()).isEqualTo("run 1 set to 11.000 s to 20.750 s of stops.csv: the middle one");
    }

    @Test
    @Order(3)
    void a_found_run_that_is_confirmed_keeps_its_value_and_its_place() {
        var found = stops().stream()
                .filter(run -> run.run().startsWith(FILE))
                .findFirst()
                .orElseThrow();
        assertThat(post(found.run(), "", Map.of("act", "confirm", "who", "T1")).statusCode())
                .isEqualTo(303);
        assertThat(written("2").state()).isEqualTo(Run.State.CONFIRMED);
        assertThat(distanceM(stop("2"))).isCloseTo(firstStopM, within(1e-6));
        assertThat(stops()).hasSize(3);
    }

    @Test
    @Order(4)
    void a_void_run_keeps_its_ends_and_is_drawn() {
        post("1", "", Map.of("act", "void", "cause", "other", "other", "a dog", "who", "T1"));
        assertThat(written("1").state()).isEqualTo(Run.State.VOID);
        assertThat(window("1")).isEqualTo(new Window(11, 20.75));
        assertThat(stop("1").trace()).isPresent();
        assertThat(desk.get(Paths.run(DAY, "1")).body()).contains("value=\"11.000\"", "value=\"20.750\"");
    }

    @Test
    @Order(5)
    void a_run_is_split_only_inside_its_ends() {
        var answer = post("1", "/split", Map.of("at", "25", "who", "T1"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("value=\"25\"", "lasts from 11.000 s to 20.750 s; split it between them");
    }

    @Test
    @Order(6)
    void a_split_run_keeps_its_id_for_the_first_part_and_both_parts_are_proposed() {
        post("1", "/window", Map.of("from", "0", "to", "20.9", "who", "T1"));
        assertThat(written("1").state()).isEqualTo(Run.State.VOID);
        assertThat(post("1", "/split", Map.of("at", "10.45", "who", "M1")).statusCode())
                .isEqualTo(303);
        assertThat(window("1")).isEqualTo(new Window(0, 10.45));
        assertThat(window("3")).isEqualTo(new Window(10.45, 20.9));
        assertThat(written("1").state()).isEqualTo(Run.State.PROPOSED);
        assertThat(written("3").state()).isEqualTo(Run.State.PROPOSED);
        assertThat(written("1").note())
                .isEqualTo("was void: other: a dog; split at 10.450 s of stops.csv; the rest is 3,"
                        + " the readings stay here");
        assertThat(written("3").note()).isEqualTo("split from 1");
        assertThat(day().runs()).extracting(Run::id).containsExactly("1", "3", "2");
        assertThat(desk.archive().history().getLast().who()).isEqualTo("M1");
    }
}
