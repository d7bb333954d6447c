package eaveside.testing;

import eaveside.schema.Schema;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.postgresql.ds.PGSimpleDataSource;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/**
 * The one place that decides which PostgreSQL the tests run on: an explicit server where {@code EAVESIDE_TEST_DB} names
 * one ({@code host:port/user/password} of a superuser), a container where a Docker engine answers, the embedded
 * binaries otherwise. It says which it took. Never another database.
 */
public final class TestDatabase {
    private static final Logger LOG = Logger.getLogger(TestDatabase.class.getName());
    private static final String PASSWORD = "test-only";
    private static final AtomicInteger CLONES = new AtomicInteger();
    private static final Server SERVER = start();
    private static final String TEMPLATE = template();

    private final String name;

    private TestDatabase(String name) {
        this.name = name;
    }

    /** @param  template the migrated database, where the server was started with one */
    private record Server(
            String host,
            int port,
            String user,
            String password,
            @Nullable String template) {}

    /** A fresh copy of the migrated database, empty of data. */
    public static TestDatabase create() {
        String name = "t_" + ProcessHandle.current().pid() + "_" + CLONES.incrementAndGet();
        superuser("create database " + name + " template " + TEMPLATE + " owner " + Schema.OWNER);
        superuser("grant connect on database " + name + " to " + Schema.APPLICATION);
        return new TestDatabase(name);
    }

    /** A database as an older version of the program left it: filled by the work, then migrated to the newest schema. */
    static TestDatabase migratedFrom(String version, Filling filling) {
        String name = "t_" + ProcessHandle.current().pid() + "_" + CLONES.incrementAndGet();
        TestDatabase database = new TestDatabase(name);
        try {
            Schema.createRolesAndDatabase(
                    dataSource("postgres", SERVER.user, SERVER.password), name, PASSWORD, PASSWORD);
            Schema.migrateTo(database.asOwner(), version);
            try (Connection connection = database.asOwner().getConnection()) {
                connection.setAutoCommit(false);
                filling.fill(connection);
                connection.commit();
            }
            Schema.migrate(database.asOwner());
            return database;
        } catch (SQLException e) {
            throw new IllegalStateException("the database of version " + version + " could not be made", e);
        }
    }

    /** Puts rows into an older schema. */
    @FunctionalInterface
    public interface Filling {
        void fill(Connection connection) throws SQLException;
    }

    /** Removes the copy, also while connections are open. */
    public void drop() {
        superuser("drop database if exists " + name + " with (force)");
    }

    /** As the running application signs in: only what the migrations grant. */
    public DataSource asApplication() {
        return dataSource(name, Schema.APPLICATION, PASSWORD);
    }

    /** As the owner of the tables, for arranging and looking at what a test cannot reach otherwise. */
    public DataSource asOwner() {
        return dataSource(name, Schema.OWNER, PASSWORD);
    }

    public String jdbcUrl() {
        return "jdbc:postgresql://" + SERVER.host + ":" + SERVER.port + "/" + name;
    }

    /** The password of both roles on this test server. */
    public String password() {
        return PASSWORD;
    }

    private static Server start() {
        String explicit = System.getenv("EAVESIDE_TEST_DB");
        if (explicit != null && !explicit.isBlank()) {
            String[] part = explicit.split("/", 3);
            String[] address = part[0].split(":", 2);
            return told(
                    "the server at " + part[0],
                    new Server(address[0], Integer.parseInt(address[1]), part[1], part[2], null));
        }
        return container().orElseGet(TestDatabase::embedded);
    }

    private static Optional<Server> container() {
        boolean engine = System.getenv("DOCKER_HOST") != null || Files.exists(Path.of("/var/run/docker.sock"));
        if (!engine) {
            return Optional.empty();
        }
        String image = System.getenv().getOrDefault("EAVESIDE_TEST_IMAGE", "postgres:18");
        @SuppressWarnings("resource") // lives as long as the test run
        PostgreSQLContainer container = new PostgreSQLContainer(
                        DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"))
                .withUsername("postgres")
                .withPassword(PASSWORD);
        container.start();
        return Optional.of(told(
                "a container of " + image,
                new Server(container.getHost(), container.getMappedPort(5432), "postgres", PASSWORD, null)));
    }

    private static Server embedded() {
        try {
            @SuppressWarnings("resource") // lives as long as the test run
            EmbeddedPostgres postgres = PreparedCluster.start(TestDatabase::makeTemplate);
            return told(
                    "embedded binaries",
                    new Server("localhost", postgres.getPort(), "postgres", "postgres", PreparedCluster.TEMPLATE));
        } catch (IOException e) {
            throw new UncheckedIOException("the embedded PostgreSQL did not start", e);
        }
    }

    private static Server told(String what, Server server) {
        try (Connection connection = dataSource(server, "postgres", server.user, server.password)
                        .getConnection();
                Statement statement = connection.createStatement();
                ResultSet version = statement.executeQuery("show server_version")) {
            version.next();
            LOG.info("Test database: " + what + ", PostgreSQL " + version.getString(1));
            return server;
        } catch (SQLException e) {
            throw new IllegalStateException("the test server does not tell its version", e);
        }
    }

    private static String template() {
        String prepared = SERVER.template;
        if (prepared != null) {
            return prepared;
        }
        String template = "eaveside_template_" + ProcessHandle.current().pid();
        superuser("drop database if exists " + template);
        makeTemplate(SERVER.host, SERVER.port, SERVER.user, SERVER.password, template);
        return template;
    }

    private static void makeTemplate(String host, int port, String user, String password, String name) {
        Server server = new Server(host, port, user, password, null);
        try {
            Schema.createRolesAndDatabase(dataSource(server, "postgres", user, password), name, PASSWORD, PASSWORD);
            Schema.migrate(dataSource(server, name, Schema.OWNER, PASSWORD));
        } catch (SQLException e) {
            throw new IllegalStateException("the template database could not be made", e);
        }
    }

    private static void superuser(String sql) {
        try (Connection connection =
                        dataSource("postgres", SERVER.user, SERVER.password).getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    private static DataSource dataSource(String database, String user, String password) {
        return dataSource(SERVER, database, user, password);
    }

    private static DataSource dataSource(Server server, String database, String user, String password) {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setServerNames(new String[] {server.host});
        source.setPortNumbers(new int[] {server.port});
        source.setDatabaseName(database);
        source.setUser(user);
        source.setPassword(password);
        return source;
    }
}
