package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.demo.DemoFleet;
import org.measuredmile.desk.web.view.Paths;
import org.measuredmile.recording.day.DayFolder;

/// The words of a clip, a camera's frames and a day's instruments in a real browser.
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ClipBrowserTest {

    private Optional<Browser> browser = Optional.empty();
    private Optional<ServedArchive> served = Optional.empty();
    private String day = "";
    private String clip = "";

    @BeforeAll
    void start(@TempDir Path folder) {
        browser = Browser.find();
        assumeTrue(browser.isPresent(), "no Chromium found: install it (Debian: apt-get install chromium)");
        var desk = new ServedArchive(folder);
        served = Optional.of(desk);
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
        served.ifPresent(ServedArchive::close);
        browser.ifPresent(Browser::close);
    }

    private String url(String path) {
        return served.orElseThrow().url(path);
    }

    @Test
    @Order(1)
    void a_number_said_is_accepted_on_a_phone_without_script_and_another_is_left() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, false);
        page.navigate(url(Paths.day(day)));
        page.getByText("The numbers said").click();
        Locator rows = page.locator(".clip-rows > li");
        int said = rows.count();
        rows.nth(5).getByText("Accept…").click();
        page.getByText("Leave it").click();
        assertThat(page.locator(".clip-form").count()).isZero();
        rows.nth(6).getByText("Accept…").click();
        page.locator("[name=who]").fill("");
        page.getByText("Accept it").click();
        assertThat(page.locator(".clip-form").textContent()).contains("Not accepted yet", "Who accepts it?");
        page.locator("[name=why]").fill("read off the display");
        page.locator("[name=who]").fill("T1");
        page.getByText("Accept it").click();
        assertThat(page.locator(".clip-rows > li.taken").textContent()).contains("Accepted:", "by T1");
        assertThat(rows.count()).isEqualTo(said);
        page.context().close();
    }

    @Test
    @Order(2)
    void frames_tell_their_seconds_while_they_are_typed() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, true);
        page.navigate(url(Paths.trial(day, "standingstart")));
        page.locator("[name='reading.time-to-10-mph']").fill("frames 1203 to 1266 by camera-1");
        page.locator(".told-frames").waitFor();
        // 63 · 1001 / 30000 s; arithmetic.
        assertThat(page.locator("#told").textContent()).contains("2.102", "each end ± 0.017");
        page.locator("[name='reading.time-to-10-mph']").fill("frames 1266 to 1203");
        page.getByText("names no frames in their order").waitFor();
        page.context().close();
    }

    @Test
    @Order(3)
    void a_day_is_begun_with_its_instruments() {
        Page page = browser.orElseThrow().page(1440, ColorScheme.LIGHT, true);
        page.navigate(url("/days/new"));
        assertThat(page.locator("[name=instrumentsOf]").inputValue()).isEqualTo(day);
        ServedArchive.typedDay().forEach((field, value) -> {
            Locator control = page.locator("[name='" + field + "']");
            if (control.evaluate("one => one.tagName").equals("SELECT")) {
                control.selectOption(value);
            } else {
                control.fill(value);
            }
        });
        page.locator("[name='instrument.1.id']").fill("camera-9");
        page.locator("[name='instrument.1.kind']").selectOption("camera");
        page.locator("[name='instrument.1.frameRate']").fill("240");
        page.getByText("Begin the day").click();
        page.waitForURL("**/days/2031-06-30-brindle-causeway");
        page.getByText("Instruments").first().click();
        assertThat(page.locator(".pairs").textContent()).contains("tape-1", "camera-9", "240 frames a second");
        page.context().close();
    }

    @Test
    @Order(4)
    void the_pages_are_usable_by_everybody_at_both_widths_in_light_and_dark() {
        var faults = new ArrayList<String>();
        for (int width : new int[] {390, 1440}) {
            Page page = browser.orElseThrow().page(width, ColorScheme.LIGHT, true);
            page.navigate(url(clip));
            String open = page.locator(".clip-act a.act").nth(5).getAttribute("href");
            for (String path : List.of(clip, open, Paths.instruments(day), "/days/new")) {
                page.navigate(url(path));
                PageFaults.inLightAndDark(page, path + " at " + width, faults);
            }
            page.context().close();
        }
        assertThat(faults).isEmpty();
    }
}
