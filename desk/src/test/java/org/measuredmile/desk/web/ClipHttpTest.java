package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
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
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;

/// The invented day with a clip: what was said is listed, and a person accepts some of it.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ClipHttpTest {
    private static final Pattern AT = Pattern.compile("id=\"said-([\\d.]+)\"");

    private ServedArchive desk;
    private String day = "";
    private String clip = "";

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        DayFolder filmed = DemoFleet.days(DemoFleet.SEED).stream()
                .filter(one -> one.name().endsWith("skelloway-causeway"))
                .findFirst()
                .orElseThrow();
        desk.archive().importDay(filmed, new Act("T1", "invented"));
        day = filmed.name();
        clip = Paths.clip(day, "ride-along.vtt");
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private List<String> times() {
        return AT.matcher(desk.get(clip).body())
                .results()
                .map(one -> one.group(1))
                .toList();
    }

    private TestDay kept() {
        return desk.archive().reduced(day).orElseThrow().day();
    }

    private List<Reading> said() {
        return kept().readings().stream()
                .filter(reading -> reading.note().startsWith("said in "))
                .toList();
    }

    private static Map<String, String> form(String at, String reading, String run, String value) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("at", at);
        fields.put("reading", reading);
        fields.put("run", run);
        fields.put("value", value);
        fields.put("who", "T1");
        return fields;
    }

    @Test
    @Order(1)
    void the_day_leads_to_the_numbers_said_and_each_stands_beside_the_trace() {
        assertThat(desk.get(Paths.day(day)).body()).contains("href=\"" + clip + "\"", "The numbers said");
        String page = desk.get(clip).body();
        assertThat(page)
                .contains("levels-out.csv</b>, set:", "speeds said agree with the receiver speed")
                .contains("Agrees; the trace has")
                .containsPattern("<b>\\d+\\.\\d.mph</b><span class=\"other\">\\d+\\.\\d\\d.km/h</span>")
                .contains("“30 miles an hour”", "Disagrees; the trace has")
                .contains("No speed, so not compared.")
                .contains("Could be Assist speeds: steady speed, run a-0");
        assertThat(times()).hasSizeGreaterThan(12);
        assertThat(said()).isEmpty();
    }

    @Test
    @Order(2)
    void a_recording_that_gives_no_offset_says_why() {
        assertThat(desk.get(clip).body())
                .contains("starts-pedal-out.csv</b>, not set:", "Check that clip and recording are of the same ride");
    }

    @Test
    @Order(3)
    void an_acceptance_with_faults_changes_nothing_and_keeps_what_was_typed() {
        String at = times().getFirst();
        int before = desk.archive().history().size();
        var typed = form(at, "assistspeed/speed", "", "nine teen");
        typed.put("who", "");
        typed.put("why", "seen in the clip");
        var answer = desk.post(clip, typed);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("Not accepted yet", "Who accepts it?", "Of which run?")
                .contains("value=\"nine teen\"", "value=\"seen in the clip\"", "id=\"value-fault\"");
        assertThat(desk.post(clip, form(at, "assistspeed/speed", "b-01", "15 mph"))
                        .body())
                .contains("Run b-01 is no run of this trial");
        assertThat(desk.post(clip, form("1.234", "assistspeed/speed", "a-01", "15 mph"))
                        .statusCode())
                .isEqualTo(404);
        assertThat(desk.archive().history()).hasSize(before);
        assertThat(said()).isEmpty();
    }

    @Test
    @Order(4)
    void an_accepted_number_is_a_reading_of_its_run_with_its_words_its_moment_and_who() {
        String at = times().get(1);
        var typed = form(at, "assistspeed/speed", "a-02", "15.2 mph");
        typed.put("why", "read off the display");
        var answer = desk.post(clip, typed);
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location")).contains(clip + "#said-" + at);
        var reading = said().getFirst();
        assertThat(reading.run()).isEqualTo("a-02");
        assertThat(reading.name()).isEqualTo("speed");
        assertThat(reading.written()).isEqualTo("15.2 mph");
        assertThat(reading.by()).isEqualTo("T1");
        assertThat(reading.note())
                .startsWith("said in ride-along.vtt at " + at + " s: “")
                .endsWith("; read off the display");
        assertThat(reading.time()).isPresent();
        var act = desk.archive().history().getLast();
        assertThat(act.who()).isEqualTo("T1");
        assertThat(act.why())
                .contains("said in ride-along.vtt at " + at + " s, accepted as steady speed of run a-02")
                .endsWith(": read off the display");
        String page = desk.get(clip).body();
        assertThat(page).contains("Accepted:", "15.2 mph, steady speed of run a-02, by T1");
        assertThat(times()).as("nothing said is lost").contains(at).hasSizeGreaterThan(12);
    }

    @Test
    @Order(5)
    void a_reading_that_is_there_already_stays() {
        var answer = desk.post(clip, form(times().get(2), "assistspeed/speed", "a-02", "16 mph"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("It has this reading already: 15.2 mph by T1. That one stays.");
        assertThat(said()).hasSize(1);
    }

    @Test
    @Order(6)
    void a_number_may_belong_to_a_run_that_nobody_wrote_down_yet() {
        String at = times().get(6);
        var typed = form(at, "assistspeed/cut-off", "new", "19,8 mph");
        assertThat(desk.post(clip, typed).body()).contains("id=\"variant-fault\"");
        typed.put("variant", "drive=pedal level=5");
        typed.put("rider", "R1");
        assertThat(desk.post(clip, typed).statusCode()).isEqualTo(303);
        var reading = said().getLast();
        Run run = kept().runs().stream()
                .filter(one -> one.id().equals(reading.run()))
                .findFirst()
                .orElseThrow();
        assertThat(run.state()).isEqualTo(Run.State.PROPOSED);
        assertThat(run.rider()).isEqualTo("R1");
        assertThat(run.variant().text()).isEqualTo("drive=pedal level=5");
        assertThat(run.start()).isEqualTo(reading.time());
    }

    @Test
    @Order(7)
    void words_without_a_recording_are_listed_and_the_missing_clock_is_said() {
        desk.get("/");
        desk.post("/days/new", ServedArchive.typedDay());
        String bare = "2031-06-30-brindle-causeway";
        String words = "WEBVTT\n\n00:01.000 --> 00:04.000\nthat was twenty two feet four inches\n";
        desk.upload(Paths.day(bare) + "/files", "T1", Map.of("clip.vtt", words.getBytes(StandardCharsets.UTF_8)));
        String page = desk.get(Paths.clip(bare, "clip.vtt")).body();
        assertThat(page)
                .contains("No recording of this day has a speed", "twenty two feet four inches", "22 feet 4 inches");
        assertThat(desk.get(Paths.clip(bare, "other.vtt")).statusCode()).isEqualTo(404);
    }
}
