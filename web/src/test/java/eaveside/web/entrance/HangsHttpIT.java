package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.io.UncheckedIOException;
import java.net.URI;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What hangs is ended, on the running server: a body that does not come, and a wait for what the database does not give. That the last
 * resort, an interruption, ends what neither of them does is shown by {@code DeadlinesTest} alone: no input makes it necessary.
 */
@Tag("long")
class HangsHttpIT {
    private static final URI SERVER = Server.shared().base();

    /** A byte a second is not silent, and still is ended. */
    @Test
    void endsABodyThatIsNeverDone() throws InterruptedException {
        String head = "POST /sign-in HTTP/1.1\r\nHost: a\r\nOrigin: http://a\r\n"
                + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\n";
        try (var dribbling = RawHttp.to(SERVER).send(head)) {
            int seconds = 0;
            boolean ended = false;
            while (!ended && seconds < 60) {
                seconds++;
                ended = dribbling.isClosedWithin(Duration.ofSeconds(1));
                try {
                    dribbling.send("a");
                } catch (UncheckedIOException e) {
                    ended = true;
                }
            }
            assertTrue(seconds > 15 && seconds < 40, seconds + " s");
        }
    }

    /** Something else holds a row and does not let go: the request ends, its change is not made, and it can be asked for again. */
    @Test
    void endsARequestThatWaitsForWhatDoesNotCome() throws SQLException {
        Visitor owner = Visitor.owner();
        Map<String, String> made = owner.form("vehicles/new", "/vehicles");
        made.put("name", "Held by another");
        owner.post("vehicles", made);
        String id = Visitor.value("select id from vehicle where name = 'Held by another'");
        Map<String, String> form = owner.form("vehicles/" + id, "/vehicles");
        form.put("name", "Held no more");
        try (var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("select 1 from vehicle where id = '" + id + "' for update");
            long begun = System.nanoTime();
            var waiting = CompletableFuture.supplyAsync(() -> owner.post("vehicles", form));
            assertEquals(200, Visitor.office().get("vehicles").statusCode(), "others go on");
            assertFalse(waiting.isDone());
            var answer = waiting.join();
            Duration took = Duration.ofNanos(System.nanoTime() - begun);
            assertEquals(503, answer.statusCode(), answer.body());
            assertTrue(answer.headers().firstValue("Retry-After").isPresent());
            assertTrue(took.toSeconds() >= 20 && took.toSeconds() < 60, took.toString());
            connection.rollback();
        }
        assertEquals("Held by another", Visitor.value("select name from vehicle where id::text = ?", id));
        assertEquals(303, owner.post("vehicles", form).statusCode(), "and once more is enough");
    }
}
