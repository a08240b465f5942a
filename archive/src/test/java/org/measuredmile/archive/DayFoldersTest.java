package org.measuredmile.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.recording.day.Course;
import org.measuredmile.recording.day.DayRead;
import org.measuredmile.recording.day.DayReader;

class DayFoldersTest {
    private static final String HILL = """
            id: hill
            kind: climb
            length: {value: 300 m, standardUncertainty: 0.1 m}
            profile: hill-heights.csv
            """;

    @TempDir
    private Path root;

    private void write(String path, String text) throws IOException {
        var file = root.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    @Test
    void aCourseKeptOutsideTheDayBringsItsProfileAlong() throws IOException {
        write("days/one/day.yaml", "date: 2031-05-04\ntimeZone: Europe/Berlin\nbike: one\ncourses: [hill]\n");
        write("courses/hill.yaml", HILL);
        write("courses/hill-heights.csv", "distance,height\n0,0\n150,8\n300,18\n");
        var day = DayFolders.read(root.resolve("days/one"));
        assertThat(day.texts()).containsKeys("courses/hill.yaml", "courses/hill-heights.csv");
        var read = (DayRead.Read) DayReader.read(day);
        assertThat(read.day().courses())
                .singleElement()
                .extracting(Course::heights)
                .satisfies(heights -> assertThat(heights.points()).hasSize(3));
    }

    @Test
    void aProfileNamedByAPathIsNotFetchedFromElsewhere() throws IOException {
        write("days/one/day.yaml", "date: 2031-05-04\ntimeZone: Europe/Berlin\nbike: one\ncourses: [hill]\n");
        write("courses/hill.yaml", HILL.replace("hill-heights.csv", "../secret.csv"));
        write("secret.csv", "distance,height\n0,0\n300,18\n");
        assertThat(DayFolders.read(root.resolve("days/one")).texts().keySet())
                .noneMatch(file -> file.contains("secret"));
    }
}
