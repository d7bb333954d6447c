package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What runs is killed, as a machine without memory does, and comes back by itself: the real launcher, server and PostgreSQL. */
@Tag("long")
class RecoveryIT {
    private static final Path LAUNCHER = Path.of("eaveside").toAbsolutePath();

    @TempDir
    Path data;

    private final int port = Company.freePort();
    private Process eaveside;

    @AfterEach
    void stop() throws InterruptedException {
        eaveside.destroy();
        assertTrue(eaveside.waitFor(30, TimeUnit.SECONDS), "it stops when it is told to");
        assertEquals(List.of(), java(), "and leaves nothing running");
    }

    @Test
    void the_database_and_the_server_come_back_by_themselves() throws Exception {
        Path output = data.resolveSibling("demo-output.txt");
        eaveside = new ProcessBuilder(
                        LAUNCHER.toString(), "demo", "--data", data.toString(), "--port", Integer.toString(port))
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        await(Duration.ofMinutes(6), () -> Files.readString(output).contains("is ready"));
        assertEquals(200, status("health/ready"));

        kill(Long.parseLong(
                Files.readAllLines(data.resolve("postgres/postmaster.pid")).getFirst()));
        assertEquals(503, status("health/ready"), "not ready without the database");
        assertEquals(503, status("sign-in"), "and says so");
        await(Duration.ofSeconds(60), () -> status("sign-in") == 200);
        assertEquals(200, status("health/ready"));
        String log = Files.readString(data.resolve("log/server.0.log"));
        assertTrue(log.contains("PostgreSQL is back"), "the log says what happened");
        long outage =
                log.lines().filter(line -> line.contains("No database at")).count();
        assertTrue(outage > 0 && outage < 10, "once each, not " + outage + " times");

        // What ends within half a minute of its start would only end again.
        TimeUnit.SECONDS.sleep(30);
        kill(java().getFirst());
        await(Duration.ofSeconds(90), () -> status("health/ready") == 200);
        assertTrue(Files.readString(output).contains("started anew"));
        assertEquals(
                0,
                new ProcessBuilder(LAUNCHER.toString(), "verify", "--data", data.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(data.resolveSibling("verify-output.txt").toFile())
                        .start()
                        .waitFor(),
                "the books hold");
    }

    private List<Long> java() {
        return ProcessHandle.allProcesses()
                .filter(process -> process.info()
                        .commandLine()
                        .filter(line ->
                                line.contains("eaveside.deploy.Launcher demo") && line.contains(data.toString()))
                        .isPresent())
                .map(ProcessHandle::pid)
                .toList();
    }

    private static void kill(long pid) throws Exception {
        assertEquals(
                0, new ProcessBuilder("kill", "-9", Long.toString(pid)).start().waitFor());
    }

    private int status(String path) {
        try {
            var connection = (HttpURLConnection)
                    URI.create("http://127.0.0.1:" + port + "/" + path).toURL().openConnection();
            connection.setReadTimeout(30_000);
            connection.setRequestProperty("Accept", "text/html");
            int status = connection.getResponseCode();
            if (status == HttpURLConnection.HTTP_UNAVAILABLE && path.equals("sign-in")) {
                assertEquals("5", connection.getHeaderField("Retry-After"));
            }
            return status;
        } catch (IOException e) {
            return 0;
        }
    }

    private interface Condition {
        boolean holds() throws IOException;
    }

    private void await(Duration patience, Condition condition) throws Exception {
        long end = System.nanoTime() + patience.toNanos();
        while (System.nanoTime() < end) {
            if (condition.holds()) {
                return;
            }
            assertTrue(eaveside.isAlive(), "it has ended");
            TimeUnit.MILLISECONDS.sleep(200);
        }
        throw new AssertionError("not within " + patience);
    }
}
