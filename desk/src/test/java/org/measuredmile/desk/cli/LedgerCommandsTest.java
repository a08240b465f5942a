package org.measuredmile.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.measuredmile.desk.cli.Ran.mile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/// Results of earlier years on the command line.
class LedgerCommandsTest {
    /// Three spellings of a length, a blank, and two results that are equal.
    private static final String LEDGER = """
            Model,category,trial,figure,variant,result,unit,date,n,source,note
            tollgate,cargo,braking,braking.stopping-distance,method=tape,"20'5.99""\",,2028-04-03,3,notebook,
            slipway,cargo,braking,braking.stopping-distance,method=tape,6.24,m,2028-05-03,3,notebook,
            sandbar,cargo,braking,braking.stopping-distance,,20 ft 6 in,,2028-06-03,3,notebook,
            groat,cargo,braking,braking.stopping-distance,method=tape,,,2028-07-03,,notebook,not ridden
            kiln,cargo,braking,braking.stopping-distance,method=tape,24 ft 0 in,,2028-08-03,3,notebook,
            trestle,cargo,braking,braking.stopping-distance,method=tape,24 ft 0 in,,2028-08-04,3,notebook,
            """;

    @TempDir
    private Path folder = Path.of("");

    private Path archive() {
        return folder.resolve("archive");
    }

    private Path ledger(String text) throws IOException {
        return Files.writeString(folder.resolve("earlier.csv"), text);
    }

    private Ran standings(Object... more) {
        var words = new java.util.ArrayList<Object>(java.util.List.of(
                "standings", "braking.stopping-distance", "--archive", archive(), "--units", "imperial", "--among"));
        words.addAll(java.util.List.of(more));
        return mile(words.toArray());
    }

    @Test
    void theColumnsAreShownAndNothingIsTakenInWithoutAYes() throws IOException {
        var ran = mile("import", "--ledger", ledger(LEDGER), "--archive", archive());
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.out()).contains("Model → bike", "result → value", "lines without a value: 1");
        assertThat(ran.err()).contains("Nothing was taken in").contains("--yes");
        assertThat(archive()).doesNotExist();
    }

    @Test
    void theCountLeavesTheBlankOutAndEqualResultsShareTheirRank() throws IOException {
        assertThat(mile("import", "--ledger", ledger(LEDGER), "--archive", archive(), "--yes")
                        .exit())
                .isZero();
        var standing = standings("category=cargo ledger=yes", "--json").json().path(0);
        assertThat(standing.path("population").path("count").asInt()).isEqualTo(5);
        assertThat(standing.path("rows").findValuesAsString("bike"))
                .containsExactly("slipway", "tollgate", "sandbar", "kiln", "trestle");
        assertThat(standing.path("rows").findValues("rank").stream().map(rank -> rank.asInt()))
                .containsExactly(1, 2, 2, 4, 4);
        assertThat(standing.path("rows").findValues("ledger"))
                .allSatisfy(one -> assertThat(one.asBoolean()).isTrue());
    }

    @Test
    void lengthsArePrintedInFeetAndHalfInches() throws IOException {
        mile("import", "--ledger", ledger(LEDGER), "--archive", archive(), "--yes");
        var text = standings("ledger=yes").out();
        assertThat(text)
                .contains("tollgate (ledger)")
                .contains("20 ft 6 in")
                .contains("20 ft 5½ in")
                .contains("24 ft 0 in");
        assertThat(text).doesNotContain("5.99").doesNotContain("12 in");
    }

    @Test
    void theLedgerStandsApartUnlessItIsAskedFor() throws IOException {
        mile("import", "--ledger", ledger(LEDGER), "--archive", archive(), "--yes");
        mile("import", DayOnDisk.usual(folder), "--archive", archive());
        assertThat(standings("category=cargo").out())
                .contains("1 bike with")
                .contains("not among them: 5 (a result of the ledger)");
        assertThat(standings("category=cargo ledger=yes").out()).contains("6 bikes with");
    }

    @Test
    void theSameFileAgainIsNothingNew() throws IOException {
        var file = ledger(LEDGER);
        mile("import", "--ledger", file, "--archive", archive(), "--yes");
        assertThat(mile("import", "--ledger", file, "--archive", archive(), "--yes")
                        .out())
                .contains("nothing new");
        ledger(LEDGER.replace("24 ft 0 in", "25 ft 0 in"));
        assertThat(mile("import", "--ledger", file, "--archive", archive(), "--yes")
                        .out())
                .contains("revision 2");
        assertThat(standings("ledger=yes").out()).contains("25 ft 0 in").doesNotContain("24 ft 0 in");
    }

    @Test
    void aLineThatCannotBeUsedIsNamedAndTheRestTakenIn() throws IOException {
        var ran = mile(
                "import",
                "--ledger",
                ledger(LEDGER.replace("6.24,m", "6.24,parsecs")),
                "--archive",
                archive(),
                "--yes");
        assertThat(ran.exit()).isZero();
        assertThat(ran.out()).contains("earlier.csv: line 3, result").contains("4 results");
    }

    @Test
    void aNeededColumnThatNobodyNamedIsAskedFor() throws IOException {
        var odd = ledger(LEDGER.replace("Model", "Velo").replace("result", "Ergebnis"));
        var ran = mile("import", "--ledger", odd, "--archive", archive(), "--yes");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("bike").contains("value").contains("no result can be taken in");
    }

    @Test
    void whatWasTakenInIsAnsweredInJson() throws IOException {
        var ran = mile("import", "--ledger", ledger(LEDGER), "--archive", archive(), "--yes", "--json");
        assertThat(ran.json().path(0).path("results").asInt()).isEqualTo(5);
        assertThat(ran.json().path(0).path("blanks").asInt()).isEqualTo(1);
        assertThat(mile("recompute", "--archive", archive()).exit()).isZero();
    }

    @Test
    void aLedgerIsExportedAndComesBack() throws IOException {
        mile("import", "--ledger", ledger(LEDGER), "--archive", archive(), "--yes");
        var out = folder.resolve("out");
        mile("export", out, "--archive", archive());
        var other = folder.resolve("other");
        assertThat(mile("import", out, "--archive", other).exit()).isZero();
        assertThat(mile("standings", "braking.stopping-distance", "--among", "ledger=yes", "--archive", other)
                        .out())
                .contains("5 bikes with");
    }
}
