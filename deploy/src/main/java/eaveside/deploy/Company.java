package eaveside.deploy;

import eaveside.schema.Schema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** One company's running Eaveside: its database and its web application, started and stopped together. */
final class Company implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";

    private final DataFolder folder;
    private final PostgresServer postgres;
    private final boolean ownsDatabase;
    private final Path scratch;
    private @Nullable WebServer web;
    private @Nullable Watch watch;
    private boolean closed;

    private Company(DataFolder folder, PostgresServer postgres, boolean ownsDatabase, Path scratch) {
        this.folder = folder;
        this.postgres = postgres;
        this.ownsDatabase = ownsDatabase;
        this.scratch = scratch;
        // From the first moment, so that Ctrl-C during the start leaves no database running.
        Runtime.getRuntime().addShutdownHook(new Thread(this::close, "stop"));
    }

    /**
     * Starts everything in the data folder.
     *
     * @param  settings of the application, beside its database
     * @param  first what the application is asked to do when the database holds no company with users yet; null is
     *     nothing
     * @param  told takes the answer to that
     */
    static Company start(
            DataFolder folder,
            String bind,
            int port,
            Map<String, String> settings,
            Function<DataFolder, @Nullable Map<String, String>> first,
            Function<String, Void> told) {
        folder.lock(WebServer.address(bind, port).toString());
        Task.forgetAll(folder);
        WebServer.checkFree(bind, port);
        var company = withDatabase(folder);
        try {
            dropUnfinished(folder, company.postgres);
            migrate(folder, company.postgres);
            var values = company.isEmpty() ? first.apply(folder) : null;
            company.serve(bind, port, settings, values, told);
            company.watch = new Watch(company.postgres, company.served());
            return company;
        } catch (RuntimeException e) {
            company.close();
            throw e;
        }
    }

    /** Has the application do one thing, whether another process is serving the folder or not, and returns its answer. */
    static String perform(DataFolder folder, Map<String, String> task) {
        if (!folder.hasDatabase()) {
            throw new Failure("There is no company in " + folder.root());
        }
        folder.awaitTurn();
        boolean alone = folder.tryLock("performing a task");
        var answer = new StringBuilder();
        try (var company = alone
                ? withDatabase(folder)
                : new Company(
                        folder,
                        PostgresServer.running(PreparedServer.current().postgres(), folder),
                        false,
                        folder.root().resolve("task"))) {
            company.serve(LOOPBACK, freePort(), Map.of(), task, text -> {
                answer.append(text);
                return null;
            });
        }
        return answer.toString();
    }

    /** A port of the loopback address that nothing listens on. */
    static int freePort() {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Company withDatabase(DataFolder folder) {
        var postgres = PostgresServer.start(PreparedServer.current().postgres(), folder);
        return new Company(folder, postgres, true, folder.server());
    }

    private void serve(
            String bind,
            int port,
            Map<String, String> more,
            @Nullable Map<String, String> values,
            Function<String, Void> told) {
        // The launcher's own folder for temporary files, so that what a kill leaves behind goes at the next start.
        DataFolder.fresh(scratch);
        System.setProperty(
                "java.io.tmpdir", DataFolder.fresh(scratch.resolve("tmp")).toString());
        var settings = new HashMap<>(more);
        settings.put("eaveside.db.url", postgres.jdbcUrl());
        settings.put("eaveside.db.user", Schema.APPLICATION);
        settings.put("eaveside.db.password", folder.password(Schema.APPLICATION));
        var task = values == null ? null : Task.leave(folder, values);
        try {
            if (task != null) {
                settings.put(Task.SETTING, task.file().toString());
            }
            var log = folder.logs().resolve(scratch.getFileName() + ".0.log");
            web = WebServer.start(PreparedServer.current(), scratch.resolve("payara"), log, bind, port, settings);
            if (task != null) {
                told.apply(task.answer());
            }
        } finally {
            if (task != null) {
                task.forget();
            }
        }
    }

    /** Forgets a demo company that was never finished, so that it is made anew. */
    private static void dropUnfinished(DataFolder folder, PostgresServer postgres) {
        if (Files.exists(folder.demoUnfinished())) {
            try (var connection = postgres.superuser().getConnection();
                    var statement = connection.createStatement()) {
                statement.execute("drop database if exists " + PostgresServer.DATABASE + " with (force)");
                Files.delete(folder.demoUnfinished());
            } catch (SQLException e) {
                throw new Failure("Cannot forget the unfinished demo company: " + e.getMessage(), e);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** Brings roles, database and tables to this version; returns how many migrations ran. */
    static int migrate(DataFolder folder, PostgresServer postgres) {
        try {
            Schema.createRolesAndDatabase(
                    postgres.superuser(),
                    PostgresServer.DATABASE,
                    folder.password(Schema.OWNER),
                    folder.password(Schema.APPLICATION));
            return Schema.migrate(postgres.role(Schema.OWNER));
        } catch (SQLException e) {
            throw new Failure("Cannot set up the database: " + e.getMessage(), e);
        }
    }

    private boolean isEmpty() {
        try (var connection = postgres.role(Schema.OWNER).getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery(
                        "select not exists (select from company) or not exists (select from app_user)")) {
            row.next();
            return row.getBoolean(1);
        } catch (SQLException e) {
            throw new Failure("Cannot read the database: " + e.getMessage(), e);
        }
    }

    URI address() {
        return served().address();
    }

    /** Fetches a page of the application and returns the status. */
    int get(String path) {
        return served().get(path);
    }

    private WebServer served() {
        if (web == null) {
            throw new IllegalStateException("not serving");
        }
        return web;
    }

    /** Stops the application, then the database. */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            if (watch != null) {
                watch.close();
            }
            if (web != null) {
                web.close();
            }
        } finally {
            if (ownsDatabase) {
                postgres.close();
            }
            try {
                DataFolder.delete(scratch);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
