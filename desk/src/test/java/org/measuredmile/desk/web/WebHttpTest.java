package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
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
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.web.view.Paths;

/// One archive, filled in the order of the tests: first nothing is there, then a day is typed, then files come.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class WebHttpTest {
    private static final String DAY = "/days/2031-06-30-brindle-causeway";

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    @Test
    @Order(1)
    void an_empty_archive_says_what_to_do_next() {
        assertThat(desk.get("/").body()).contains("Nothing is in this archive yet", "Begin a test day");
        assertThat(desk.get("/days").body()).contains("No test day yet");
        assertThat(desk.get("/standings").body()).contains("No figure yet");
        assertThat(desk.get("/history").body()).contains("Nothing was done yet");
    }

    @Test
    @Order(2)
    void every_page_of_the_demonstration_says_that_it_is_invented() {
        for (String path : List.of(
                "/", "/days", "/days/new", "/standings", "/side-by-side", "/shortlist", "/handbook", "/nowhere")) {
            assertThat(desk.get(path).body()).as(path).contains("Demonstration.");
        }
    }

    @Test
    @Order(3)
    void what_is_not_there_is_said_on_a_page_of_our_own() {
        for (String path : List.of("/bikes/nobody", "/days/never", "/standings/no.figure", "/handbook/no", "/no")) {
            HttpResponse<String> answer = desk.get(path);
            assertThat(answer.statusCode()).as(path).isEqualTo(404);
            assertThat(answer.body()).as(path).contains("Not there", "masthead");
        }
        assertThat(desk.get("/recordings/" + "0".repeat(64)).statusCode()).isEqualTo(404);
        assertThat(desk.get("/recordings/..%2f..%2fpasswd").statusCode()).isIn(400, 404);
    }

    @Test
    @Order(4)
    void answers_carry_the_headers_that_keep_foreign_script_out() {
        var headers = desk.get("/").headers();
        assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
                .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(headers.firstValue("X-Frame-Options")).contains("DENY");
        assertThat(desk.get("/").body()).doesNotContain("<script>", " onclick", "style=\"");
        assertThat(headers.allValues("Set-Cookie")).noneMatch(cookie -> cookie.startsWith("JSESSIONID"));
    }

    @Test
    @Order(5)
    void only_this_machines_own_name_is_answered() throws IOException {
        try (var socket = new Socket("127.0.0.1", desk.port())) {
            socket.getOutputStream()
                    .write("GET / HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n"
                            .getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer).startsWith("HTTP/1.1 400").doesNotContain("Measured Mile");
        }
    }

    @Test
    @Order(6)
    void a_form_without_its_token_changes_nothing() {
        HttpResponse<String> answer = desk.postWithoutToken("/days/new", ServedArchive.typedDay());
        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(answer.body()).contains("Not taken", "Nothing was changed");
        assertThat(desk.archive().days()).isEmpty();
    }

    @Test
    @Order(7)
    void a_refused_day_comes_back_with_what_was_typed_and_every_fault_beside_its_field() {
        var typed = ServedArchive.typedDay();
        typed.put("date", "31 February");
        typed.put("mass", "1830 lb");
        typed.put("drive", "");
        typed.put("place", "<b>Lane</b>");
        HttpResponse<String> answer = desk.post("/days/new", typed);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("value=\"31 February\"", "id=\"date-fault\"")
                .contains("value=\"1830 lb\"", "id=\"mass-fault\"")
                .contains("id=\"drive-fault\"", "value=\"Brindle\"")
                .doesNotContain("<b>Lane</b>");
        assertThat(desk.archive().days()).isEmpty();
    }

    @Test
    @Order(8)
    void a_day_typed_from_nothing_is_kept_with_its_bike() {
        HttpResponse<String> answer = desk.post("/days/new", ServedArchive.typedDay());
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location")).contains(DAY);
        assertThat(desk.get(DAY).body()).contains("Brindle Causeway", "Old Ferry Road", "183", "64.0");
        assertThat(desk.archive().history().getLast().who()).isEqualTo("T1");
    }

    @Test
    @Order(9)
    void the_check_wants_a_second_person() {
        var alone = desk.post(DAY + "/check", Map.of("by", "M1", "secondPerson", "M1"));
        assertThat(alone.statusCode()).isEqualTo(422);
        assertThat(alone.body()).contains("A second person has to tick it");
        assertThat(desk.post(DAY + "/check", Map.of("by", "M1", "secondPerson", "T1"))
                        .statusCode())
                .isEqualTo(303);
        assertThat(desk.get(DAY).body()).contains("Ticked");
    }

    @Test
    @Order(10)
    void a_refused_run_keeps_what_was_typed() {
        var answer = desk.post(DAY + "/trials/braking", run("20.3", "2l.2 ft"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("value=\"20.3\"", "value=\"2l.2 ft\"", "Not kept yet");
        var slip = desk.post(DAY + "/trials/braking", run("203", "21.2 ft"));
        assertThat(slip.body()).contains("is no entry speed");
    }

    @Test
    @Order(11)
    void three_typed_stops_make_a_figure() {
        for (String[] stop : new String[][] {{"20.3", "21.2 ft"}, {"19.8", "20.7"}, {"20.4", "21 ft 10.8 in"}}) {
            assertThat(desk.post(DAY + "/trials/braking", run(stop[0], stop[1])).statusCode())
                    .isEqualTo(303);
        }
        // Issue 2, typed checks: the mean of the corrected distances is 20.916 ft.
        assertThat(desk.get(DAY + "/trials/braking").body()).contains("3 of 6", "<b>20.9");
        assertThat(desk.get("/bikes/brindle-causeway").body()).contains("<b>20.9");
    }

    @Test
    @Order(12)
    void a_run_outside_its_window_is_shown_and_does_not_count() {
        var kept = desk.post(DAY + "/trials/braking", run("21.2", "23.4"));
        assertThat(kept.statusCode()).isEqualTo(303);
        String page =
                desk.get(kept.headers().firstValue("Location").orElseThrow()).body();
        assertThat(page).contains("role=\"alert\"", "21.2", "3 of 6");
    }

    @Test
    @Order(13)
    void a_void_run_needs_a_cause_and_no_readings() {
        var typed = run("", "");
        typed.put("state", "void");
        assertThat(desk.post(DAY + "/trials/braking", typed).body()).contains("Choose why the run does not count");
        typed.put("cause", "traffic");
        assertThat(desk.post(DAY + "/trials/braking", typed).statusCode()).isEqualTo(303);
        assertThat(desk.get(DAY).body()).contains(">void<");
    }

    @Test
    @Order(14)
    void of_two_files_the_broken_one_is_named_and_the_other_read() {
        byte[] stops = DemoFleet.days(DemoFleet.SEED).stream()
                .flatMap(day -> Stream.ofNullable(day.recordings().get("stops.csv")))
                .findFirst()
                .map(WebHttpTest::read)
                .orElseThrow();
        var files = new LinkedHashMap<String, byte[]>();
        files.put("stops.csv", stops);
        files.put("broken.gpx", "<gpx><trk><trkseg><trkpt lat=\"1\"".getBytes(StandardCharsets.UTF_8));
        files.put("empty.csv", new byte[0]);
        var answer = desk.upload(DAY + "/files", "T1", files);
        assertThat(answer.statusCode()).isEqualTo(303);
        String page = desk.get(DAY + "?since=1").body();
        assertThat(page).contains("stops.csv", "broken.gpx", "empty.csv", "kept, not read", "10");
        assertThat(page).contains("<b>20.9");
        var kept = desk.archive().day("2031-06-30-brindle-causeway").orElseThrow();
        String sha256 = kept.revision().files().entrySet().stream()
                .filter(file -> file.getKey().equals("recordings/stops.csv"))
                .map(file -> file.getValue().sha256())
                .findFirst()
                .orElseThrow();
        assertThat(desk.bytes("/recordings/" + sha256).body()).isEqualTo(stops);
    }

    @Test
    @Order(15)
    void another_file_of_the_same_name_takes_nobodys_place() {
        desk.upload(DAY + "/files", "T1", Map.of("empty.csv", "other".getBytes(StandardCharsets.UTF_8)));
        assertThat(desk.get(DAY).body()).contains("empty.csv", "empty-2.csv");
    }

    @Test
    @Order(16)
    void a_found_run_is_confirmed_into_another_revision() {
        var reduced = desk.archive().reduced("2031-06-30-brindle-causeway").orElseThrow();
        var found = reduced.outcomes().values().stream()
                .flatMap(outcome -> outcome.runs().stream())
                .filter(run -> run.state() == org.measuredmile.recording.day.Run.State.PROPOSED)
                .findFirst()
                .orElseThrow();
        String page = Paths.run("2031-06-30-brindle-causeway", found.run());
        assertThat(desk.get(page).body()).contains("Found in the recording");
        var answer = desk.post(page, Map.of("act", "confirm", "who", "T1"));
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(desk.get(answer.headers().firstValue("Location").orElseThrow())
                        .body())
                .doesNotContain("Found in the recording");
        assertThat(desk.archive().history().getLast().why()).contains("confirmed");
    }

    @Test
    @Order(17)
    void units_turn_round_for_one_browser() {
        desk.get("/");
        assertThat(desk.post("/units", Map.of("back", "//elsewhere.example"))
                        .headers()
                        .firstValue("Location"))
                .contains("/");
        assertThat(desk.get(DAY).body()).contains("km/h, m, kg first");
        desk.post("/units", Map.of("back", DAY));
        assertThat(desk.get(DAY).body()).contains("mph, ft, lb first");
    }

    @Test
    @Order(18)
    void a_standing_hands_out_its_table() {
        var answer = desk.get("/standings/braking.stopping-distance/csv");
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
        assertThat(answer.body())
                .contains("rank,joint,bike")
                .contains("brindle-causeway")
                .contains("6.37");
    }

    /// One invented bike was tested on two days, the other on one and without a throttle.
    @Test
    @Order(19)
    void a_bike_of_two_days_has_one_line_for_each_figure_and_names_what_was_not_ridden() {
        DemoFleet.days(DemoFleet.SEED).stream()
                .filter(day ->
                        day.name().endsWith("-ostrelle-lamplight") || day.name().endsWith("-corrowan-daybook"))
                .forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
        String twice = desk.get("/bikes/ostrelle-lamplight").body();
        assertThat(twice.split("<h3>Stopping distance</h3>", -1)).hasSize(2);
        assertThat(twice)
                .contains("Earlier: ", "firmware 1.4, 15 Mar 2031", "The same of 15 Mar 2031")
                .containsPattern("gain, mph.*±")
                .doesNotContain("level off", "level throttle");
        assertThat(desk.get("/bikes/corrowan-daybook").body())
                .contains("Standing start, by throttle alone.", "No throttle is fitted.")
                .doesNotContain("no-value\">not ridden");
        assertThat(desk.get("/days/2031-04-08-corrowan-daybook").body())
                .contains("by throttle alone:", "no throttle is fitted.", "EDT, America/New_York");
    }

    private static byte[] read(org.measuredmile.recording.day.DayFolder.ByteSource source) {
        try (var bytes = source.open()) {
            return bytes.readAllBytes();
        } catch (IOException failed) {
            throw new AssertionError(failed);
        }
    }

    private static Map<String, String> run(String speed, String distance) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("variant.method", "tape");
        fields.put("variant.surface", "dry");
        fields.put("variant.nominal", "20-mph");
        fields.put("state", "good");
        fields.put("reading.entry-speed", speed);
        fields.put("reading.stopping-distance", distance);
        fields.put("who", "T1");
        return fields;
    }
}
