package eaveside.testing;

import eaveside.schema.BooksProof;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.enterprise.inject.se.SeContainer;
import jakarta.enterprise.inject.se.SeContainerInitializer;
import jakarta.persistence.EntityManagerFactory;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Runs use cases on a real database without a server: {@code @RegisterExtension static final Bench bench = new
 * Bench();}. Each test class has its own copy of the migrated database and its own movable clock.
 */
public final class Bench implements BeforeAllCallback, AfterAllCallback {
    private static @Nullable Bench current;

    private final Supplier<TestDatabase> source;
    private final MovableClock clock = new MovableClock();
    private @Nullable TestDatabase database;
    private @Nullable EntityManagerFactory factory;
    private @Nullable SeContainer container;

    /** On an empty database of the newest schema. */
    public Bench() {
        this(TestDatabase::create);
    }

    private Bench(Supplier<TestDatabase> source) {
        this.source = source;
    }

    /** On a database that was filled at an older version of the schema and then migrated. */
    public static Bench migratedFrom(String version, TestDatabase.Filling filling) {
        return new Bench(() -> TestDatabase.migratedFrom(version, filling));
    }

    @Override
    public void beforeAll(ExtensionContext context) {
        start();
    }

    @Override
    public void afterAll(ExtensionContext context) {
        stop();
    }

    private void start() {
        if (current != null) {
            throw new IllegalStateException("one bench at a time");
        }
        current = this;
        database = source.get();
        factory = Entities.factory(database);
        container = SeContainerInitializer.newInstance().initialize();
    }

    private void stop() {
        if (container != null) {
            container.close();
        }
        if (factory != null) {
            factory.close();
        }
        if (database != null) {
            database.drop();
        }
        current = null;
    }

    static Bench current() {
        if (current == null) {
            throw new IllegalStateException("no bench runs");
        }
        return current;
    }

    EntityManagerFactory entityManagerFactory() {
        return existing(factory);
    }

    /** The use case (or any other bean) of that type. */
    public <T> T get(Class<T> type) {
        return existing(container).select(type).get();
    }

    public MovableClock clock() {
        return clock;
    }

    public TestDatabase database() {
        return existing(database);
    }

    /** Runs the work in one transaction, as an outer use case would. */
    public <T> T inTransaction(Callable<T> work) {
        try {
            return get(TransactionScope.class).inNew(work);
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** The rows that a query of the tables' owner answers, column names in lower case. */
    public List<Map<String, Object>> rows(String sql, Object... parameters) {
        return query(database().asOwner(), sql, parameters);
    }

    /** The one value that a query of the tables' owner answers. */
    public Object value(String sql, Object... parameters) {
        List<Map<String, Object>> rows = rows(sql, parameters);
        if (rows.size() != 1) {
            throw new AssertionError("one row expected, " + rows.size() + " found: " + sql);
        }
        return rows.getFirst().values().iterator().next();
    }

    /** Users whom deeds can be laid to, who cannot sign in; those who are there stay as they are. */
    public void employ(UUID... users) {
        for (UUID user : users) {
            execute(
                    "insert into app_user (id, username, name, role, password_hash) values (?, ?, 'Tess Ladder', 'OWNER',"
                            + " '$argon2id$v=19$m=1,t=1,p=1$none$none') on conflict do nothing",
                    user,
                    "tess." + user);
        }
    }

    /** Executes a statement as the tables' owner. */
    public int execute(String sql, Object... parameters) {
        return update(database().asOwner(), sql, parameters);
    }

    /** Executes a statement with the running application's rights: for showing what those rights refuse. */
    public int executeAsApplication(String sql, Object... parameters) throws SQLException {
        try (Connection connection = database().asApplication().getConnection();
                PreparedStatement statement = prepared(connection, sql, parameters)) {
            return statement.executeUpdate();
        }
    }

    /** Fails naming the first offending document unless every proof of the books holds. */
    public void verifyBooks() {
        try (Connection connection = database().asOwner().getConnection()) {
            List<BooksProof.Result> results = BooksProof.run(connection);
            Assertions.assertFalse(results.isEmpty(), "there are no proofs");
            Assertions.assertEquals(
                    List.of(), results.stream().filter(r -> !r.holds()).toList());
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    private static List<Map<String, Object>> query(DataSource source, String sql, Object... parameters) {
        try (Connection connection = source.getConnection();
                PreparedStatement statement = prepared(connection, sql, parameters);
                ResultSet result = statement.executeQuery()) {
            List<Map<String, Object>> rows = new ArrayList<>();
            while (result.next()) {
                Map<String, Object> row = new LinkedHashMap<>();
                for (int i = 1; i <= result.getMetaData().getColumnCount(); i++) {
                    row.put(result.getMetaData().getColumnLabel(i), result.getObject(i));
                }
                rows.add(row);
            }
            return rows;
        } catch (SQLException e) {
            throw new AssertionError(sql, e);
        }
    }

    private static int update(DataSource source, String sql, Object... parameters) {
        try (Connection connection = source.getConnection();
                PreparedStatement statement = prepared(connection, sql, parameters)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new AssertionError(sql, e);
        }
    }

    private static PreparedStatement prepared(Connection connection, String sql, Object... parameters)
            throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < parameters.length; i++) {
            statement.setObject(i + 1, parameters[i]);
        }
        return statement;
    }

    private static <T> T existing(@Nullable T thing) {
        if (thing == null) {
            throw new IllegalStateException("the bench has not started");
        }
        return thing;
    }

    /** Gives the beans the bench's clock. */
    @ApplicationScoped
    public static class Beans {
        @Produces
        @ApplicationScoped
        Clock clock() {
            return current().clock();
        }
    }
}
