package eaveside.web.testing;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The system's Chromium, at desk and phone size, with an accessibility pass on every page that is looked at. */
public final class Browser implements AutoCloseable {
    private static final List<String> RULES =
            List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

    private final Playwright playwright;
    private final com.microsoft.playwright.Browser chromium;
    private final Duration ahead;

    public Browser() {
        this(Clock.systemUTC());
    }

    /** On machines whose clocks say that time. */
    public Browser(Clock clock) {
        ahead = Duration.between(Clock.systemUTC().instant(), clock.instant());
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        chromium = playwright
                .chromium()
                .launch(new LaunchOptions()
                        .setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setArgs(List.of("--no-sandbox", "--disable-gpu", "--disable-background-networking")));
    }

    /** At a desk. */
    public BrowserContext desk() {
        return inTime(chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(1280, 860)
                .setBypassCSP(false)));
    }

    /** At a desk, with a certificate that nobody has vouched for. */
    public BrowserContext trusting() {
        return chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions().setIgnoreHTTPSErrors(true));
    }

    /** On a phone, in the dark. */
    public BrowserContext phone() {
        return inTime(chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(390, 844)
                .setHasTouch(true)
                .setColorScheme(ColorScheme.DARK)));
    }

    private BrowserContext inTime(BrowserContext context) {
        if (ahead.abs().compareTo(Duration.ofMinutes(1)) > 0) {
            context.clock()
                    .install(new com.microsoft.playwright.Clock.InstallOptions()
                            .setTime(Clock.systemUTC().instant().plus(ahead).toEpochMilli()));
        }
        return context;
    }

    /** Signs in through the form. */
    public static Page signIn(BrowserContext context, Server server, String username, String password) {
        Page page = context.newPage();
        page.navigate(server.at("sign-in").toString());
        page.fill("#username", username);
        page.fill("#password", password);
        page.click("main button");
        // The first on a server that has just begun, beside other browsers on two processors, takes its time.
        page.waitForURL(url -> !url.contains("/sign-in"), new Page.WaitForURLOptions().setTimeout(90_000));
        return page;
    }

    /** What is wrong with the page as it is shown: accessibility, and whether it is wider than the window. */
    public static List<String> faults(Page page) {
        // Only what is wrong is told, and in the page itself: no page has frames, and a second page for each pass takes
        // its time.
        AxeRunOptions options = new AxeRunOptions();
        options.setResultTypes(List.of("violations"));
        AxeBuilder axe = new AxeBuilder(page).options(options).withTags(RULES).setLegacyMode(true);
        List<String> faults = new ArrayList<>();
        for (Rule rule : axe.analyze().getViolations()) {
            faults.add(rule.getId() + " " + rule.getNodes().getFirst().getTarget());
        }
        if (isTooWide(page)) {
            faults.add("wider than the window: " + widest(page));
        }
        return faults;
    }

    /** Keeps a picture of the whole page; a browser on a busy machine may fail at the first attempt. */
    public static void picture(Page page, Path file) {
        Page.ScreenshotOptions whole =
                new Page.ScreenshotOptions().setFullPage(true).setPath(file);
        try {
            page.screenshot(whole);
        } catch (PlaywrightException busy) {
            page.screenshot(whole);
        }
    }

    /** Whether the page as a whole would have to be scrolled sideways. */
    public static boolean isTooWide(Page page) {
        return Boolean.TRUE.equals(page.evaluate("document.documentElement.scrollWidth > window.innerWidth"));
    }

    private static Object widest(Page page) {
        return page.evaluate("""
                () => [...document.querySelectorAll('main *')]
                  .filter(e => e.getBoundingClientRect().right > window.innerWidth)
                  .map(e => e.outerHTML.slice(0, 120)).slice(0, 3).join(' | ')""");
    }

    @Override
    public void close() {
        chromium.close();
        playwright.close();
    }
}
