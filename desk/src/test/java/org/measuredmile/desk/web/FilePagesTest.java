package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
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
import org.measuredmile.recording.day.Run;
import org.measuredmile.trial.RunResult;

/// Files that came in, their drawings, and every decision on their runs by plain forms, as a browser without script
/// sends them.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FilePagesTest {
    private static final String ID = "2031-06-30-brindle-causeway";
    private static final String DAY = "/days/" + ID;
    private static final String FILE = DAY + "/files/stops.csv";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        desk.post("/days/new", ServedArchive.typedDay());
        desk.post(DAY + "/check", Map.of("by", "M1", "secondPerson", "T1"));
        var files = new LinkedHashMap<String, byte[]>();
        files.put("stops.csv", ServedArchive.recordingOfStops());
        files.put("note.txt", "no recording at all".getBytes(StandardCharsets.UTF_8));
        desk.upload(DAY + "/files", "T1", files);
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    @Order(1)
    void each_file_shows_what_it_is_its_curve_its_track_and_the_runs_found_in_it() {
        String page = desk.get(DAY).body();
        assertThat(page)
                .contains(FILE + "/trace.svg?v=3&amp;u=imperial", FILE + "/track.svg?", "loading=\"lazy\"")
                .contains("Braking, run ?1, proposed", "note.txt", "kept, not read")
                .doesNotContain("note.txt/trace.svg");
    }

    @Test
    @Order(2)
    void a_drawing_has_an_address_of_its_own_that_a_browser_may_keep() {
        HttpResponse<String> trace = desk.get(FILE + "/trace.svg?v=3&u=imperial&w=640&h=80");
        assertThat(trace.headers().firstValue("Content-Type").orElse("")).startsWith("image/svg+xml");
        assertThat(trace.headers().firstValue("Cache-Control").orElse("")).contains("immutable", "private");
        assertThat(trace.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("default-src 'none'", "style-src 'sha256-")
                .doesNotContain("unsafe");
        assertThat(trace.body()).contains("Speed, mph", "Braking", "?1");
        assertThat(desk.get(FILE + "/trace.svg?v=3&u=metric").body()).contains("Speed, km/h");
        assertThat(desk.get(FILE + "/track.svg?v=3&u=metric").body()).contains("start", "north");
        HttpResponse<String> old = desk.get(FILE + "/trace.svg?v=1&u=imperial");
        assertThat(old.headers().firstValue("Cache-Control").orElse("")).contains("no-store");
    }

    @Test
    @Order(3)
    void a_drawing_of_what_cannot_be_drawn_is_not_there_and_odd_numbers_do_no_harm() {
        assertThat(desk.get(DAY + "/files/note.txt/trace.svg").statusCode()).isEqualTo(404);
        assertThat(desk.get(DAY + "/files/none.csv").statusCode()).isEqualTo(404);
        assertThat(desk.get(DAY + "/files/note.txt").statusCode()).isEqualTo(200);
        for (String odd : List.of("w=NaN&h=-1", "w=1e9&h=1e9", "from=7&to=3", "from=-5&to=1e12", "from=NaN&to=NaN")) {
            assertThat(desk.get(FILE + "/trace.svg?" + odd).statusCode())
                    .as(odd)
                    .isEqualTo(200);
            assertThat(desk.get(FILE + "?" + odd).statusCode()).as(odd).isEqualTo(200);
        }
        assertThat(desk.get(FILE + "/trace.svg?w=wide").statusCode()).isEqualTo(400);
    }

    @Test
    @Order(4)
    void a_refused_window_comes_back_on_the_plot_with_its_fault_beside_the_field() {
        String run = Paths.run(ID, proposed().getFirst().run());
        var fields = fields("9", "4");
        HttpResponse<String> answer = desk.post(run + "/window", fields);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("The run ends before it begins", "data-trace-desk", "id=\"to-fault\"");
        var noCause = fields("1", "9");
        noCause.put("act", "void");
        assertThat(desk.post(run, noCause).body()).contains("Choose a cause", "data-trace-desk");
        assertThat(desk.archive().day(ID).orElseThrow().revision().number()).isEqualTo(3);
    }

    @Test
    @Order(5)
    void a_moved_run_keeps_its_new_ends_and_the_page_says_who_did_it() {
        var first = proposed().getFirst();
        var ends = first.stretch().orElseThrow();
        HttpResponse<String> answer = desk.post(
                Paths.run(ID, first.run()) + "/window", fields(ends.fromS() - 1.25 + "", ends.toS() + 0.5 + ""));
        assertThat(answer.statusCode()).isEqualTo(303);
        String page = followed(answer);
        assertThat(page).contains("Kept: run 1 set to", "by\n        T1").contains("open id=\"chosen\"");
        assertThat(page).contains(String.format(java.util.Locale.ROOT, "value=\"%.3f\"", ends.fromS() - 1.25));
        assertThat(desk.archive().history().getLast().why()).startsWith("run 1 set to");
    }

    @Test
    @Order(6)
    void a_run_is_confirmed_another_voided_for_a_cause_and_both_are_in_the_history() {
        String page = followed(desk.post(Paths.run(ID, "1"), fields("", "", "act", "confirm")));
        assertThat(page).contains("Kept: run 1 confirmed").containsPattern("(?s)id=\"chosen\".{1,400}valid");
        var moved = proposed().getFirst();
        var ends = moved.stretch().orElseThrow();
        String second = Paths.run(ID, moved.run());
        String from = Double.toString(ends.fromS() - 0.5);
        String to = Double.toString(ends.toS() + 0.25);
        page = followed(desk.post(second, fields(from, to, "act", "confirm")));
        assertThat(page).containsPattern("Kept: run 2 set to .{5,60} and confirmed");
        assertThat(state("2")).isEqualTo(Run.State.CONFIRMED);
        second = Paths.run(ID, "2");
        assertThat(desk.post(second, fields("9", "4", "act", "confirm")).statusCode())
                .isEqualTo(422);
        page = followed(desk.post(second, fields("", "", "act", "void", "cause", "traffic")));
        assertThat(page).contains("void: traffic").containsPattern("(?s)id=\"chosen\".{1,400}void");
        assertThat(state("2")).isEqualTo(Run.State.VOID);
    }

    @Test
    @Order(7)
    void a_run_is_split_in_two_that_wait_for_a_decision() {
        var third = proposed().getFirst();
        var ends = third.stretch().orElseThrow();
        String at = Double.toString((ends.fromS() + ends.toS()) / 2);
        String page = followed(desk.post(Paths.run(ID, third.run()) + "/split", fields("", "", "at", at)));
        assertThat(page).contains("split at", "Braking, run 3<", "Braking, run 4<");
        assertThat(state("3")).isEqualTo(Run.State.PROPOSED);
    }

    @Test
    @Order(8)
    void a_run_that_was_not_found_is_added_by_its_ends_its_trial_and_its_kind() {
        HttpResponse<String> refused = desk.post(FILE + "/runs", fields("0.2", "2"));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.body()).contains("Which trial is it a run of?", "value=\"0.2\"");
        var fields = fields("0.2", "2", "trial", "braking");
        fields.put("braking.variant.method", "trace");
        fields.put("braking.variant.surface", "dry");
        fields.put("braking.variant.nominal", "20-mph");
        HttpResponse<String> answer = desk.post(FILE + "/runs", fields);
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(followed(answer)).contains("run 5 of braking added", "data-run=\"5\"");
        assertThat(state("5")).isEqualTo(Run.State.CONFIRMED);
    }

    @Test
    @Order(9)
    void files_that_were_sent_before_are_named_by_the_form() {
        String sha256 = desk.upload(
                        "/uploads", "file", "T1", Map.of("ride.txt", "a ride".getBytes(StandardCharsets.UTF_8)))
                .body();
        assertThat(sha256).matches("[0-9a-f]{64}");
        assertThat(desk.archive().waiting().holds(sha256)).isTrue();
        assertThat(desk.archive().content().fault(sha256)).contains("is missing");
        String line = sha256 + " folder/ride.txt";
        var gone = desk.post(DAY + "/files", Map.of("who", "T1", "staged", line + "\n" + "0".repeat(64) + " old.txt"));
        assertThat(gone.statusCode()).isEqualTo(422);
        assertThat(gone.body()).contains("“old.txt” was sent too long ago and is not here any more");
        var answer = desk.post(DAY + "/files", Map.of("who", "T1", "staged", line));
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(desk.archive().day(ID).orElseThrow().revision().files()).containsKey("recordings/ride.txt");
        assertThat(desk.archive().waiting().holds(sha256)).isFalse();
        assertThat(desk.archive().content().fault(sha256)).isEmpty();
    }

    @Test
    @Order(10)
    void a_folder_is_a_day_only_where_it_holds_one() {
        String line = desk.upload("/uploads", "file", "T1", Map.of("a", "x".getBytes(StandardCharsets.UTF_8)))
                        .body()
                + " ";
        var none = desk.post("/days/folder", Map.of("who", "T1", "staged", line + "pictures/a.txt"));
        assertThat(none.statusCode()).isEqualTo(422);
        assertThat(none.body()).contains("not one folder that holds a day.yaml");
        var two = desk.post(
                "/days/folder", Map.of("who", "T1", "staged", line + "x/one/day.yaml\n" + line + "x/two/day.yaml"));
        assertThat(two.statusCode()).isEqualTo(422);
        var answer = desk.post(
                "/days/folder",
                Map.of("who", "T1", "staged", line + "x/one/recordings/a.csv\n" + line + "x/one/day.yaml"));
        assertThat(answer.headers().firstValue("Location")).contains("/days/one");
        assertThat(desk.archive().day("one").orElseThrow().revision().files())
                .containsOnlyKeys("day.yaml", "recordings/a.csv");
    }

    @Test
    @Order(11)
    void more_files_than_are_taken_at_once_are_refused_and_counted() {
        String sha256 = desk.upload("/uploads", "file", "T1", Map.of("a", "x".getBytes(StandardCharsets.UTF_8)))
                .body();
        String many = Stream.iterate(1, i -> i + 1)
                .limit(2_001)
                .map(i -> sha256 + " " + i)
                .collect(Collectors.joining("\n"));
        var answer = desk.post(DAY + "/files", Map.of("who", "T1", "staged", many));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("2,001 files are more than the 2,000");
    }

    private List<RunResult> proposed() {
        return Stream.ofNullable(
                        desk.archive().reduced(ID).orElseThrow().outcomes().get("braking"))
                .flatMap(outcome -> outcome.runs().stream())
                .filter(run -> run.state() == Run.State.PROPOSED && run.run().contains(" at "))
                .toList();
    }

    private Run.State state(String run) {
        return desk.archive().reduced(ID).orElseThrow().day().runs().stream()
                .filter(one -> one.id().equals(run))
                .map(Run::state)
                .findFirst()
                .orElseThrow();
    }

    private String followed(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(303);
        return desk.get(answer.headers().firstValue("Location").orElseThrow().replaceAll("#.*", ""))
                .body();
    }

    private static Map<String, String> fields(String from, String to, String... more) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("who", "T1");
        fields.put("file", "stops.csv");
        fields.put("recording", "stops.csv");
        fields.put("from", from);
        fields.put("to", to);
        for (int i = 0; i < more.length; i += 2) {
            fields.put(more[i], more[i + 1]);
        }
        return fields;
    }
}
