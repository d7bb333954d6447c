package eaveside.web.settings;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A browser as people may know it again: of all that it calls itself (RFC 9110, section 10.1.5) the product that is its own, and
 * what it runs on. {@code Mozilla/5.0 (X11; Linux x86_64) Engine/605.1 (like others) Wanderer/41.2 Safari/605.1} is
 * {@code Wanderer 41, Linux x86_64}.
 */
final class BrowserName {
    private static final Pattern SYSTEM = Pattern.compile("\\(([^()]*)\\)");
    private static final Pattern PRODUCT = Pattern.compile("([A-Za-z][\\w.-]*)/(\\d{1,4})\\S*");

    /** What browsers say of themselves for the sake of pages of long ago. */
    private static final Set<String> SAID_BY_ALL = Set.of("Mozilla", "AppleWebKit", "Gecko", "Version", "Mobile");

    /** Said by others, too, behind their own. */
    private static final String ALSO_SAID = "Safari";

    private BrowserName() {}

    /** The text itself where it does not read like a browser's. */
    static String of(String agent) {
        Matcher system = SYSTEM.matcher(agent);
        List<String> products = PRODUCT.matcher(SYSTEM.matcher(agent).replaceAll(" "))
                .results()
                .filter(product -> !SAID_BY_ALL.contains(product.group(1)))
                .map(product -> product.group(1) + " " + product.group(2))
                .toList();
        if (!system.find() || products.isEmpty()) {
            return agent;
        }
        String own = products.stream()
                .filter(product -> !product.startsWith(ALSO_SAID + " "))
                .reduce((before, after) -> after)
                .orElse(products.getLast());
        String on = List.of(system.group(1).split(";")).stream()
                .map(String::strip)
                .filter(part -> !part.equals("X11") && !part.equals("compatible"))
                .limit(2)
                .reduce((one, other) -> one.startsWith("Linux") && other.startsWith("Android") ? other : one)
                .orElse("");
        return on.isEmpty() ? own : own + ", " + on;
    }
}
