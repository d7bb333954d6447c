package eaveside.schema;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.output.MigrateResult;

/**
 * Creates and migrates the database. Two roles divide the power: the owner owns every table and migrates; the
 * application's role may only do what the migrations grant it, so that not even a bug can change a posted entry.
 */
public final class Schema {
    /** Owns the tables and runs the migrations. */
    public static final String OWNER = "eaveside_owner";

    /** What the running application signs in as. */
    public static final String APPLICATION = "eaveside_app";

    private static final long ONE_AT_A_TIME = 0x6561766573L;

    private Schema() {}

    /**
     * Creates the two roles and the database where they are missing, and sets the passwords. Run as a superuser on
     * another database of the same server.
     */
    public static void createRolesAndDatabase(
            DataSource superuser, String database, String ownerPassword, String applicationPassword)
            throws SQLException {
        try (Connection connection = superuser.getConnection()) {
            // Roles belong to the whole server: two that prepare it at once would trip over each other.
            execute(connection, "select pg_advisory_lock(" + ONE_AT_A_TIME + ")");
            createRole(connection, OWNER, ownerPassword);
            createRole(connection, APPLICATION, applicationPassword);
            if (!exists(connection, "select 1 from pg_database where datname = ?", database)) {
                execute(
                        connection,
                        "create database " + quoted(database) + " owner " + OWNER
                                + " encoding 'UTF8' template template0");
            }
            execute(connection, "revoke all on database " + quoted(database) + " from public");
            execute(connection, "grant connect on database " + quoted(database) + " to " + APPLICATION);
        }
    }

    /** Brings the database to the newest schema; returns how many migrations it ran. */
    public static int migrate(DataSource owner) {
        return migrateTo(owner, "latest");
    }

    /** Brings the database to an older schema, so that a test can fill it and see it migrated from there. */
    public static int migrateTo(DataSource owner, String version) {
        MigrateResult result = Flyway.configure(Schema.class.getClassLoader())
                .dataSource(owner)
                .locations("classpath:db/migration")
                .target(version)
                .validateMigrationNaming(true)
                .load()
                .migrate();
        return result.migrationsExecuted;
    }

    private static void createRole(Connection connection, String role, String password) throws SQLException {
        if (!exists(connection, "select 1 from pg_roles where rolname = ?", role)) {
            execute(connection, "create role " + role + " login nosuperuser nocreatedb nocreaterole");
        }
        // ALTER ROLE takes no parameters: the password goes in as a literal that the server itself has quoted.
        try (PreparedStatement quote = connection.prepareStatement("select quote_literal(?)")) {
            quote.setString(1, password);
            try (ResultSet row = quote.executeQuery()) {
                row.next();
                execute(connection, "alter role " + role + " password " + row.getString(1));
            }
        }
    }

    private static boolean exists(Connection connection, String sql, String name) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(sql)) {
            query.setString(1, name);
            try (ResultSet row = query.executeQuery()) {
                return row.next();
            }
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static String quoted(String identifier) {
        return '"' + identifier.replace("\"", "\"\"") + '"';
    }
}
