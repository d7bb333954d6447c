package eaveside.demo;

import eaveside.testing.Bench;
import eaveside.testing.MovableClock;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * For developers: keeps the demo company of today as a database of the name in the system property {@code
 * eaveside.demo.database}, on the server that {@code EAVESIDE_TEST_DB} names, in place of what had that name. Without
 * the property it does nothing.
 */
class DemoDatabase {
    @RegisterExtension
    static final Bench bench = new Bench();

    @Test
    void keepTheDemoOfToday() throws SQLException {
        String name = System.getProperty("eaveside.demo.database", "");
        Assumptions.assumeFalse(name.isEmpty(), "no database is named");
        DemoTime time = timeOf(bench);
        time.moveTo(Clock.systemUTC().instant());
        List<DemoUser> usernames = bench.get(LoadDemoCompany.class).load(time);
        keepAs(name);
        usernames.forEach(username -> System.out.printf(
                "%-10s %-16s %-8s %s%n", username.role(), username.name(), username.username(), username.password()));
    }

    private static void keepAs(String name) throws SQLException {
        String url = bench.database().jdbcUrl();
        String server = url.substring(0, url.lastIndexOf('/') + 1);
        String source = url.substring(url.lastIndexOf('/') + 1);
        String[] superuser = System.getenv("EAVESIDE_TEST_DB").split("/", 3);
        try (var connection = DriverManager.getConnection(server + "postgres", superuser[1], superuser[2]);
                var statement = connection.createStatement()) {
            // A database can be copied only while nobody is signed in to it, the bench included.
            statement.execute(
                    "select pg_terminate_backend(pid) from pg_stat_activity where datname = '" + source + "'");
            statement.execute("drop database if exists \"" + name + "\" with (force)");
            statement.execute("create database \"" + name + "\" template " + source + " owner eaveside_owner");
            statement.execute("grant connect on database \"" + name + "\" to eaveside_app");
        }
    }

    /** Moves the bench's clock. */
    static DemoTime timeOf(Bench bench) {
        MovableClock clock = bench.clock();
        return (Instant now) -> clock.forward(Duration.between(clock.instant(), now));
    }
}
