package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import java.net.http.HttpClient;
import java.sql.SQLException;
import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What waits in the database for something that does not come is ended, and said to be tried again. */
@Tag("long")
class HangsHttpIT {
    @Test
    void a_request_that_waits_for_a_lock_that_nobody_gives_back_ends() throws SQLException {
        Server server = Server.shared();
        HttpClient owner = server.signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        try (var connection = server.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("lock table vehicle in access exclusive mode");
            long begun = System.nanoTime();
            var answer = server.get(owner, "vehicles");
            Duration took = Duration.ofNanos(System.nanoTime() - begun);
            assertEquals(503, answer.statusCode(), answer.body());
            assertTrue(answer.headers().firstValue("Retry-After").isPresent());
            assertTrue(took.toSeconds() >= 25 && took.toSeconds() < 60, "after " + took);
            connection.rollback();
        }
        assertEquals(200, server.get(owner, "vehicles").statusCode());
    }
}
