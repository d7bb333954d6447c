package eaveside.web.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import eaveside.web.testing.Visitor;
import jakarta.json.JsonObject;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Closing a visit without an invoice and opening it again for scripts, on the real server. */
class VisitsApiHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();

    @BeforeAll
    static void publishPrices() {
        CrewAtWork.shared().site().published("Prices of closed visits");
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return CrewAtWork.json(answer);
    }

    @Test
    void a_closing_is_taken_back() throws SQLException {
        String visit = at.visit();
        at.signedOff(visit);
        at.settled(visit);
        String path = "api/visits/" + visit + "/closing";
        String closing = CrewAtWork.id();
        String reversal = "{\"id\": \"%s\", \"closing\": \"%s\", \"reason\": \"It was to be billed\"}"
                .formatted(CrewAtWork.id(), closing);
        json(office.json("POST", path + "/reversal", reversal), 409);
        JsonObject closed =
                json(office.json("POST", path, "{\"id\": \"" + closing + "\", \"reason\": \"A gift\"}"), 200);
        assertEquals("CLOSED_UNBILLED", closed.getString("status"));
        assertEquals(closing, closed.getString("closing"));

        json(at.technician().json("POST", path + "/reversal", reversal), 403);
        json(office.json("POST", path + "/reversal", reversal.replace(closing, CrewAtWork.id())), 409);
        json(office.json("POST", path + "/reversal", reversal.replace("It was to be billed", " ")), 422);
        json(office.json("POST", path + "/reversal", "{}"), 400);
        json(office.json("POST", path.replace(visit, CrewAtWork.id()) + "/reversal", reversal), 404);
        assertEquals("CLOSED_UNBILLED", at.read(visit).getString("status"));

        JsonObject reopened = json(office.json("POST", path + "/reversal", reversal), 200);
        assertEquals("COMPLETED", reopened.getString("status"));
        assertFalse(reopened.containsKey("closing"));
        assertEquals(reopened, json(office.json("POST", path + "/reversal", reversal), 200), "a retry");
        json(office.json("POST", path + "/reversal", reversal.replace("billed", "given")), 409);
        assertEquals(1, at.site().audited("visit.reopened", "DONE", visit), "the retry is no deed");
    }
}
