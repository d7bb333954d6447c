package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import eaveside.web.security.Addresses;
import eaveside.web.testing.Browser;
import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.Server;
import java.net.URI;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Every type of page that links lead to, filled with the demo company's business: accessible, within the window and
 * without a complaint of the browser. Pages that differ only in an id or in a filter's value are one type.
 */
@LooksAtDemo
class EveryPageBrowserIT {
    /** Papers, files and pictures are no pages; the skip link stays where it is. */
    private static final String NO_PAGE = ".*(\\.pdf|\\.csv|\\.xlsx|/photos/.*|/openapi.*)$";

    /** What scripts read, and what the browser itself asks for, are none either. */
    private static final String PAGE = "/(?!api/|assets/|health|stock/mixes/in-words|search/hits|sign-in).*";

    /** Parts of an address that only choose among rows of the same look. */
    private static final Set<String> FILTERS =
            Set.of("after", "from", "to", "account", "line", "cost", "found", "visit", "q", "day", "show", "status");

    @Test
    void at_a_desk_as_the_owner() {
        lookAtAll(Browser::desk, "edda", "desk", Browser::faults, 60);
    }

    /** The rules of accessibility on a phone in the dark are held by {@code PagesBrowserIT}, since they take their time. */
    @Test
    void on_a_phone_as_the_owner() {
        lookAtAll(
                Browser::phone,
                "edda",
                "phone",
                page -> Browser.isTooWide(page) ? List.of("wider than the window") : List.of(),
                60);
    }

    @Test
    void on_a_phone_in_the_dark_as_a_technician() {
        lookAtAll(Browser::phone, "bram", "technician", Browser::faults, 2);
    }

    private static void lookAtAll(
            Function<Browser, BrowserContext> size,
            String username,
            String folder,
            Function<Page, List<String>> faultsOf,
            int atLeast) {
        Server server = Server.demo();
        List<String> faults = new ArrayList<>();
        Set<String> types = new HashSet<>();
        Deque<String> waiting = new ArrayDeque<>();
        try (Browser browser = new Browser();
                BrowserContext context = size.apply(browser)) {
            Page page = Browser.signIn(context, server, username, server.passwordOf(username));
            page.onConsoleMessage(message -> {
                if (message.type().equals("error")) {
                    faults.add(page.url() + ": " + message.text());
                }
            });
            note(page, types, waiting);
            if (username.equals("edda")) {
                queueAddresses(server, types, waiting);
            }
            while (!waiting.isEmpty()) {
                String address = waiting.remove();
                Response response = page.navigate(address);
                String path = type(URI.create(address));
                if (response.status() != 200) {
                    faults.add(path + ": status " + response.status());
                    continue;
                }
                faultsOf.apply(page).forEach(fault -> faults.add(path + ": " + fault));
                Browser.picture(
                        page, Path.of("target", "every-page", folder, path.replaceAll("[^a-zA-Z]+", "-") + ".png"));
                note(page, types, waiting);
            }
        }
        assertEquals("", String.join("\n", faults));
        assertTrue(types.size() >= atLeast, types.size() + " types of pages: " + types);
    }

    /** Queues one page at each address of the application, also such as only some other page of its type links to. */
    private static void queueAddresses(Server server, Set<String> types, Deque<String> waiting) {
        try {
            for (List<String> addresses :
                    Addresses.all(server.database().asOwner()).values()) {
                if (!addresses.isEmpty() && addresses.getFirst().matches(PAGE)) {
                    URI address = server.at(addresses.getFirst().replaceFirst("^/", ""));
                    if (!address.getPath().matches(NO_PAGE) && types.add(type(address))) {
                        waiting.add(address.toString());
                    }
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Queues what the page links to and no page like it was seen before. */
    private static void note(Page page, Set<String> types, Deque<String> waiting) {
        Object links = page.locator("a[href]").evaluateAll("links => links.map(link => link.href)");
        for (Object link : (List<?>) links) {
            URI address = URI.create(link.toString().replaceFirst("#.*", ""));
            boolean here = Server.demo().base().getAuthority().equals(address.getAuthority());
            if (here && !address.getPath().matches(NO_PAGE) && types.add(type(address))) {
                waiting.add(address.toString());
            }
        }
    }

    private static String type(URI address) {
        String path = address.getPath().replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "id");
        String query = address.getQuery() == null ? "" : address.getQuery();
        String names = Arrays.stream(query.split("&"))
                .map(part -> part.replaceFirst("=.*", ""))
                .filter(name -> !name.isEmpty() && !FILTERS.contains(name))
                .distinct()
                .sorted()
                .collect(Collectors.joining("&"));
        return names.isEmpty() ? path : path + "?" + names;
    }
}
