package org.measuredmile.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Map;
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

/// Runs decided on the plot in a real browser: by mouse, by finger, by keys, and without script.
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TraceBrowserTest {
    private static final String DAY = "/days/2031-06-30-brindle-causeway";
    private static final String FILE = DAY + "/files/stops.csv";

    private Optional<Browser> browser = Optional.empty();
    private Optional<ServedArchive> served = Optional.empty();

    @BeforeAll
    void start(@TempDir Path folder) {
        browser = Browser.find();
        assumeTrue(browser.isPresent(), "no Chromium found: install it (Debian: apt-get install chromium)");
        var desk = new ServedArchive(folder);
        served = Optional.of(desk);
        desk.post("/days/new", ServedArchive.typedDay());
        desk.post(DAY + "/check", Map.of("by", "M1", "secondPerson", "T1"));
        desk.upload(DAY + "/files", "T1", Map.of("stops.csv", ServedArchive.recordingOfStops()));
    }

    @AfterAll
    void stop() {
        served.ifPresent(ServedArchive::close);
        browser.ifPresent(Browser::close);
    }

    @Test
    @Order(1)
    void by_mouse_an_end_is_dragged_and_the_run_moved() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.LIGHT, true), FILE);
        band(page, 0).click();
        Locator end = page.locator(".trace-handle.at-to");
        end.waitFor();
        double before = field(page, "to");
        BoundingBox box = end.boundingBox();
        page.mouse().move(box.x + 8, box.y + box.height / 2);
        page.mouse().down();
        page.mouse().move(box.x + 38, box.y + box.height / 2);
        page.mouse().up();
        assertThat(field(page, "to")).isGreaterThan(before + 0.05);
        write(page);
        double moved = field(page, "to");
        page.locator("details[open] [data-act=move]").click();
        page.waitForURL("**kept=**");
        assertThat(page.locator("[data-said]").textContent()).isNotBlank();
        assertThat(field(page, "to")).isCloseTo(moved, within(0.002));
        assertThat(page.locator("#history ~ *, .history-table")
                        .allTextContents()
                        .toString())
                .contains("run 1 set to");
    }

    @Test
    @Order(2)
    void by_keys_a_run_is_reached_its_ends_are_told_and_moved_and_it_is_confirmed() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.DARK, true), FILE);
        page.locator("[data-add]").focus();
        page.keyboard().press("Tab");
        assertThat(page.evaluate("document.activeElement.getAttribute('data-run')"))
                .isEqualTo("1");
        page.keyboard().press("Tab");
        Locator from = page.locator(".trace-handle.at-from");
        assertThat(from.getAttribute("role")).isEqualTo("slider");
        assertThat(from.getAttribute("aria-label")).isEqualTo("Start of Braking, run 1");
        assertThat(from.getAttribute("aria-valuetext"))
                .containsPattern("^\\d+\\.\\d\\d s, \\d\\d:\\d\\d:\\d\\d\\.\\d\\d$");
        double step = Double.parseDouble(page.locator("[data-trace-desk]").getAttribute("data-step"));
        double at = field(page, "from");
        page.keyboard().press("ArrowRight");
        assertThat(field(page, "from")).isCloseTo(at + step, within(0.0015));
        page.keyboard().press("Shift+ArrowLeft");
        assertThat(field(page, "from")).isCloseTo(Math.max(0, at - 9 * step), within(0.0025));
        page.keyboard().press("Home");
        assertThat(field(page, "from")).isZero();
        assertThat(from.getAttribute("aria-valuenow")).isEqualTo("0.000");
        page.keyboard().press("Tab");
        page.keyboard().press("End");
        assertThat(field(page, "to"))
                .isEqualTo(Double.parseDouble(page.locator("[data-trace-desk]").getAttribute("data-span")));
        page.reload();
        settled(page);
        band(page, 0).focus();
        page.keyboard().press("ArrowRight");
        page.waitForCondition(() -> !"1".equals(page.evaluate("document.activeElement.getAttribute('data-run')")));
        assertThat(page.locator("details[open]").count()).isOne();
        write(page);
        band(page, 1).focus();
        page.keyboard().press("Tab");
        page.keyboard().press("Enter");
        page.waitForURL("**kept=**");
        assertThat(page.locator("details[open] summary").textContent()).contains("valid");
    }

    @Test
    @Order(3)
    void by_finger_a_run_is_tapped_its_end_dragged_and_the_view_pinched() {
        Page page = opened(browser.orElseThrow().phone(), FILE);
        band(page, 2).tap();
        Locator end = page.locator(".trace-handle.at-to");
        end.waitFor();
        settled(page);
        page.locator(".trace-said").scrollIntoViewIfNeeded();
        BoundingBox box = end.boundingBox();
        assertThat(box.width).as("a finger's width").isGreaterThanOrEqualTo(44);
        double before = field(page, "to");
        CDPSession finger = page.context().newCDPSession(page);
        double y = box.y + box.height / 2;
        touch(finger, "touchStart", box.x + 10, y);
        touch(finger, "touchMove", box.x + 16, y);
        touch(finger, "touchMove", box.x + 30, y);
        touch(finger, "touchEnd");
        assertThat(field(page, "to")).isGreaterThan(before);
        double wide = width(page);
        BoundingBox plot = page.locator(".trace-drawing").boundingBox();
        double high = plot.y + plot.height - 60;
        BoundingBox first = page.locator(".trace-handle.at-from").boundingBox();
        double middle = (first.x + first.width + end.boundingBox().x) / 2;
        touch(finger, "touchStart", middle - 20, high, middle + 20, high);
        touch(finger, "touchMove", middle - 40, high, middle + 40, high);
        touch(finger, "touchMove", middle - 60, high, middle + 60, high);
        touch(finger, "touchEnd");
        settled(page);
        assertThat(width(page)).isLessThan(0.7 * wide);
        double from = viewFrom(page);
        touch(finger, "touchStart", middle + 40, high);
        touch(finger, "touchMove", middle + 20, high);
        touch(finger, "touchMove", middle - 80, high);
        touch(finger, "touchEnd");
        settled(page);
        assertThat(viewFrom(page)).isGreaterThan(from);
        page.context().close();
    }

    @Test
    @Order(4)
    void a_cut_is_moved_and_the_run_split_there() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.LIGHT, true), FILE);
        band(page, 2).click();
        settled(page);
        page.locator(".trace-handle.at-cut").focus();
        double at = field(page, "at");
        page.keyboard().press("Shift+ArrowRight");
        assertThat(field(page, "at")).isGreaterThan(at);
        write(page);
        page.locator(".trace-handle.at-cut").focus();
        page.keyboard().press("s");
        page.waitForURL("**kept=**");
        assertThat(page.locator("[data-trace-desk]").textContent()).contains("proposed");
        assertThat(page.locator(".history-table").textContent()).contains("split at");
    }

    @Test
    @Order(5)
    void a_run_is_voided_for_a_cause_and_struck_on_the_plot() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.LIGHT, true), FILE + "?run=2");
        page.locator(".trace-handle.at-to").focus();
        page.keyboard().press("r");
        assertThat(page.evaluate("document.activeElement.name")).isEqualTo("cause");
        page.locator("details[open] [name=cause]").selectOption("traffic");
        write(page);
        page.locator("details[open] [data-act=void]").click();
        page.waitForURL("**kept=**");
        settled(page);
        assertThat(page.locator("a.run.struck[data-run='2']").count()).isOne();
        assertThat(page.locator("details[open] summary").textContent()).contains("void");
    }

    @Test
    @Order(6)
    void a_stretch_that_is_dragged_over_becomes_a_run() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.LIGHT, true), FILE);
        BoundingBox plot = page.locator(".trace-drawing").boundingBox();
        double y = plot.y + plot.height - 80;
        page.mouse().move(plot.x + 60, y);
        page.mouse().down();
        page.mouse().move(plot.x + 80, y);
        page.mouse().move(plot.x + 110, y);
        page.mouse().up();
        assertThat(page.locator("details[open] [data-name]").textContent()).isEqualTo("A run that was not found");
        assertThat(field(page, "to") - field(page, "from")).isGreaterThan(0.5);
        page.locator("[name=trial]").selectOption("braking");
        page.locator("[name='braking.variant.method']").selectOption("trace");
        write(page);
        page.locator("details[open] [data-act=move]").click();
        page.waitForURL("**kept=**");
        assertThat(page.locator(".history-table").textContent()).contains("of braking added");
    }

    @Test
    @Order(7)
    void the_view_goes_closer_by_button_key_and_wheel_and_back_to_the_whole() {
        Page page = opened(browser.orElseThrow().page(1440, ColorScheme.LIGHT, true), FILE);
        double whole = width(page);
        page.locator("[data-go=closer]").click();
        settled(page);
        assertThat(width(page)).isCloseTo(whole / 2, within(0.01));
        page.locator("[data-go=later]").click();
        settled(page);
        assertThat(viewFrom(page)).isGreaterThan(whole / 4);
        band(page, 0).focus();
        page.keyboard().press("+");
        settled(page);
        assertThat(width(page)).isLessThan(whole / 3);
        double before = width(page);
        page.locator(".trace-drawing").hover();
        page.keyboard().down("Control");
        page.mouse().wheel(0, -60);
        page.keyboard().up("Control");
        settled(page);
        assertThat(width(page)).isLessThan(before);
        page.locator("[data-go=whole]").click();
        settled(page);
        assertThat(width(page)).isCloseTo(whole, within(0.01));
    }

    @Test
    @Order(8)
    void without_script_the_same_is_done_by_links_and_fields() {
        Page page = browser.orElseThrow().page(390, ColorScheme.LIGHT, false);
        page.navigate(served.orElseThrow().url(FILE));
        page.locator("[data-go=closer]").click();
        assertThat(page.url()).contains("from=");
        page.locator(".for-phone a.run").first().click();
        assertThat(page.url()).contains("run=");
        double to = field(page, "to") + 0.5;
        page.locator("details[open] [name=to]").fill(Double.toString(to));
        write(page);
        page.locator("details[open] [data-act=move]").click();
        assertThat(page.url()).contains("kept=");
        assertThat(page.locator("[data-said]").textContent()).contains("Kept: run", "set to");
        assertThat(field(page, "to")).isCloseTo(to, within(0.002));
    }

    @Test
    @Order(9)
    void everybody_can_use_it_with_a_run_chosen_in_light_and_dark() {
        var faults = new ArrayList<String>();
        for (int width : new int[] {390, 1440}) {
            Page page = opened(browser.orElseThrow().page(width, ColorScheme.LIGHT, true), FILE + "?run=1");
            page.locator(".trace-handle.at-to").waitFor();
            PageFaults.inLightAndDark(page, "at " + width, faults);
            page.context().close();
        }
        assertThat(faults).isEmpty();
    }

    private Page opened(Page page, String path) {
        page.navigate(served.orElseThrow().url(path));
        settled(page);
        return page;
    }

    /// Until the drawing shows the view that was asked for.
    private static void settled(Page page) {
        page.locator(".trace-drawing svg").waitFor();
        page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
        page.waitForTimeout(150);
    }

    private static Locator band(Page page, int index) {
        return page.locator(".trace-drawing a.run").nth(index);
    }

    private static double field(Page page, String name) {
        return Double.parseDouble(
                page.locator("details[open] [name=" + name + "]").inputValue());
    }

    private static void write(Page page) {
        page.locator("details[open] [name=who]").fill("T1");
    }

    private static double viewFrom(Page page) {
        return Double.parseDouble(page.locator(".trace-drawing svg").getAttribute("data-from"));
    }

    private static double width(Page page) {
        return Double.parseDouble(page.locator(".trace-drawing svg").getAttribute("data-to")) - viewFrom(page);
    }

    private static void touch(CDPSession finger, String type, double... places) {
        var points = new JsonArray();
        for (int i = 0; i < places.length; i += 2) {
            var point = new JsonObject();
            point.addProperty("x", places[i]);
            point.addProperty("y", places[i + 1]);
            point.addProperty("id", i / 2);
            points.add(point);
        }
        var event = new JsonObject();
        event.addProperty("type", type);
        event.add("touchPoints", points);
        finger.send("Input.dispatchTouchEvent", event);
    }
}
