package org.measuredmile.desk.web;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/// A real browser, where this machine has one.
final class Browser implements AutoCloseable {
    private static final List<String> NAMES =
            List.of("chromium", "chromium-browser", "google-chrome", "google-chrome-stable");

    /// How long a page may take on a slow machine with others at work; a test that passes never waits for it.
    private static final double PATIENCE_MS = 45_000;

    private final Playwright playwright;
    private final com.microsoft.playwright.Browser browser;

    private Browser(Path program) {
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(program)
                        .setArgs(List.of("--no-sandbox", "--disable-gpu")));
    }

    /// The browser that CHROMIUM names, else the first on the path.
    static Optional<Browser> find() {
        String named = System.getenv("CHROMIUM");
        Stream<Path> stated = named == null || named.isBlank() ? Stream.empty() : Stream.of(Path.of(named));
        String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
        Stream<Path> known = Arrays.stream(path.split(File.pathSeparator))
                .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)));
        return Stream.concat(stated, known)
                .filter(Files::isExecutable)
                .findFirst()
                .map(Browser::new);
    }

    /// A page of a width, in light or dark, with nothing remembered.
    Page page(int width, ColorScheme scheme, boolean withScript) {
        return page(options(width).setColorScheme(scheme).setJavaScriptEnabled(withScript));
    }

    /// A page on a phone, which has no mouse.
    Page phone() {
        return page(options(390).setHasTouch(true).setIsMobile(true));
    }

    private static com.microsoft.playwright.Browser.NewContextOptions options(int width) {
        return new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setLocale("en-GB");
    }

    private Page page(com.microsoft.playwright.Browser.NewContextOptions options) {
        BrowserContext context = browser.newContext(options);
        context.setDefaultTimeout(PATIENCE_MS);
        return context.newPage();
    }

    /// A page of a phone: touched, with no mouse.
    Page touched(int width) {
        BrowserContext context = browser.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setHasTouch(true)
                .setIsMobile(true)
                .setLocale("en-GB"));
        context.setDefaultTimeout(PATIENCE_MS);
        return context.newPage();
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
