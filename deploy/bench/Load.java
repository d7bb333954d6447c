import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Supplier;

/**
 * Fills a running demo company with invoices and measures its pages from outside: what {@code deploy/bench/load} calls.
 * Times are from the request to the last byte of the answer, in milliseconds, with this program on the same processors.
 */
final class Load {
    private static final int USERS = 8;

    private final URI base;
    private final Path data;
    private final int target;

    private Load(String base, Path data, int target) {
        this.base = URI.create(base);
        this.data = data;
        this.target = target;
    }

    public static void main(String[] arguments) throws Exception {
        var load = new Load(arguments[1], Path.of(arguments[2]), Integer.parseInt(arguments[3]));
        switch (arguments[0]) {
            case "fill" -> load.fill(Files.readString(Path.of(arguments[4])));
            case "measure" -> load.measure(Integer.parseInt(arguments[4]));
            default -> throw new IllegalArgumentException(arguments[0]);
        }
    }

    /** The port that the folder's PostgreSQL listens on stands in the fourth line of its file of the process. */
    private String database() throws IOException {
        String port = Files.readAllLines(data.resolve("postgres/postmaster.pid")).get(3);
        return "jdbc:postgresql://127.0.0.1:" + port + "/eaveside?user=eaveside_owner&password="
                + Files.readString(data.resolve("secrets/eaveside_owner")).strip();
    }

    private void fill(String sql) throws Exception {
        try (var connection = DriverManager.getConnection(database());
                var statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute(sql.replace(":target", Integer.toString(target)));
            connection.commit();
            connection.setAutoCommit(true);
            statement.execute("vacuum analyze");
        }
    }

    /** Addresses that the query answers, some hundred of them. */
    private List<String> some(String sql) throws Exception {
        List<String> addresses = new ArrayList<>();
        try (var connection = DriverManager.getConnection(database());
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                addresses.add(rows.getString(1));
            }
        }
        return addresses;
    }

    private static String any(List<String> addresses) {
        return addresses.get(ThreadLocalRandom.current().nextInt(addresses.size()));
    }

    private HttpClient signIn(String username) throws Exception {
        String password = Files.readAllLines(data.resolve("demo-usernames.txt")).stream()
                .filter(line -> line.contains("username " + username + " "))
                .map(line -> line.replaceFirst(".*password ", "").strip())
                .findFirst()
                .orElseThrow();
        var client = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .cookieHandler(new CookieManager())
                .build();
        var answer = client.send(
                HttpRequest.newBuilder(base.resolve("/sign-in"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Sec-Fetch-Site", "same-origin")
                        .POST(HttpRequest.BodyPublishers.ofString("username=" + username + "&password="
                                + URLEncoder.encode(password, StandardCharsets.UTF_8)))
                        .build(),
                HttpResponse.BodyHandlers.discarding());
        if (answer.statusCode() != 303) {
            throw new IllegalStateException("signing in was answered with " + answer.statusCode());
        }
        return client;
    }

    private double get(HttpClient client, String path) throws Exception {
        long began = System.nanoTime();
        var answer = client.send(
                HttpRequest.newBuilder(base.resolve(path)).build(), HttpResponse.BodyHandlers.ofByteArray());
        double taken = (System.nanoTime() - began) / 1e6;
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(path + " was answered with " + answer.statusCode());
        }
        return taken;
    }

    private void measure(int seconds) throws Exception {
        List<String> invoices = some("select '/invoices/' || id from invoice order by md5(id::text) limit 400");
        Supplier<String> invoice = () -> any(invoices);
        HttpClient office = signIn("linus");
        // Warm all of them before the first is measured.
        for (var page : List.<Supplier<String>>of(() -> "/worklist", invoice, () -> "/invoices")) {
            together(office, page, seconds);
        }
        row("sign-in page (no database)", USERS, together(office, () -> "/sign-in", seconds));
        row("worklist", USERS, together(office, () -> "/worklist", seconds));
        row("overview", USERS, together(signIn("edda"), () -> "/overview", seconds));
        List<String> customers = some("select '/customers/' || customer_id from invoice order by md5(id::text) limit 400");
        row("customer page", USERS, together(office, () -> any(customers), seconds));
        List<String> names = some("select '/search/hits?q=' || lower(split_part(name, ' ', 1)) || '%20'"
                + " || left(lower(regexp_replace(name, '^.* ', '')), 4) from customer order by md5(id::text) limit 400");
        row("search, words", USERS, together(office, () -> any(names), seconds));
        List<String> slips = some("select '/search/hits?q=' || overlay(lower(regexp_replace(name, '[^[:alpha:]].*$', ''))"
                + " placing 'x' from 3 for 1) from customer where length(name) > 8 order by md5(id::text) limit 400");
        row("search, misspelled", USERS, together(office, () -> any(slips), seconds));
        List<String> phones = some("select '/search/hits?q=' || regexp_replace(phone, '[^0-9]', '', 'g') from customer"
                + " where phone <> '' order by md5(id::text) limit 400");
        row("search, phone number", USERS, together(office, () -> any(phones), seconds));
        row("invoice page", USERS, together(office, invoice, seconds));
        row("invoice list", USERS, together(office, () -> "/invoices", seconds));
        row("invoice PDF", 1, alone(office, () -> invoice.get() + ".pdf", 60));
        HttpClient owner = signIn("edda");
        var month = YearMonth.from(LocalDate.now());
        String year = "?from=" + month.minusMonths(3).atDay(1) + "&to=" + month.atEndOfMonth();
        for (int lines : List.of(50, 500)) {
            row("invoice form, " + lines + " lines", 1, calculated(office, lines, 40));
        }
        row("margin page, all lines", 1, alone(owner, () -> "/margins" + year, 10));
        row("margin PDF, all lines", 1, alone(owner, () -> "/margins/margins.pdf" + year, 10));
    }

    /** Eight users at once, each asking for the next page when the last has come. */
    private List<Double> together(HttpClient client, Supplier<String> page, int seconds) throws Exception {
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        List<Double> times = Collections.synchronizedList(new ArrayList<>());
        try (var users = Executors.newFixedThreadPool(USERS)) {
            List<Callable<Void>> work = Collections.nCopies(USERS, () -> {
                while (System.nanoTime() < end) {
                    times.add(get(client, page.get()));
                }
                return null;
            });
            for (Future<Void> done : users.invokeAll(work)) {
                done.get();
            }
        }
        return times;
    }

    /** One user; the first third of the requests warms up. */
    private List<Double> alone(HttpClient client, Supplier<String> page, int times) throws Exception {
        List<Double> taken = new ArrayList<>();
        for (int i = 0; i < times + times / 2; i++) {
            double time = get(client, page.get());
            if (i >= times / 2) {
                taken.add(time);
            }
        }
        return taken;
    }

    /** What a form computes while its lines are typed; 500 are the most that it has. The first half warms up. */
    private List<Double> calculated(HttpClient client, int lines, int times) throws Exception {
        String form = "/invoices/new?customer=" + customer();
        String page = client.send(
                        HttpRequest.newBuilder(base.resolve(form)).build(), HttpResponse.BodyHandlers.ofString())
                .body();
        StringBuilder typed = new StringBuilder("id=" + valueOf("id", page) + "&customer=" + valueOf("customer", page)
                + "&version=&serviceDate=" + LocalDate.now());
        for (int i = 0; i < lines; i++) {
            String line = "&line-" + i + "-";
            typed.append(line + "id=" + valueOf("line-0-id", page).substring(0, 30) + "%06x".formatted(i))
                    .append(line + "description=Panels" + line + "quantity=" + (i + 1) + line + "quantityUnit=C62")
                    .append(line + "gross=12.50" + line + "grossPer=1" + line + "taxCode=UNTAXED")
                    .append(line + "serviceLine=" + firstOf("line-0-serviceLine", page));
        }
        List<Double> taken = new ArrayList<>();
        for (int i = 0; i < 2 * times; i++) {
            long began = System.nanoTime();
            var answer = client.send(
                    HttpRequest.newBuilder(base.resolve("/invoices/calculation"))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .header("Sec-Fetch-Site", "same-origin")
                            .POST(HttpRequest.BodyPublishers.ofString(typed.toString()))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            double time = (System.nanoTime() - began) / 1e6;
            String total = "%,.2f".formatted(12.5 * lines * (lines + 1) / 2);
            if (answer.statusCode() != 200 || !answer.body().contains(total)) {
                throw new IllegalStateException(lines + " lines were answered with " + answer.statusCode());
            }
            if (i >= times) {
                taken.add(time);
            }
        }
        return taken;
    }

    private String customer() throws Exception {
        try (var connection = DriverManager.getConnection(database());
                var statement = connection.createStatement();
                var row = statement.executeQuery("select id from customer order by id limit 1")) {
            row.next();
            return row.getString(1);
        }
    }

    private static String valueOf(String name, String page) {
        return page.replaceFirst("(?s).*name=\"" + name + "\" value=\"([^\"]*)\".*", "$1");
    }

    private static String firstOf(String name, String page) {
        return page.replaceFirst(
                "(?s).*name=\"" + name + "\">\\s*<option value=\"\"></option>\\s*<option value=\"([^\"]+)\".*", "$1");
    }

    private void row(String page, int users, List<Double> times) {
        List<Double> sorted = times.stream().sorted().toList();
        System.out.printf(
                "%-28s %9d %6d %9d %8.1f %8.1f%n",
                page,
                target,
                users,
                sorted.size(),
                sorted.get(sorted.size() / 2),
                sorted.get((int) (sorted.size() * 0.95)));
    }
}
