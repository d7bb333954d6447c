package eaveside.deploy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * The embedded PostgreSQL of one data folder. It listens on the loopback address only, asks every role for its
 * password (SCRAM), and keeps what it has confirmed even if the machine loses power.
 */
final class PostgresServer implements AutoCloseable {
    static final String DATABASE = "eaveside";
    private static final String SUPERUSER = "postgres";
    private static final List<String> DURABLE = List.of("fsync", "synchronous_commit", "full_page_writes");
    private static final String TOO_MANY_CONNECTIONS = "53300";
    private static final String STARTING = "57P03";
    private static final int SECONDS_TO_ANSWER = 10;
    private static final int START_ATTEMPTS = 20;
    private static final Duration BETWEEN_ATTEMPTS = Duration.ofMillis(500);

    private final Path binaries;
    private final DataFolder folder;
    private final int port;

    private PostgresServer(Path binaries, DataFolder folder, int port) {
        this.binaries = binaries;
        this.folder = folder;
        this.port = port;
    }

    /**
     * Starts the server, making its files when the folder is new. A server left behind by a killed process is stopped
     * first. The caller holds the folder's lock.
     *
     * @param  binaries the folder of the programs {@code initdb}, {@code pg_ctl} and {@code postgres}
     */
    static PostgresServer start(Path binaries, DataFolder folder) {
        var server = new PostgresServer(binaries, folder, 0);
        if (!folder.hasDatabase()) {
            server.initialise();
        }
        server.stopOrphan();
        for (int attempt = 1; ; attempt++) {
            var candidate = new PostgresServer(binaries, folder, Company.freePort());
            if (candidate.launch()) {
                candidate.checkDurable();
                return candidate;
            }
            if (attempt == START_ATTEMPTS) {
                throw new Failure(
                        "PostgreSQL does not start; see " + folder.logs().resolve("postgres.log"));
            }
        }
    }

    /** The server that another process has started in this folder. */
    static PostgresServer running(Path binaries, DataFolder folder) {
        try {
            var lines = Files.readAllLines(folder.postgres().resolve("postmaster.pid"));
            return new PostgresServer(
                    binaries, folder, Integer.parseInt(lines.get(3).strip()));
        } catch (IOException | RuntimeException e) {
            throw new Failure("Eaveside is just starting or stopping in " + folder.root() + "; try again", e);
        }
    }

    String jdbcUrl() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + DATABASE;
    }

    PGSimpleDataSource superuser() {
        return signIn("postgres", SUPERUSER);
    }

    /** The data source of a role of Eaveside's own database; its password is in the data folder under its name. */
    PGSimpleDataSource role(String role) {
        return signIn(DATABASE, role);
    }

    /** Whether its process lives. */
    boolean lives() {
        return postmaster().isPresent();
    }

    /** Whether it takes a connection and answers, within seconds. */
    boolean answers() {
        var source = superuser();
        source.setLoginTimeout(SECONDS_TO_ANSWER);
        source.setConnectTimeout(SECONDS_TO_ANSWER);
        source.setSocketTimeout(SECONDS_TO_ANSWER);
        try (var connection = source.getConnection()) {
            return connection.isValid(SECONDS_TO_ANSWER);
        } catch (SQLException e) {
            // So many connections that none is left for us are not its end, nor is its looking through its journal at a
            // start.
            return List.of(TOO_MANY_CONNECTIONS, STARTING).contains(String.valueOf(e.getSQLState()));
        }
    }

    /** Starts it at the same port, after it has ended or where it does not answer; false where it does not start. */
    boolean startAgain() {
        if (lives()) {
            if (answers()) {
                return true; // it has come back by itself, or is about to
            }
            if (stop("immediate") != 0) {
                postmaster().ifPresent(pid -> ProcessHandle.of(pid).ifPresent(ProcessHandle::destroyForcibly));
            }
        }
        return launch() && answers();
    }

    private PGSimpleDataSource signIn(String database, String role) {
        var source = new PGSimpleDataSource();
        source.setServerNames(new String[] {"127.0.0.1"});
        source.setPortNumbers(new int[] {port});
        source.setDatabaseName(database);
        source.setUser(role);
        source.setPassword(folder.password(role));
        source.setApplicationName("eaveside launcher");
        return source;
    }

    private void initialise() {
        var unfinished = folder.root().resolve("postgres.unfinished");
        var passwordFile = folder.root().resolve("initdb-password");
        try {
            DataFolder.delete(unfinished);
            Files.deleteIfExists(passwordFile);
            Files.createFile(
                    passwordFile, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            Files.writeString(passwordFile, folder.password(SUPERUSER));
            var output = run(
                    "initdb",
                    "--pgdata=" + unfinished,
                    "--username=" + SUPERUSER,
                    "--pwfile=" + passwordFile,
                    "--auth=scram-sha-256",
                    "--encoding=UTF8",
                    "--locale=C",
                    "--locale-provider=icu",
                    "--icu-locale=und",
                    "--data-checksums");
            Files.delete(passwordFile);
            if (output.code() != 0) {
                throw new Failure("PostgreSQL cannot make its files in " + folder.root() + ": " + output.lastLine());
            }
            // A folder that was only half made never gets the final name.
            Files.move(unfinished, folder.postgres(), StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new Failure("Cannot write to the data folder " + folder.root() + ": " + e.getMessage(), e);
        }
    }

    /** After a kill of the launcher alone its server lives on. The lock is ours, so nobody uses it any more. */
    private void stopOrphan() {
        var pid = postmaster();
        if (pid.isEmpty()) {
            return;
        }
        if (stop("fast") != 0) {
            stop("immediate");
        }
        if (postmaster().isPresent()) {
            throw new Failure("An old PostgreSQL (process " + pid.getAsLong() + ") in " + folder.root()
                    + " does not stop; end it and try again");
        }
    }

    /** The process of this folder's server, if one lives. */
    private OptionalLong postmaster() {
        try {
            var file = folder.postgres().resolve("postmaster.pid");
            if (!Files.exists(file)) {
                return OptionalLong.empty();
            }
            var lines = Files.readAllLines(file);
            var pid = Long.parseLong(lines.get(0).strip());
            boolean alive = ProcessHandle.of(pid)
                    .flatMap(process -> process.info().commandLine())
                    // The number may belong to another process by now, even to another folder's server.
                    .filter(command -> command.contains("/postgres -D " + folder.postgres() + " "))
                    .isPresent();
            return alive ? OptionalLong.of(pid) : OptionalLong.empty();
        } catch (IOException | RuntimeException e) {
            return OptionalLong.empty();
        }
    }

    private boolean launch() {
        try {
            Files.createDirectories(folder.logs());
            DataFolder.putAside(folder.logs().resolve("postgres.log"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        var settings = List.of(
                "port=" + port,
                "listen_addresses=127.0.0.1",
                "unix_socket_directories=",
                "password_encryption=scram-sha-256",
                "fsync=on",
                "synchronous_commit=on",
                "full_page_writes=on",
                "max_connections=60",
                "shared_buffers=128MB",
                "jit=off",
                // What is in a refused row stays out of the log.
                "log_error_verbosity=terse",
                "log_min_error_statement=panic",
                "timezone=UTC",
                "log_timezone=UTC");
        return run(
                                "pg_ctl",
                                "--pgdata=" + folder.postgres(),
                                "--log=" + folder.logs().resolve("postgres.log"),
                                "--wait",
                                "--timeout=120",
                                "--silent",
                                "--options=-c " + String.join(" -c ", settings),
                                "start")
                        .code()
                == 0;
    }

    private void checkDurable() {
        try (var connection = superuser().getConnection();
                var statement = connection.createStatement()) {
            for (var setting : DURABLE) {
                try (var row = statement.executeQuery("show " + setting)) {
                    row.next();
                    if (!"on".equals(row.getString(1))) {
                        close();
                        throw new Failure("PostgreSQL runs with " + setting + " " + row.getString(1)
                                + ": it would lose confirmed work at a power cut");
                    }
                }
            }
        } catch (SQLException e) {
            close();
            throw new Failure("PostgreSQL started but refuses its superuser: " + e.getMessage(), e);
        }
    }

    /** Stops the server; what was confirmed is on disk. */
    @Override
    public void close() {
        stop("fast");
    }

    private int stop(String mode) {
        return run("pg_ctl", "--pgdata=" + folder.postgres(), "--mode=" + mode, "--wait", "--timeout=30", "stop")
                .code();
    }

    private static void pause() {
        try {
            Thread.sleep(BETWEEN_ATTEMPTS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Failure("Interrupted while starting PostgreSQL", e);
        }
    }

    private record Output(int code, String text) {
        String lastLine() {
            return text.strip().lines().reduce("", (first, second) -> second);
        }
    }

    private Output run(String program, String... arguments) {
        var command = new ArrayList<String>();
        if ("root".equals(System.getProperty("user.name"))) {
            // PostgreSQL refuses to run as root; in a user namespace of its own it is nobody, with the same files.
            command.addAll(List.of("unshare", "--user"));
        }
        command.add(binaries.resolve("bin").resolve(program).toString());
        command.addAll(List.of(arguments));
        try {
            // A file, not a pipe: the server inherits it and a pipe would stay open as long as the server runs.
            var output = Files.createTempFile(folder.root(), program, ".out");
            try {
                var process = new ProcessBuilder(command)
                        .directory(folder.root().toFile())
                        .redirectErrorStream(true)
                        .redirectInput(ProcessBuilder.Redirect.from(
                                Path.of("/dev/null").toFile()))
                        .redirectOutput(output.toFile())
                        .start();
                return new Output(process.waitFor(), Files.readString(output));
            } finally {
                Files.delete(output);
            }
        } catch (IOException e) {
            throw new Failure("Cannot run PostgreSQL's " + program + ": " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Failure("Interrupted while running PostgreSQL's " + program, e);
        }
    }
}
