package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Bikes side by side and a shortlist, on an archive of three invented bikes of which one stopped from a higher speed.
class CompareCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private Path archive() {
        return folder.resolve("archive");
    }

    @BeforeEach
    void take() throws IOException {
        mile(
                "import",
                "--archive",
                archive(),
                DayOnDisk.write(folder, "day-1", "packhorse", "20.3"),
                DayOnDisk.write(folder, "day-2", "dray", "20.8"),
                DayOnDisk.write(folder, "day-3", "barrow", "20.3"));
    }

    private Ran with(String command, String... words) {
        var all = new ArrayList<Object>(List.of(command, "--archive", archive()));
        all.addAll(List.of(words));
        return mile(all.toArray());
    }

    @Test
    void theJsonHasARowAFigureWithValuesDifferencesAndASaying() {
        var ran = with("compare", "packhorse", "Ostervald dray", "barrow", "--json");
        assertThat(ran.exit()).isZero();
        assertThat(ran.json().size()).isEqualTo(1);
        var sides = ran.json().path(0);
        assertThat(sides.path("bikes").findValuesAsString("bike")).containsExactly("packhorse", "dray", "barrow");
        var row = sides.path("rows")
                .valueStream()
                .filter(one -> one.path("figure").asString().equals("braking.stopping-distance"))
                .findFirst()
                .orElseThrow();
        assertThat(row.path("unit").asString()).isEqualTo("m");
        assertThat(row.path("variant").path("method").asString()).isEqualTo("tape");
        assertThat(row.path("values").size()).isEqualTo(3);
        assertThat(row.path("differences").size()).isEqualTo(3);
        // The same readings on both: no difference at all.
        var same = row.path("differences").path(1);
        assertThat(same.path("one").asString()).isEqualTo("packhorse");
        assertThat(same.path("other").asString()).isEqualTo("barrow");
        assertThat(same.path("difference").asDouble()).isZero();
        assertThat(same.path("real").asBoolean()).isFalse();
        assertThat(same.path("adjusted").asDouble()).isEqualTo(1);
        assertThat(row.path("saying").asString()).isEqualTo("None of the three can be told from another.");
    }

    @Test
    void theTextSaysWhatWasDoneAndTheTableIsDelimited() {
        assertThat(with("compare", "packhorse", "dray", "--units", "imperial").out())
                .contains("Stopping", "packhorse", "ft", "packhorse less dray:", "(Holm)");
        var csv = with("compare", "packhorse", "dray", "--csv").out();
        assertThat(csv).startsWith("kind,chapter,figure,variant,unit,bike,other,value");
        assertThat(csv.lines().filter(line -> line.startsWith("difference,"))).isNotEmpty();
    }

    @Test
    void bikesThatAreNotThereAreNamedAllAtOnce() {
        var ran = with("compare", "packhorse", "nobody", "no-one");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err())
                .contains("\"nobody\" is no bike here; give one of")
                .contains("\"no-one\"");
        assertThat(with("compare", "packhorse").err()).contains("name from two to six");
        assertThat(with("compare", "packhorse", "packhorse").err()).contains("named twice");
    }

    @Test
    void aShortlistAnswersEveryBikeAndPrintsTheWishesBack() {
        var ran = with("shortlist", "stops<=30ft", "category=cargo", "--json");
        assertThat(ran.exit()).isZero();
        var list = ran.json().path(0);
        assertThat(list.path("wishes").asString()).isEqualTo("stops<=30ft category=cargo");
        assertThat(list.path("bikes").findValuesAsString("answer")).contains("sure");
        var reply = list.path("bikes").path(0).path("wishes").path(0);
        assertThat(reply.path("probability").asDouble()).isGreaterThan(0.975);
        assertThat(reply.path("unit").asString()).isEqualTo("m");
        assertThat(with("shortlist", "price<2000").out()).contains("maybe: 3 bikes", "no price is stated");
        assertThat(with("shortlist", "category=folding").exit()).isEqualTo(1);
    }

    @Test
    void aWrongListIsRefusedWithEveryFault() {
        var ran = with("shortlist", "stops=30ft cheap");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("write stops<=30ft").contains("cheap: it is no wish");
    }
}
