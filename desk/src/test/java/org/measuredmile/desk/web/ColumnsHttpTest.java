package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
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
import org.measuredmile.recording.Channel;
import org.measuredmile.recording.ChannelKind;
import org.measuredmile.recording.day.Instrument;
import org.measuredmile.recording.reader.Decoding;

/// A logger whose names say nothing, on two days: proposed, set, remembered, in the order of the tests.
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ColumnsHttpTest {
    private static final String FIRST = "2031-06-30-brindle-causeway";
    private static final String SECOND = "2031-07-01-brindle-causeway";
    private static final byte[] LOG =
            "t,v1,v2,temp (°C)\n0,36,0,21\n1,18,1,21\n2,9,1,22\n".getBytes(StandardCharsets.UTF_8);

    private ServedArchive desk;

    @BeforeAll
    void serve(@TempDir Path folder) {
        desk = new ServedArchive(folder);
        desk.get("/");
        var later = new LinkedHashMap<>(ServedArchive.typedDay());
        later.put("date", "2031-07-01");
        later.put("bike", "brindle-causeway");
        for (var fields : List.of(ServedArchive.typedDay(), later)) {
            assertThat(desk.post("/days/new", fields).statusCode()).isEqualTo(303);
        }
        for (String day : List.of(FIRST, SECOND)) {
            desk.upload(Paths.day(day) + "/files", "T1", Map.of("box.csv", LOG));
        }
    }

    @AfterAll
    void stop() {
        desk.close();
    }

    private static Map<String, String> fields(String who) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("instrument", "box-1");
        fields.put("kind", "wheel");
        String[] names = {"t", "v1", "v2", "temp (°C)"};
        for (int i = 0; i < names.length; i++) {
            fields.put("name." + (i + 1), names[i]);
        }
        fields.put("meaning.1", "time");
        fields.put("unit.1", "s");
        fields.put("meaning.2", "wheel-speed");
        fields.put("unit.2", "km/h");
        fields.put("meaning.3", "lever");
        fields.put("meaning.4", "");
        fields.put("who", who);
        fields.put("why", "as on its label");
        return fields;
    }

    private Optional<Channel> channel(String day, ChannelKind kind) {
        var decoding = desk.archive().reduced(day).orElseThrow().recordings().get("box.csv");
        return decoding instanceof Decoding.Decoded(var recording) ? recording.channel(kind) : Optional.empty();
    }

    private Instrument box(String day) {
        return desk.archive()
                .reduced(day)
                .orElseThrow()
                .day()
                .instrument("box-1")
                .orElseThrow();
    }

    @Test
    @Order(1)
    void whatEachColumnIsReadAsIsShownWithItsFirstValues() {
        assertThat(desk.get(Paths.day(FIRST)).body()).contains("Look at its columns");
        var page = desk.get(Paths.columns(FIRST, "box-1") + "&kind=wheel");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body())
                .contains("Columns of box-1", "36 · 18 · 9", "its name tells nothing; kept as it is")
                .contains("temperature in °C")
                .contains("Nothing is set");
    }

    @Test
    @Order(2)
    void faultsStandBesideTheirFieldsAndNothingIsKept() {
        int before = desk.archive().history().size();
        var wrong = fields("");
        wrong.put("unit.2", "bar");
        wrong.put("kind", "");
        var answer = desk.post(Paths.day(FIRST) + "/columns", wrong);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("Who says so?", "“bar” is no unit of wheel-speed", "What kind of instrument is it?")
                .contains("value=\"bar\"");
        assertThat(desk.archive().history()).hasSize(before);
    }

    @Test
    @Order(3)
    void whatIsSetReachesTheReaderAsARevisionWithWhoAndWhy() {
        assertThat(channel(FIRST, ChannelKind.WHEEL_SPEED)).isEmpty();
        var answer = desk.post(Paths.day(FIRST) + "/columns", fields("T1"));
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(channel(FIRST, ChannelKind.WHEEL_SPEED).orElseThrow().values())
                .containsExactly(10, 5, 2.5);
        assertThat(channel(FIRST, ChannelKind.LEVER)).isPresent();
        var act = desk.archive().history().getLast();
        assertThat(act.who()).isEqualTo("T1");
        assertThat(act.why())
                .isEqualTo("columns of box-1: t → time in s; v1 → wheel-speed in km/h; v2 → lever: as on its label");
        assertThat(desk.get(Paths.day(FIRST)).body()).contains("3\u00a0columns set");
        assertThat(desk.get(Paths.columns(FIRST, "box-1")).body())
                .contains("3\u00a0columns are set on this day", "set for box-1");
    }

    @Test
    @Order(4)
    void theSameInstrumentOnALaterDayIsShownAsItWasSetAndTakenOverByAPerson() {
        var page = desk.get(Paths.columns(SECOND, "box-1")).body();
        assertThat(page).contains("Shown as set for box-1 on", "It holds for this day once you set it");
        assertThat(page).contains("value=\"wheel-speed\" selected", "value=\"wheel\" selected");
        assertThat(channel(SECOND, ChannelKind.WHEEL_SPEED)).isEmpty();
        desk.post(Paths.day(SECOND) + "/columns", fields("M1"));
        assertThat(channel(SECOND, ChannelKind.WHEEL_SPEED)).isPresent();
        assertThat(box(SECOND).columns()).isEqualTo(box(FIRST).columns());
    }

    @Test
    @Order(5)
    void theRestCanBeSetAsItIsRead() {
        var all = fields("T1");
        all.put("act", "all");
        desk.post(Paths.day(SECOND) + "/columns", all);
        assertThat(box(SECOND).columns()).hasSize(4).anySatisfy(column -> {
            assertThat(column.meaning()).isEqualTo("temperature");
            assertThat(column.unit()).isEqualTo("°C");
        });
    }

    @Test
    @Order(6)
    void whatSpeaksAgainstASettingStandsOnItsPage() {
        var wrong = fields("T1");
        wrong.put("meaning.4", "pressure");
        wrong.put("unit.4", "hPa");
        desk.post(Paths.day(SECOND) + "/columns", wrong);
        assertThat(desk.get(Paths.columns(SECOND, "box-1")).body())
                .contains("was set to mean pressure in hPa, but its head says");
    }
}
