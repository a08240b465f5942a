package org.measuredmile.recording.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.measuredmile.recording.day.CourseHeights.Point;

class ProfileLinesTest {
    private static final String HILL = """
            id: hill
            kind: climb
            length: {value: 300 m, standardUncertainty: 0.1 m}
            profile: hill-heights.csv
            """;

    private static FolderOf withProfile(String text) {
        return FolderOf.day().with("courses/hill.yaml", HILL).with("courses/hill-heights.csv", text);
    }

    private static Course hill(FolderOf folder) {
        return folder.readable().day().courses().stream()
                .filter(course -> course.id().equals("hill"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aProfileIsReadWithItsUnitsAndUncertainties() {
        var folder = withProfile("""
                distance,height,standard-uncertainty
                0,2.0,0
                150 m,650 cm,0.03
                300,20.0,
                """);
        assertThat(hill(folder).heights().points())
                .containsExactly(new Point(0, 2.0, 0), new Point(150, 6.5, 0.03), new Point(300, 20.0, 0.1));
        assertThat(hill(folder).heights().riseM()).isEqualTo(18);
        assertThat(folder.findings())
                .extracting(finding -> finding.code())
                .noneMatch(code -> code.startsWith("profile") || code.equals("file-unknown"));
    }

    @Test
    void aProfileSeenFromTheOtherGateRisesTheOtherWay() {
        var heights = new CourseHeights(List.of(new Point(0, 0, 0), new Point(100, 3, 0.1), new Point(300, 18, 0.2)));
        assertThat(heights.turned().points())
                .containsExactly(new Point(0, 18, 0.2), new Point(200, 3, 0.1), new Point(300, 0, 0));
        assertThat(heights.turned().turned()).isEqualTo(heights);
    }

    @Test
    void aProfileThatIsNotThereIsNamedAtItsKey() {
        var folder = FolderOf.day().with("courses/hill.yaml", HILL);
        assertThat(hill(folder).heights().isEmpty()).isTrue();
        assertThat(folder.findings())
                .filteredOn(finding -> finding.code().equals("profile-missing"))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.place().toString()).contains("courses/hill.yaml", "profile");
                    assertThat(finding.message()).contains("courses/hill-heights.csv");
                    assertThat(finding.remedy()).contains("courses/hill-heights.csv");
                });
    }

    /// Each bad line is named with its line and column; what the others say is kept.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "50,3,-0.1 | profile-negative | standard-uncertainty",
                "0,3,0.1 | profile-not-onward | distance",
                "-5,3,0.1 | profile-not-onward | distance",
                "50,40,0.1 | profile-too-steep | height",
                "50,,0.1 | cell-missing | height",
                "fifty,3,0.1 | not-a-quantity | distance"
            })
    void aBadLineIsLeftOutAndNamed(String line, String code, String column) {
        var folder = withProfile("distance,height,standard-uncertainty\n0,0,0\n" + line + "\n300,18,0.05\n");
        assertThat(folder.findings())
                .filteredOn(finding -> finding.code().equals(code))
                .singleElement()
                .satisfies(finding ->
                        assertThat(finding.place().toString()).contains("courses/hill-heights.csv", "line 3", column));
        assertThat(hill(folder).heights().points()).hasSize(2);
    }

    @Test
    void aProfileOfAnotherLengthOrOfOnePlaceIsNotUsed() {
        var other = withProfile("distance,height\n0,0\n280,18\n");
        assertThat(hill(other).heights().isEmpty()).isTrue();
        assertThat(other.findings()).extracting(finding -> finding.code()).contains("profile-other-length");
        var one = withProfile("distance,height\n0,0\n");
        assertThat(hill(one).heights().isEmpty()).isTrue();
        assertThat(one.findings()).extracting(finding -> finding.code()).contains("profile-too-short");
        var without = withProfile("along,height\n0,0\n300,18\n");
        assertThat(hill(without).heights().isEmpty()).isTrue();
        assertThat(without.findings()).extracting(finding -> finding.code()).contains("column-missing");
    }
}
