package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What runs is killed, as a machine without memory does, and comes back by itself: the real launcher, server and PostgreSQL. */
@Tag("long")
class RecoveryIT {
    @TempDir
    Path folder;

    private Launched eaveside;

    @AfterEach
    void stop() throws InterruptedException {
        eaveside.close();
    }

    @Test
    void the_database_and_the_server_come_back_by_themselves() throws Exception {
        Path data = folder.resolve("data");
        eaveside = new Launched(data);
        assertEquals(200, status("health/ready"));

        kill(Long.parseLong(
                Files.readAllLines(data.resolve("postgres/postmaster.pid")).getFirst()));
        // Its processes end when they notice that it has gone.
        eaveside.await(Duration.ofSeconds(5), () -> status("health/ready") == 503);
        assertEquals(503, status("sign-in"), "and says so");
        eaveside.await(Duration.ofSeconds(60), () -> status("sign-in") == 200);
        assertEquals(200, status("health/ready"));
        Path file = data.resolve("log/server.0.log");
        eaveside.await(Duration.ofSeconds(20), () -> Files.readString(file).contains("PostgreSQL is back"));
        String log = Files.readString(file);
        long outage = log.lines().filter(line -> line.contains("No database")).count();
        assertTrue(outage > 0 && outage < 10, "once each, not " + outage + " times");

        long postmaster = Long.parseLong(
                Files.readAllLines(data.resolve("postgres/postmaster.pid")).getFirst());
        signal("STOP", postmaster);
        eaveside.await(
                Duration.ofSeconds(180), () -> ProcessHandle.of(postmaster).isEmpty() && status("sign-in") == 200);
        assertEquals(200, status("health/ready"), "one that hangs is started again as well");

        // What ends within half a minute of its start would only end again.
        TimeUnit.SECONDS.sleep(30);
        kill(eaveside.servers().getFirst());
        Set<Integer> meanwhile = new HashSet<>();
        eaveside.await(Duration.ofSeconds(90), Duration.ofMillis(2), () -> {
            int status = status("sign-in");
            meanwhile.add(status);
            return status == 200;
        });
        assertTrue(Set.of(0, 503, 200).containsAll(meanwhile), "it does not listen or says try again: " + meanwhile);
        assertEquals(200, status("health/ready"));
        assertTrue(eaveside.said().contains("started anew"));
        String post = "POST /sign-in HTTP/1.1\r\nHost: a\r\n";
        assertTrue(
                eaveside.raw(post + "Content-Length: 16001\r\n\r\n").startsWith("HTTP/1.1 413 "), "as large as may be");
        assertTrue(eaveside.raw(post + "Host: b\r\n\r\n").startsWith("HTTP/1.1 400 "), "read in one way");
        assertEquals("", eaveside.raw("GET /sign-in HTTP/1.1\r\nHo"), "and what never ends is ended");

        // Stopped as a whole it cannot look after itself: the script outside does, once it has seen two minutes without
        // a sign.
        TimeUnit.SECONDS.sleep(30);
        long stopped = eaveside.servers().getFirst();
        signal("STOP", stopped);
        eaveside.await(
                Duration.ofSeconds(240), () -> ProcessHandle.of(stopped).isEmpty() && status("health/ready") == 200);
        assertEquals(0, eaveside.run("verify"), "the books hold");
    }

    private static void kill(long pid) throws Exception {
        signal("KILL", pid);
    }

    private static void signal(String name, long pid) throws Exception {
        assertEquals(
                0,
                new ProcessBuilder("kill", "-" + name, Long.toString(pid))
                        .start()
                        .waitFor());
    }

    private int status(String path) {
        return eaveside.status(path);
    }
}
