package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.DayFolders;
import org.measuredmile.demo.DemoFleet;

/// Whole folders dropped and chosen in a real browser, with what may go wrong on the way.
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class DropBrowserTest {
    private static final String ID = "2031-06-30-brindle-causeway";

    /// A drop as browsers make it: entries, one of them a folder that gives its files in portions.
    private static final String DROP = """
            ([selector, count]) => {
              const file = (path) => ({ isFile: true, fullPath: "/ride/" + path,
                file: (take) => take(new File(["seconds,speed_mps\\n0,1\\n"], path.split("/").pop())) });
              const names = Array.from({ length: count }, (_, i) => `part/${i}.csv`).concat([".hidden", "Thumbs.db"]);
              const portions = [names.slice(0, 2), names.slice(2), []];
              const folder = { isFile: false, fullPath: "/ride",
                createReader: () => ({ readEntries: (take) => take(portions.shift().map(file)) }) };
              const event = new Event("drop", { bubbles: true, cancelable: true });
              event.dataTransfer = { items: [{ webkitGetAsEntry: () => folder }], files: [] };
              document.querySelector(selector).dispatchEvent(event);
            }""";

    private Optional<Browser> browser = Optional.empty();
    private Optional<ServedArchive> served = Optional.empty();

    @BeforeAll
    void start(@TempDir Path folder) {
        browser = Browser.find();
        assumeTrue(browser.isPresent(), "no Chromium found: install it (Debian: apt-get install chromium)");
        var desk = new ServedArchive(folder);
        served = Optional.of(desk);
        desk.post("/days/new", ServedArchive.typedDay());
    }

    @AfterAll
    void stop() {
        served.ifPresent(ServedArchive::close);
        browser.ifPresent(Browser::close);
    }

    @Test
    @Order(1)
    void a_dropped_folder_is_walked_through_and_every_file_of_it_kept() {
        Page page = day();
        page.evaluate(DROP, new Object[] {"form.drop", 5});
        Locator chosen = page.locator("[data-chosen]");
        page.waitForCondition(() -> chosen.textContent().contains("5 files"));
        assertThat(chosen.textContent()).contains("2 files of the system's own left out");
        page.locator("form.drop [name=who]").fill("T1");
        page.getByText("Send them").click();
        page.waitForURL("**since=**");
        assertThat(page.locator(".file-list").textContent())
                .contains("0.csv", "4.csv")
                .doesNotContain("hidden");
    }

    @Test
    @Order(2)
    void a_file_that_fails_costs_no_other_and_can_be_sent_again() {
        Page page = day();
        var asked = new AtomicInteger();
        page.route("**/uploads", route -> {
            if (asked.getAndIncrement() == 1) {
                route.fulfill(new Route.FulfillOptions().setStatus(413));
            } else {
                route.resume();
            }
        });
        page.locator("input[webkitdirectory]").setInputFiles(folderOf("x.csv", "y.csv", "z.csv"));
        page.locator("form.drop [name=who]").fill("T1");
        page.getByText("Send them").click();
        Locator failed = page.locator(".sending .failed");
        failed.waitFor();
        assertThat(failed.textContent()).contains("not sent: larger than 512 MB");
        page.getByText("1 file could not be sent; 2 files came through").waitFor();
        assertThat(page.evaluate("document.activeElement.textContent")).isEqualTo("Try those again");
        page.getByText("Keep the 2 that came").click();
        page.waitForURL("**since=**");
        assertThat(page.locator(".file-list").textContent()).contains(".csv");
        assertThat(served.orElseThrow().archive().day(ID).orElseThrow().revision().files().keySet().stream()
                        .filter(path -> path.matches("recordings/[xyz]\\.csv")))
                .hasSize(2);
    }

    @Test
    @Order(3)
    void a_folder_too_large_is_told_before_anything_is_sent() {
        Page page = day();
        page.evaluate(DROP, new Object[] {"form.drop", 2_001});
        Locator told = page.locator("[data-chosen][role=alert]");
        told.waitFor();
        assertThat(told.textContent())
                .contains("2,001 files are more than the 2,000")
                .contains("in parts");
    }

    @Test
    @Order(4)
    void nothing_is_sent_before_somebody_signs() {
        Page page = day();
        page.locator("input[webkitdirectory]").setInputFiles(folderOf("x.csv"));
        page.getByText("Send them").click();
        assertThat(page.locator("[data-chosen]").textContent()).contains("Who sends them?");
        assertThat(page.evaluate("document.activeElement.name")).isEqualTo("who");
    }

    @Test
    @Order(5)
    void a_test_days_folder_becomes_a_day(@TempDir Path folder) throws IOException {
        var day = DemoFleet.days(DemoFleet.SEED).getFirst();
        Path place = folder.resolve(day.name());
        DayFolders.write(day, place);
        Page page = browser.orElseThrow().page(1440, ColorScheme.LIGHT, true);
        page.navigate(served.orElseThrow().url("/days"));
        page.locator("input[webkitdirectory]").setInputFiles(place);
        page.locator("form.drop [name=who]").fill("T1");
        page.getByText("Take it in").click();
        page.waitForURL("**/days/" + day.name());
        assertThat(page.locator(".file-list").textContent()).contains("stops.csv", "Braking");
        page.locator(".drawn-trace svg a.run").first().waitFor();
        assertThat(page.locator(".drawn-track svg").count()).isPositive();
    }

    private Page day() {
        Page page = browser.orElseThrow().page(1440, ColorScheme.LIGHT, true);
        page.navigate(served.orElseThrow().url("/days/" + ID));
        return page;
    }

    private static Path folderOf(String... names) {
        try {
            Path folder = Files.createTempDirectory("ride");
            for (String name : names) {
                Path file = Files.write(folder.resolve(name), ("of " + name).getBytes(StandardCharsets.UTF_8));
                file.toFile().deleteOnExit();
            }
            return folder;
        } catch (IOException failed) {
            throw new AssertionError(failed);
        }
    }
}
