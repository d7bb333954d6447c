package eaveside.web.testing;

import eaveside.testing.TestDatabase;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * The real server with the packaged application on a database of its own, started once for all tests of a run and ended
 * with it. It runs in a process of its own: the class path of the tests would come before the application's.
 */
public final class Server {
    /** The first owner, made by the task that founds the company. */
    public static final String OWNER = "owner.test";

    public static final String OWNER_PASSWORD = "four plain words for tests";

    /** From where a proxy asks: what it says of its callers is believed. */
    public static final String PROXY = "127.0.0.2";

    private static final Duration PATIENCE = Duration.ofMinutes(10);
    private static final int DATE = "2028-02-29".length();
    private static final Path TARGET = Path.of("target").toAbsolutePath();

    private static final String FOUND = """
            task=found
            company.name=Test Exterior Cleaning
            company.country=US
            company.currency=USD
            company.zone=America/Chicago
            owner.name=Test Owner
            owner.username=%s
            owner.password=%s
            """.formatted(OWNER, OWNER_PASSWORD);

    private static final String DEMO = "task=demo\n";

    private static final String NEEDS_NO_SECOND = "local";

    private static final Set<Integer> GIVEN = ConcurrentHashMap.newKeySet();
    private static final AtomicInteger STARTED = new AtomicInteger();

    private static final class Shared {
        private static final Server SERVER = new Server("server", FOUND, null, NEEDS_NO_SECOND);
    }

    private static final class Demo {
        private static final Server SERVER = new Server("demo-server", DEMO, null, NEEDS_NO_SECOND);
    }

    private static final class Fresh {
        private static final Server SERVER = new Server("fresh-server", FOUND, null, NEEDS_NO_SECOND);
    }

    private final TestDatabase database = TestDatabase.create();
    private final int port = freePort();
    private final Process process;
    private final String name;
    private final Clock clock;
    private final String answer;

    /**
     * @param  start the instant at which its time begins; null for the machine's time
     * @param  secondFactor whether owners need one, as the launcher says it
     */
    private Server(String name, String asked, @Nullable Instant start, String secondFactor) {
        this.name = name;
        Clock machine = Clock.systemUTC();
        this.clock = start == null ? machine : Clock.offset(machine, Duration.between(machine.instant(), start));
        try {
            var folder = Files.createTempDirectory(Files.createDirectories(TARGET.resolve(name)), "run");
            var task = folder.resolve("task.properties");
            Files.writeString(task, asked);
            var preboot = folder.resolve("preboot.txt");
            Files.writeString(
                    preboot,
                    Files.readString(Path.of("src/main/webapp/WEB-INF/preboot.txt"))
                            + "set configs.config.server-config.network-config.network-listeners.network-listener."
                            + "http-listener.address=127.0.0.1\n");
            process = new ProcessBuilder(List.of(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx640m",
                            "-XX:+UseSerialGC",
                            "-XX:TieredStopAtLevel=1",
                            // Its parts start one after the other: two at a time they sometimes wait for each other for
                            // good.
                            "-Dorg.glassfish.startupThreadPolicy=USE_NO_THREADS",
                            "-Djava.io.tmpdir=" + folder,
                            "-Deaveside.db.url=" + database.jdbcUrl(),
                            "-Deaveside.db.user=eaveside_app",
                            "-Deaveside.db.password=" + database.password(),
                            "-Deaveside.proxies=" + PROXY,
                            "-Deaveside.second-factor=" + secondFactor,
                            "-Deaveside.task=" + task,
                            "-Deaveside.clock.start=" + (start == null ? "" : start),
                            "-jar",
                            TARGET.resolve("server/payara-micro.jar").toString(),
                            "--nocluster",
                            "--disablephonehome",
                            "--prebootcommandfile",
                            preboot.toString(),
                            "--port",
                            Integer.toString(port),
                            "--deploy",
                            TARGET.resolve("eaveside.war").toString(),
                            "--contextroot",
                            "/"))
                    .redirectErrorStream(true)
                    .redirectOutput(log().toFile())
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "stop server"));
            awaitFirstPage();
            answer = Files.readString(folder.resolve("task.properties.answer"));
            if (!answer.startsWith("ok\n")) {
                throw new IllegalStateException("the company was not made: " + answer);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The server of this run; the first call starts it. */
    public static Server shared() {
        return Shared.SERVER;
    }

    /** A server with the demo company, for the tests that walk through the whole program; the first call starts it. */
    public static Server demo() {
        return Demo.SERVER;
    }

    /** Two may have the same day. */
    private static String named(String kind, Instant start) {
        return kind + "-" + start.toString().substring(0, DATE) + "-" + STARTED.incrementAndGet();
    }

    /** A server of its own with the demo company, on which it is that time now; whoever asks for it stops it. */
    public static Server demoAt(Instant start) {
        return new Server(named("demo-server", start), DEMO, start, NEEDS_NO_SECOND);
    }

    /** A server of its own with a company that has nothing but its owner yet, on which it is that time now; whoever asks for it stops it. */
    public static Server foundedAt(Instant start) {
        return new Server(named("founded-server", start), FOUND, start, NEEDS_NO_SECOND);
    }

    /** A server of its own whose owners need a second factor; whoever asks for it stops it. */
    public static Server whereOwnersNeedTwo() {
        return new Server("strict-server", FOUND, null, "owners");
    }

    /** A server with a company that has nothing but its owner yet; the first call starts it. */
    public static Server fresh() {
        return Fresh.SERVER;
    }

    /** The password of a person of the demo company, who was given it when the company was made. */
    public String passwordOf(String username) {
        return answer.lines()
                .filter(line -> line.contains("username " + username + " "))
                .map(line -> line.replaceFirst(".*password ", "").strip())
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(username + " is nobody of the demo"));
    }

    /** What time it is on the server, but for the seconds that it took to start. */
    public Clock clock() {
        return clock;
    }

    /** Its address, ending with a slash. */
    public URI base() {
        return URI.create("http://127.0.0.1:" + port + "/");
    }

    public URI at(String path) {
        return base().resolve(path);
    }

    /** The database behind it, for arranging and looking. */
    public TestDatabase database() {
        return database;
    }

    public String jdbcUrl() {
        return database.jdbcUrl();
    }

    /** Where the server writes its log. */
    public Path log() {
        return TARGET.resolve(name).resolve("server.log");
    }

    /** A client with cookies of its own that follows no redirects. */
    public HttpClient stranger() {
        return HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .cookieHandler(new CookieManager())
                .connectTimeout(Duration.ofSeconds(10))
                .build();
    }

    /** A client that has signed in through the form, as a browser does. */
    public HttpClient signedIn(String username, String password) {
        var client = stranger();
        var answer = send(client, form("sign-in", "username", username, "password", password));
        if (answer.statusCode() != 303) {
            throw new IllegalStateException("signing in as " + username + " was answered with " + answer.statusCode());
        }
        return client;
    }

    /** A client of somebody who has signed in with a password that was given to them, and has chosen {@link #chosen another}. */
    public HttpClient choosing(String username, String given) {
        var client = signedIn(username, given);
        var answer = send(client, form("account", "old", given, "wanted", chosen(given), "again", chosen(given)));
        if (answer.statusCode() != 303) {
            throw new IllegalStateException("choosing a password was answered with " + answer.statusCode());
        }
        return client;
    }

    /** What those choose who were given a password. */
    public static String chosen(String given) {
        return given + " of my own";
    }

    /** A form as a browser sends it, by names and values. */
    private HttpRequest form(String path, String... fields) {
        var body = new StringBuilder();
        for (int i = 0; i < fields.length; i += 2) {
            body.append(i == 0 ? "" : "&").append(fields[i]).append("=").append(encoded(fields[i + 1]));
        }
        return HttpRequest.newBuilder(at(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", base().toString().replaceAll("/$", ""))
                .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
                .build();
    }

    public HttpResponse<String> get(HttpClient client, String path) {
        return send(
                client,
                HttpRequest.newBuilder(at(path)).header("Accept", "text/html").build());
    }

    public HttpResponse<String> send(HttpClient client, HttpRequest request) {
        try {
            return client.send(request, HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private void awaitFirstPage() throws IOException {
        var client = stranger();
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < deadline && process.isAlive()) {
            try {
                if (get(client, "sign-in").statusCode() == 200) {
                    return;
                }
                // The server answers before its application does, and stays up when that fails.
                if (Files.readString(log()).contains("ready in")
                        && get(client, "sign-in").statusCode() != 200) {
                    break;
                }
            } catch (UncheckedIOException e) {
                // It does not listen yet.
            }
            sleep();
        }
        stop();
        throw new IllegalStateException("the server shows no page; see " + log());
    }

    private static void sleep() {
        try {
            TimeUnit.MILLISECONDS.sleep(200);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Ends it; one that is shared ends by itself with the run. */
    public void stop() {
        process.destroy();
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }

    /** Never one that was given out before: its server may not listen yet. */
    public static int freePort() {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return GIVEN.add(socket.getLocalPort()) ? socket.getLocalPort() : freePort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
