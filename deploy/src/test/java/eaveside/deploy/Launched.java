package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A company as its launcher starts it, in a folder of its own: the demo unless told otherwise. */
final class Launched implements AutoCloseable {
    private static final Path LAUNCHER = Path.of("eaveside").toAbsolutePath();

    private final String command;
    private final Path data;
    private final Path output;
    private final int port = Company.freePort();
    private final Process eaveside;

    /** Starts it with these options and waits until it is ready; the first time makes the company, which takes minutes. */
    Launched(Path data, String... options) throws Exception {
        this("demo", data, List.of(options), "");
    }

    private Launched(String command, Path data, List<String> options, String typed) throws Exception {
        this.command = command;
        this.data = data;
        this.output = Files.createTempFile(data.getParent(), "output", ".txt");
        eaveside = new ProcessBuilder(Stream.concat(
                                Stream.of(LAUNCHER.toString(), command, "--data", data.toString(), "--port", "" + port),
                                options.stream())
                        .toList())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        try (var answers = eaveside.outputWriter()) {
            answers.write(typed);
        }
        await(Duration.ofMinutes(6), () -> said().contains("is ready"));
    }

    /** A company of one's own, made of what is answered to the questions. */
    static Launched company(Path data, String... answers) throws Exception {
        return new Launched("start", data, List.of(), String.join("\n", answers) + "\n");
    }

    /** Runs a command that must refuse, and tells what it has said. */
    static String refused(Path folder, String... command) throws Exception {
        Path output = Files.createTempFile(folder, "refused", ".txt");
        int code = new ProcessBuilder(Stream.concat(Stream.of(LAUNCHER.toString()), Stream.of(command))
                        .toList())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start()
                .waitFor();
        String said = Files.readString(output);
        assertEquals(1, code, said);
        return said;
    }

    /** What is answered to bytes as they stand here, until the server ends the connection. */
    String raw(String sent) throws IOException {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(30_000);
            socket.getOutputStream().write(sent.getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    /** What a page is answered with, where it is 503 with when to try again; 0 where nothing is. */
    int status(String path) {
        try {
            var connection = (HttpURLConnection) at(path).toURL().openConnection();
            connection.setReadTimeout(30_000);
            connection.setRequestProperty("Accept", "text/html");
            int status = connection.getResponseCode();
            if (status == HttpURLConnection.HTTP_UNAVAILABLE && path.equals("sign-in")) {
                assertTrue(
                        List.of("2", "5").contains(connection.getHeaderField("Retry-After")),
                        "when to try again: soon where it is busy, later where there is no database");
            }
            return status;
        } catch (IOException e) {
            return 0;
        }
    }

    URI at(String path) {
        return URI.create("http://127.0.0.1:" + port + "/" + path);
    }

    /** What the launcher has said to the terminal. */
    String said() throws IOException {
        return Files.readString(output);
    }

    /** Runs another of the launcher's commands on the same folder. */
    int run(String command, String... options) throws Exception {
        return begin(command, options).waitFor();
    }

    /** Begins to run one. */
    Process begin(String command, String... options) throws IOException {
        return new ProcessBuilder(Stream.concat(
                                Stream.of(LAUNCHER.toString(), command, "--data", data.toString()), Stream.of(options))
                        .toList())
                .redirectErrorStream(true)
                .redirectOutput(
                        Files.createTempFile(data.getParent(), command, ".txt").toFile())
                .start();
    }

    /** The servers of this folder that run. */
    List<Long> servers() {
        return ProcessHandle.allProcesses()
                .filter(process -> process.info()
                        .commandLine()
                        .filter(line ->
                                line.contains("eaveside.deploy.Launcher " + command) && line.contains(data.toString()))
                        .isPresent())
                .map(ProcessHandle::pid)
                .toList();
    }

    interface Condition {
        boolean holds() throws IOException;
    }

    void await(Duration patience, Condition condition) throws Exception {
        await(patience, Duration.ofMillis(200), condition);
    }

    void await(Duration patience, Duration step, Condition condition) throws Exception {
        long end = System.nanoTime() + patience.toNanos();
        while (System.nanoTime() < end) {
            if (condition.holds()) {
                return;
            }
            assertTrue(eaveside.isAlive(), "it has ended");
            TimeUnit.MILLISECONDS.sleep(step.toMillis());
        }
        throw new AssertionError("not within " + patience);
    }

    @Override
    public void close() throws InterruptedException {
        eaveside.destroy();
        assertTrue(eaveside.waitFor(30, TimeUnit.SECONDS), "it stops when it is told to");
        assertEquals(List.of(), servers(), "and leaves nothing running");
    }
}
