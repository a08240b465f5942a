package org.measuredmile.comparison.spec;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.measuredmile.quantity.UnitSystem;

/// The page on a bike's folder names every item and every finding. With `-Dformats.write=true` its table of items is
/// written anew.
class SpecItemsPageTest {
    private static final Path PAGE = Path.of("..", "docs", "formats", "bike.md");
    private static final String BEGIN = "| item | is | kind | plausible | marked |\n| --- | --- | --- | --- | --- |\n";
    private static final String END = "<!-- end of items -->";

    @Test
    void theTableOfItemsIsWhatIsDeclared() throws IOException {
        String page = Files.readString(PAGE);
        int from = page.indexOf(BEGIN) + BEGIN.length();
        int to = page.indexOf(END);
        String table = SpecItems.ALL.stream().map(SpecItemsPageTest::row).collect(Collectors.joining());
        if (Boolean.getBoolean("formats.write")) {
            Files.writeString(PAGE, page.substring(0, from) + table + page.substring(to));
            page = Files.readString(PAGE);
            to = page.indexOf(END);
        }
        assertThat(page.substring(from, to))
                .as("write it with -Dformats.write=true")
                .isEqualTo(table);
    }

    @ParameterizedTest
    @EnumSource(SpecSlip.class)
    void everyFindingIsNamed(SpecSlip slip) throws IOException {
        assertThat(Files.readString(PAGE)).contains("`" + slip.code() + "`");
    }

    @Test
    void idsAreUniqueAndInLowerCase() {
        assertThat(SpecItems.ALL)
                .extracting(SpecItem::id)
                .doesNotHaveDuplicates()
                .allMatch(id -> id.matches("[a-z]+(-[a-z]+)*"));
    }

    private static String row(SpecItem item) {
        String units = java.util.Arrays.stream(UnitSystem.values())
                .map(system -> item.kind().shown(system).symbol())
                .filter(symbol -> !symbol.isEmpty())
                .distinct()
                .collect(Collectors.joining(" or "));
        String kind = item.isWords() ? "words" : units.isEmpty() ? "a number" : units;
        String band = item.band().map(SpecItem.Band::words).orElse("");
        return "| `" + item.id() + "` | " + item.words() + " | " + kind + " | " + band + " | "
                + (item.marking().isEmpty() ? "" : "`" + item.marking() + "`") + " |\n";
    }
}
