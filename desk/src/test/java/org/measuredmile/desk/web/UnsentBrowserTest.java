package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.recording.day.Run;
import org.measuredmile.recording.day.TestDay;

/// A run sheet on a phone whose connection comes and goes: nothing typed is lost, and nothing is kept twice.
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class UnsentBrowserTest {
    private static final String DAY = "2031-06-30-brindle-causeway";
    private static final String SHEET = "/days/" + DAY + "/trials/braking";

    private Optional<Browser> browser = Optional.empty();
    private Optional<ServedArchive> served = Optional.empty();

    @BeforeAll
    void start(@TempDir Path folder) {
        browser = Browser.find();
        assumeTrue(browser.isPresent(), "no Chromium found: install it (Debian: apt-get install chromium)");
        var desk = new ServedArchive(folder);
        served = Optional.of(desk);
        desk.get("/");
        desk.post("/days/new", ServedArchive.typedDay());
    }

    @AfterAll
    void stop() {
        served.ifPresent(ServedArchive::close);
        browser.ifPresent(Browser::close);
    }

    private List<Run> runs() {
        TestDay day = served.orElseThrow().archive().reduced(DAY).orElseThrow().day();
        return day.runs();
    }

    private static void type(Page page, String speed, String distance) {
        page.locator("[name='reading.entry-speed']").fill(speed);
        page.locator("[name='reading.stopping-distance']").fill(distance);
        page.locator("form[data-told] [name=who]").fill("T1");
    }

    @Test
    void runs_typed_without_a_signal_wait_on_the_phone_and_are_sent_once_when_it_is_back() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, true);
        page.navigate(served.orElseThrow().url(SHEET));
        int before = runs().size();
        page.context().setOffline(true);
        type(page, "20.3", "21.2 ft");
        page.getByText("Keep run").click();
        page.getByText("1 unsent").waitFor();
        assertThat(page.locator("[data-unsent]").textContent()).contains("no signal; kept here");
        assertThat(page.locator("[name='reading.entry-speed']").inputValue()).isEmpty();
        type(page, "19.8", "20.7 ft");
        page.getByText("Keep run").click();
        page.getByText("2 unsent").waitFor();
        assertThat(runs()).hasSize(before);
        page.context().setOffline(false);
        page.getByText("all sent").waitFor();
        assertThat(runs()).hasSize(before + 2);
        page.navigate(served.orElseThrow().url(SHEET));
        assertThat(page.locator("[data-unsent]").isVisible()).isFalse();
        assertThat(runs()).hasSize(before + 2);
        page.context().close();
    }

    @Test
    void what_was_being_typed_is_there_again_when_the_sheet_is_opened_again() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, true);
        page.navigate(served.orElseThrow().url(SHEET));
        type(page, "20.4", "21 ft 11 in");
        page.locator("[name=note]").fill("a dog far off");
        page.navigate(served.orElseThrow().url("/days"));
        page.navigate(served.orElseThrow().url(SHEET));
        assertThat(page.locator("[name='reading.stopping-distance']").inputValue())
                .isEqualTo("21 ft 11 in");
        assertThat(page.locator("[name=note]").inputValue()).isEqualTo("a dog far off");
        page.getByText("Keep run").click();
        page.locator("#kept").waitFor();
        assertThat(page.locator("[name='reading.stopping-distance']").inputValue())
                .isEmpty();
        page.context().close();
    }

    @Test
    void feet_and_inches_are_typed_on_keys_of_our_own_where_there_is_no_mouse() {
        Page page = browser.orElseThrow().touched(390);
        page.navigate(served.orElseThrow().url(SHEET));
        page.locator("[name='reading.stopping-distance']").tap();
        for (String key : List.of("2", "1", "ft", "6", "½", "1", "rub out", "in")) {
            page.locator(".pad button")
                    .getByText(key, new Locator.GetByTextOptions().setExact(true))
                    .tap();
        }
        assertThat(page.locator("[name='reading.stopping-distance']").inputValue())
                .isEqualTo("21 ft 6½ in ");
        page.locator("[name='reading.entry-speed']").tap();
        assertThat(page.locator(".pad").count()).isZero();
        page.locator("[name='reading.entry-speed']").fill("20.2");
        page.locator("form[data-told] [name=who]").fill("T1");
        page.getByText("Keep run").click();
        page.locator("#kept").waitFor();
        assertThat(served.orElseThrow()
                        .archive()
                        .reduced(DAY)
                        .orElseThrow()
                        .day()
                        .readings()
                        .getLast()
                        .written())
                .isEqualTo("21 ft 6½ in");
        page.context().close();
    }

    @Test
    void a_refused_run_shows_its_faults_as_ever() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, true);
        page.navigate(served.orElseThrow().url(SHEET));
        type(page, "203", "21.2 ft");
        page.getByText("Keep run").click();
        page.getByText("Not kept yet").waitFor();
        assertThat(page.locator("[name='reading.entry-speed']").inputValue()).isEqualTo("203");
        page.context().close();
    }

    @Test
    void a_run_that_comes_twice_is_kept_once_with_the_moment_it_was_typed() {
        var desk = served.orElseThrow();
        String typedAt = java.time.Instant.now().minusSeconds(3_600).toString();
        Map<String, String> fields = new LinkedHashMap<>(Map.of(
                "variant.method", "tape",
                "variant.surface", "dry",
                "variant.nominal", "20-mph",
                "direction", "out",
                "state", "good",
                "reading.entry-speed", "20.1",
                "reading.stopping-distance", "21.5",
                "who", "T1",
                "typedAt", typedAt));
        int before = runs().size();
        var first = desk.post(SHEET, fields);
        var second = desk.post(SHEET, fields);
        assertThat(runs()).hasSize(before + 1);
        assertThat(second.headers().firstValue("Location"))
                .isEqualTo(first.headers().firstValue("Location"));
        assertThat(runs().getLast().start().orElseThrow().toString()).isEqualTo(typedAt.substring(0, 19) + "Z");
        fields.put("reading.stopping-distance", "22.5");
        desk.post(SHEET, fields);
        assertThat(runs()).hasSize(before + 2);
        fields.put("typedAt", "2001-01-01T00:00:00Z");
        desk.post(SHEET, fields);
        assertThat(runs().getLast().start().orElseThrow())
                .isAfter(java.time.Instant.now().minusSeconds(600));
    }
}
