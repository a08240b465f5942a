package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.measuredmile.archive.Act;
import org.measuredmile.desk.SmallFleet;

/// Expected-value lines and the control bike in a real browser.
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LinesBrowserTest {
    private static final List<String> PATHS =
            List.of("/standings", "/standings/lines/weight", "/standings/lines/range", "/standings/control");

    private Optional<Browser> browser = Optional.empty();
    private Optional<ServedArchive> served = Optional.empty();

    @BeforeAll
    void start(@TempDir Path folder) {
        browser = Browser.find();
        assumeTrue(browser.isPresent(), "no Chromium found: install it (Debian: apt-get install chromium)");
        var desk = new ServedArchive(folder);
        served = Optional.of(desk);
        SmallFleet.weighIns().forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
        SmallFleet.controlRides().forEach(day -> desk.archive().importDay(day, new Act("T1", "invented")));
    }

    @AfterAll
    void stop() {
        served.ifPresent(ServedArchive::close);
        browser.ifPresent(Browser::close);
    }

    @Test
    void they_are_usable_by_everybody_at_both_widths_in_light_and_dark() {
        var faults = new ArrayList<String>();
        for (int width : new int[] {390, 1440}) {
            Page page = browser.orElseThrow().page(width, ColorScheme.LIGHT, true);
            for (String path : PATHS) {
                page.navigate(served.orElseThrow().url(path));
                PageFaults.inLightAndDark(page, path + " at " + width, faults);
                smallTargets(page, path + " at " + width, faults);
            }
            page.context().close();
        }
        assertThat(faults).isEmpty();
    }

    private static void smallTargets(Page page, String at, List<String> faults) {
        Object small = page.evaluate("""
                () => innerWidth > 720 ? 0 : [...document.querySelectorAll('main a, main button')]
                  .filter(one => one.checkVisibility() && !one.closest('p:not(.acts-line), figcaption'))
                  .filter(one => { const box = one.getBoundingClientRect();
                    return box.width > 0 && (box.height < 43.5 || box.width < 43.5) }).length
                """);
        if (!small.equals(0)) {
            faults.add(at + ": " + small + " small targets");
        }
    }

    @Test
    void the_drawing_of_a_phone_is_another_than_that_of_the_desk() {
        for (int width : new int[] {390, 1440}) {
            Page page = browser.orElseThrow().page(width, ColorScheme.LIGHT, false);
            page.navigate(served.orElseThrow().url("/standings/lines/weight"));
            var shown = page.locator(".line-plot svg.plot:visible");
            assertThat(shown.count()).isOne();
            assertThat(shown.getAttribute("width")).isEqualTo(width == 390 ? "352" : "760");
            page.context().close();
        }
    }
}
