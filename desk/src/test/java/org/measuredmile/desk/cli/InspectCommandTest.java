package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InspectCommandTest {
    private static final String RIDE = """
            time_s,speed_kmh
            0.0,20.0
            0.1,20.1
            0.2,20.2
            0.3,20.1
            """;

    @TempDir
    private Path folder = Path.of("");

    @Test
    void aTableOfSpeedsIsSummedUp() throws IOException {
        var file = Files.writeString(folder.resolve("ride.csv"), RIDE);
        var ran = mile("inspect", file, "--json");
        assertThat(ran.exit()).isZero();
        var found = ran.json().path(0);
        assertThat(found.propertyNames())
                .containsExactly(
                        "file",
                        "format",
                        "device",
                        "startTime",
                        "zoneStated",
                        "samples",
                        "clockSeconds",
                        "ridingSeconds",
                        "distanceMetres",
                        "trackDistanceMetres",
                        "ascentMetres",
                        "channels",
                        "gaps",
                        "runs",
                        "findings",
                        "marks");
        assertThat(found.path("file").asString()).isEqualTo("ride.csv");
        assertThat(found.path("samples").asInt()).isEqualTo(4);
        assertThat(mile("inspect", file).out()).contains("delimited text").contains("samples    4");
    }

    @Test
    void eachRecordingInAPackedFileIsSummedUp() throws IOException {
        var file = folder.resolve("drop.zip");
        try (var zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (String name : List.of("a.csv", "b.csv", "words.txt")) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write((name.endsWith(".csv") ? RIDE : "only words\n").getBytes(StandardCharsets.UTF_8));
            }
        }
        var ran = mile("inspect", file, "--json");
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(ran.json().valueStream().map(one -> one.path("file").asString()))
                .containsExactly("drop.zip/a.csv", "drop.zip/b.csv", "drop.zip/words.txt");
    }

    @Test
    void aFileThatCannotBeReadSaysWhyBesideOneThatCan() throws IOException {
        var good = Files.writeString(folder.resolve("ride.csv"), RIDE);
        var empty = Files.createFile(folder.resolve("empty.gpx"));
        assertThat(mile("inspect", good, empty).exit()).isEqualTo(1);
        var alone = mile("inspect", empty, "--json");
        assertThat(alone.exit()).isEqualTo(2);
        assertThat(alone.json().path(0).path("findings").isEmpty()).isFalse();
        assertThat(alone.json().path(0).path("format").isNull()).isTrue();
    }

    @Test
    void whatColumnsWereTakenForIsShownWithItsReasonAndFirstValues() throws IOException {
        var file = Files.writeString(folder.resolve("log.csv"), "time (s),spd,brk (bar)\n0,36,1\n1,18,2\n");
        assertThat(mile("inspect", file, "--columns").out())
                .contains("spd        other        its name tells nothing; kept as it is        36 · 18");
        var column = mile("inspect", file, "--columns", "--json").json().path(0).path("columns");
        assertThat(column.valueStream().map(one -> one.path("meaning").asString()))
                .containsExactly("time", "other", "other");
        assertThat(column.path(1).path("first").valueStream().map(one -> one.asString()))
                .containsExactly("36", "18");
        assertThat(mile("inspect", file, "--json").json().path(0).has("columns"))
                .isFalse();
    }

    @Test
    void aColumnIsTakenAsToldAndAWrongWordIsAnsweredWithTheRightOnes() throws IOException {
        var file = Files.writeString(folder.resolve("log.csv"), "time (s),spd\n0,36\n1,18\n");
        var told = mile("inspect", file, "--column", "spd=wheel-speed:km/h", "--columns");
        assertThat(told.exit()).isZero();
        assertThat(told.out()).contains("wheel-speed  km/h").contains("set for this look");
        assertThat(mile("inspect", file, "--column", "spd=sped").err())
                .contains("no meaning")
                .contains("wheel-speed");
        assertThat(mile("inspect", file, "--column", "spd=speed:bar").err())
                .contains("no unit of speed")
                .contains("km/h");
        assertThat(mile("inspect", file, "--column", "spd").err()).contains("NAME=MEANING");
    }

    @Test
    void aFolderOrAMissingFileIsToldClearly() {
        assertThat(mile("inspect", folder).err()).contains("is a folder").contains("mile reduce");
        assertThat(mile("inspect", folder.resolve("nothing.csv")).err()).contains("no such file");
        assertThat(mile("inspect").exit()).isEqualTo(2);
    }
}
