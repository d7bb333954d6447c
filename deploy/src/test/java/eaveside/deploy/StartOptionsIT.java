package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.CookieManager;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the launcher's options come to, with the real server: who needs a second step, and who is told that it was switched off. */
@Tag("long")
class StartOptionsIT {
    private static final Pattern PASSWORD = Pattern.compile("username edda\\s+password (\\S+)");
    private static final String OFF = "--no-second-factor is kept on the audit log";

    private static final String PHRASE = "several words that are typed";

    @TempDir
    Path folder;

    @Test
    void owners_need_a_second_step_behind_a_proxy_unless_it_is_switched_off() throws Exception {
        Path data = folder.resolve("data");
        String password;
        try (Launched local = new Launched(data)) {
            Matcher found = PASSWORD.matcher(local.said());
            assertTrue(found.find());
            password = found.group(1);
            HttpResponse<String> page = firstPage(local, password);
            assertEquals("/worklist", page.uri().getPath(), "this machine alone reaches it");
        }
        try (Launched behindProxy = new Launched(data, "--proxy", "127.0.0.9")) {
            assertFalse(behindProxy.said().contains(OFF));
            HttpResponse<String> page = firstPage(behindProxy, password);
            assertEquals("/account", page.uri().getPath());
            assertTrue(page.body().contains("Owners need a second step"), page.body());
        }
        try (Launched forAll = new Launched(data, "--bind", "0.0.0.0")) {
            assertFalse(forAll.said().contains(OFF));
            HttpResponse<String> page = firstPage(forAll, password);
            assertEquals("/account", page.uri().getPath());
            assertTrue(page.body().contains("Owners need a second step"), page.body());
            tellsOthersNothingAboutItself(forAll);
        }
        try (Launched switchedOff = new Launched(data, "--proxy", "127.0.0.9", "--no-second-factor")) {
            assertTrue(switchedOff.said().contains(OFF), switchedOff.said());
            HttpClient owner = signedIn(switchedOff, password);
            assertEquals("/worklist", get(owner, switchedOff, "").uri().getPath());
            String log = get(owner, switchedOff, "settings/audit-log/list.csv").body();
            assertEquals(
                    1,
                    Pattern.compile("second-factor\\.off")
                            .matcher(log)
                            .results()
                            .count(),
                    log);
        }
    }

    @Test
    void what_an_option_does_not_take_is_said_in_a_sentence() throws Exception {
        String data = folder.resolve("none").toString();
        for (String[] wrong : new String[][] {
            {"--port takes 1 to 65535", "start", "--port=0"},
            {"--port takes 1 to 65535", "start", "--port=99999"},
            {"--port takes 1 to 65535", "demo", "--port=-1"},
            {"--bind takes an address of this machine", "start", "--bind=192.0.2.1"},
            {"--bind takes an address of this machine", "start", "--bind=no.such.machine.invalid"},
            {"--proxy takes addresses", "start", "--proxy=10.0.0.0/99"},
            {"--proxy takes addresses", "start", "--proxy=10.0.0.0/x"},
            {"--proxy takes addresses", "start", "--proxy=localhost"},
            {"There is no data folder", "recover", "--username=edda"},
            {"There is no data folder", "migrate"},
            {"There is no data folder", "verify"}
        }) {
            String said = Launched.refused(
                    folder,
                    Stream.concat(Stream.of(wrong).skip(1), Stream.of("--data=" + data))
                            .toArray(String[]::new));
            assertTrue(said.startsWith("eaveside: " + wrong[0]), said);
            assertEquals(1, said.lines().count(), said);
        }
        assertFalse(Files.exists(Path.of(data)), "and nothing is made");
        Path others = Files.createDirectories(folder.resolve("others/log"));
        Files.writeString(others.resolveSibling("letter.txt"), "to somebody");
        Path large = Files.write(others.resolve("console.log"), new byte[(int) DataFolder.LARGE_LOG + 1]);
        Launched.refused(folder, "start", "--data=" + others.getParent());
        assertTrue(Files.exists(large), "and what is another's is left as it is");
    }

    /** Between the first look at the port and its use lies the whole start. */
    @Test
    void says_so_where_somebody_else_takes_the_port_meanwhile() throws Exception {
        Path data = folder.resolve("taken");
        Launched.company(data, "Taken Cleaning", "US", "USD", "UTC", "An Owner", "owner", PHRASE, PHRASE)
                .close();
        Files.writeString(data.resolve("task123.properties"), "owner.password=" + PHRASE);
        int port = Company.freePort();
        try (var thread = Executors.newSingleThreadExecutor()) {
            Future<String> said = thread.submit(
                    () -> Launched.refused(folder, "start", "--data", data.toString(), "--port", "" + port));
            while (!Files.exists(data.resolve("postgres/postmaster.pid"))) {
                assertFalse(said.isDone(), "it has ended");
                TimeUnit.MILLISECONDS.sleep(5);
            }
            try (var other = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
                assertTrue(said.get().contains("Cannot listen on 127.0.0.1 port " + other.getLocalPort()), said.get());
            }
        }
        assertEquals(
                List.of(),
                Files.walk(data)
                        .filter(file -> file.getFileName().toString().startsWith("task"))
                        .toList(),
                "what a founding that was killed has left goes");
    }

    /** By an address of this machine that is not loopback, the way that others come, with nothing that a proxy would add. */
    private static void tellsOthersNothingAboutItself(Launched eaveside) throws Exception {
        Optional<InetAddress> reachable = NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
                .findFirst();
        assertTrue(reachable.isPresent(), "this machine has no other address");
        for (String path : List.of("metrics", "openapi", "health")) {
            HttpClient client = HttpClient.newHttpClient();
            assertEquals(200, get(client, eaveside, path).statusCode(), path);
            URI there = URI.create("http://" + reachable.orElseThrow().getHostAddress() + ":"
                    + eaveside.at("").getPort() + "/" + path);
            assertEquals(
                    401,
                    client.send(HttpRequest.newBuilder(there).build(), HttpResponse.BodyHandlers.ofString())
                            .statusCode(),
                    path);
        }
    }

    private static HttpResponse<String> firstPage(Launched eaveside, String password) throws Exception {
        return get(signedIn(eaveside, password), eaveside, "");
    }

    private static HttpResponse<String> get(HttpClient client, Launched eaveside, String path) throws Exception {
        return client.send(
                HttpRequest.newBuilder(eaveside.at(path))
                        .header("Accept", "text/html,*/*;q=0.8")
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private static HttpClient signedIn(Launched eaveside, String password) throws Exception {
        HttpClient client = HttpClient.newBuilder()
                .cookieHandler(new CookieManager())
                .followRedirects(HttpClient.Redirect.NORMAL)
                .build();
        String origin = eaveside.at("").toString().replaceAll("/$", "");
        client.send(
                HttpRequest.newBuilder(eaveside.at("sign-in"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", origin)
                        .POST(HttpRequest.BodyPublishers.ofString("username=edda&password=" + password))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        return client;
    }
}
