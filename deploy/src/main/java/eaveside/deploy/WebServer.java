package eaveside.deploy;

import fish.payara.micro.BootstrapException;
import fish.payara.micro.PayaraMicroRuntime;
import fish.payara.micro.boot.PayaraMicroBoot;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.logging.Level;
import java.util.logging.Logger;

/** Payara Micro with the web application, inside this process. */
final class WebServer implements AutoCloseable {
    private static final int MILLIS_TO_ANSWER = 20_000;
    private static final String LISTENER =
            "configs.config.server-config.network-config.network-listeners.network-listener.http-listener.";

    /** A property of this process that the application sets once it listens. */
    private static final String LISTENING = "eaveside.listening";

    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final Duration STEP = Duration.ofMillis(5);

    private final PayaraMicroRuntime runtime;
    private final URI address;

    private WebServer(PayaraMicroRuntime runtime, URI address) {
        this.runtime = runtime;
        this.address = address;
    }

    /** The address people open. */
    static URI address(String bind, int port) {
        var host = isWildcard(bind) ? "localhost" : bind;
        return URI.create("http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port + "/");
    }

    /** @param  port 0 for any */
    static void listenOnce(String bind, int port) throws IOException {
        if (bind.isBlank()) {
            throw new UnknownHostException("no address"); // which the platform would take for this machine
        }
        try (var socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getByName(bind), port));
        }
    }

    /** Refuses a port that cannot be had, before anything else is started. */
    static void checkFree(String bind, int port) {
        try {
            listenOnce(bind, port);
        } catch (IOException e) {
            throw new Failure(
                    "Cannot listen on " + bind + " port " + port + ": " + e.getMessage()
                            + " (choose another with --port)",
                    e);
        }
    }

    /**
     * Starts the server and returns when the application has answered its first request.
     *
     * @param  root an empty folder for the server's working files
     * @param  log where it writes its log
     * @param  settings the application's configuration
     */
    static WebServer start(
            PreparedServer prepared, Path root, Path log, String bind, int port, Map<String, String> settings) {
        try {
            Files.createDirectories(log.getParent());
            prepared.copyConfiguration(root);
            Files.writeString(root.resolve("config/logging.properties"), logging(log));
            Files.writeString(
                    root.resolve("preboot.txt"),
                    Files.readString(prepared.application().resolve("WEB-INF/preboot.txt"))
                            + "set " + LISTENER + "address=" + bind + "\n"
                            // Until there is something to answer with, nobody is answered.
                            + "set " + LISTENER + "enabled=false\n");
            Files.writeString(root.resolve("deployed.txt"), "set " + LISTENER + "enabled=true\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        settings.forEach(System::setProperty);
        System.setProperty(
                "java.util.logging.config.file",
                root.resolve("config/logging.properties").toString());
        System.setProperty(
                "fish.payara.micro.BootJar", prepared.bootJar().toUri().toString());
        System.setProperty("fish.payara.micro.UnpackDir", root.toString());
        var runtime = boot(
                log,
                "--rootdir",
                root.toString(),
                "--prebootcommandfile",
                root.resolve("preboot.txt").toString(),
                "--postdeploycommandfile",
                root.resolve("deployed.txt").toString(),
                "--nocluster",
                "--disablephonehome",
                "--port",
                Integer.toString(port),
                "--deploy",
                prepared.application().toString(),
                "--contextroot",
                "/");
        var server = new WebServer(runtime, address(bind, port));
        // The server stays up without its application when that cannot be deployed.
        if (runtime.getDeployedApplicationNames().isEmpty()) {
            throw new Failure("The application did not start; see " + log);
        }
        if (!listens()) {
            server.close();
            checkFree(bind, port);
            throw new Failure("The server does not listen on " + bind + " port " + port + "; see " + log);
        }
        int answer = server.get("");
        if (answer >= HttpURLConnection.HTTP_INTERNAL_ERROR) {
            throw new Failure("The application answers its first page with " + answer + "; see " + log);
        }
        return server;
    }

    private static PayaraMicroRuntime boot(Path log, String... arguments) {
        try {
            // Its own main method would do the same and keep the handle to itself.
            var boot = (PayaraMicroBoot) Class.forName("fish.payara.micro.impl.PayaraMicroImpl")
                    .getMethod("create", String[].class)
                    .invoke(null, (Object) arguments);
            return boot.getRuntime();
        } catch (ReflectiveOperationException | RuntimeException e) {
            throw new Failure("The server did not start; see " + log, e);
        }
    }

    URI address() {
        return address;
    }

    /** By what the application says to this process: at the port might be somebody else. */
    private static boolean listens() {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!Boolean.getBoolean(LISTENING) && System.nanoTime() < end) {
            LockSupport.parkNanos(STEP.toNanos());
        }
        return Boolean.getBoolean(LISTENING);
    }

    /** Whether it answers anything at all, within seconds. */
    boolean answers() {
        try {
            var connection =
                    (HttpURLConnection) address.resolve("health/live").toURL().openConnection();
            connection.setConnectTimeout(MILLIS_TO_ANSWER);
            connection.setReadTimeout(MILLIS_TO_ANSWER);
            try {
                return connection.getResponseCode() > 0;
            } finally {
                connection.disconnect();
            }
        } catch (IOException e) {
            return false;
        }
    }

    /** Fetches a page and returns the status. */
    int get(String path) {
        try {
            var connection = (HttpURLConnection) address.resolve(path).toURL().openConnection();
            connection.setInstanceFollowRedirects(true);
            try (var body = connection.getResponseCode() >= HttpURLConnection.HTTP_BAD_REQUEST
                    ? connection.getErrorStream()
                    : connection.getInputStream()) {
                if (body != null) {
                    body.readAllBytes();
                }
            }
            return connection.getResponseCode();
        } catch (IOException e) {
            throw new Failure("The server does not answer at " + address.resolve(path) + ": " + e.getMessage(), e);
        }
    }

    @Override
    public void close() {
        try {
            runtime.shutdown();
        } catch (BootstrapException | RuntimeException e) {
            // When the process ends, the server's own hook may have stopped it already; nothing is left to do.
            Logger.getLogger(WebServer.class.getName()).log(Level.FINE, "already stopped", e);
        }
    }

    static boolean isLoopback(String bind) {
        try {
            return InetAddress.getByName(bind).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false; // and cannot be listened on either
        }
    }

    private static boolean isWildcard(String bind) {
        return bind.equals("0.0.0.0") || bind.equals("::");
    }

    private static String logging(Path log) {
        return """
                handlers=java.util.logging.FileHandler
                .level=INFO
                java.util.logging.FileHandler.pattern=%s
                java.util.logging.FileHandler.limit=5000000
                java.util.logging.FileHandler.count=5
                java.util.logging.FileHandler.append=true
                java.util.logging.FileHandler.encoding=UTF-8
                java.util.logging.FileHandler.formatter=eaveside.deploy.LogLine
                java.util.logging.FileHandler.filter=eaveside.deploy.RepeatedFaults
                org.hibernate.orm.deprecation.level=SEVERE
                org.hibernate.orm.connections.pooling.level=WARNING
                javax.enterprise.system.ssl.level=SEVERE
                javax.enterprise.system.security.ssl.level=SEVERE
                """.formatted(log.toString().replace(".0.log", ".%g.log"));
    }
}
