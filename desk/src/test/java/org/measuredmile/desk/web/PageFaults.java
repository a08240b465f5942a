package org.measuredmile.desk.web;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;

/// What a page keeps from somebody: rules of WCAG 2.2 AA that it breaks, and text beyond the edge of the screen.
final class PageFaults {
    private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    private PageFaults() {}

    /// The faults of a page as it stands, and those of its colours in the dark: nothing else differs there.
    static void inLightAndDark(Page page, String at, List<String> faults) {
        Object overflow = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        if (!overflow.equals(0)) {
            faults.add(at + ": wider than the screen by " + overflow + " px");
        }
        add(axe(page).withTags(RULES), at, faults);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        add(axe(page).withRules(List.of("color-contrast")), at + " in the dark", faults);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    }

    /// In one call on the page itself: the other way goes through an empty page each time, for frames of other
    /// sites, of which there are none.
    private static AxeBuilder axe(Page page) {
        return new AxeBuilder(page).setLegacyMode(true);
    }

    private static void add(AxeBuilder axe, String at, List<String> faults) {
        axe.analyze()
                .getViolations()
                .forEach(rule -> faults.add(at + ": " + rule.getId() + " "
                        + rule.getNodes().getFirst().getHtml()));
    }
}
