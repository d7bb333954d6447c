package eaveside.web.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import jakarta.json.JsonObject;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.Set;
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
    void a_visit_is_created_once_at_its_address() throws SQLException {
        String visit = CrewAtWork.id();
        String scheduling = """
                {"id": "%s", "site": "%s", "date": "%s", "crew": ["%s"],
                 "lines": [{"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "48", "unit": "H87"}}]}
                """.formatted(
                        visit,
                        SiteToQuote.SITE,
                        SiteToQuote.today(),
                        CrewAtWork.TECHNICIAN,
                        CrewAtWork.id(),
                        SiteToQuote.PANEL,
                        SiteToQuote.ARRAY);
        HttpResponse<String> created = office.json("POST", "api/visits", scheduling);
        JsonObject first = json(created, 201);
        assertTrue(Visitor.location(created).endsWith("/api/visits/" + visit), Visitor.location(created));
        assertEquals(1, first.getInt("version"));
        assertEquals(first, json(office.json("POST", "api/visits", scheduling), 201), "a retry");
        assertEquals(first, at.read(visit));
        assertEquals(1, at.site().audited("visit.schedule", "DONE", visit), "the retry is no deed");
        assertEquals(
                "urn:eaveside:refusal:visit.id-taken",
                json(office.json("POST", "api/visits", scheduling.replace("\"48\"", "\"40\"")), 409)
                        .getString("type"));
        JsonObject nothing = json(
                office.json(
                        "POST",
                        "api/visits",
                        scheduling.replace("\"48\"", "\"0\"").replace(visit, CrewAtWork.id())),
                422);
        assertEquals("[\"lines[0].quantity\"]", nothing.getJsonArray("fields").toString());
        json(office.json("POST", "api/visits", scheduling.replace("\"site\"", "\"place\"")), 400);
        json(
                office.json(
                        "POST", "api/visits", scheduling.replace("\"site\"", "\"quote\": \"" + visit + "\", \"site\"")),
                422);
    }

    @Test
    void a_scope_change_is_decided_for_its_own_visit_and_once() throws SQLException {
        String visit = at.visit();
        at.signedOff(visit);
        String other = at.visit();
        JsonObject extra = at.read(visit).getJsonArray("scopeChanges").getValuesAs(JsonObject.class).stream()
                .filter(change -> change.getString("type").equals("EXTRA"))
                .findFirst()
                .orElseThrow();
        assertEquals(1, extra.getInt("version"));
        String path = "api/visits/%s/scope-changes/" + extra.getString("id");
        String bill = "{\"version\": 1, \"decision\": \"BILL\"}";
        json(office.json("POST", path.formatted(other), bill), 404);
        JsonObject decided = json(office.json("POST", path.formatted(visit), bill), 200);
        assertEquals(decided, json(office.json("POST", path.formatted(visit), bill), 200), "a retry");
        assertEquals(1, at.site().audited("visit.decide", "DONE", visit), "the retry is no deed");
        JsonObject late = json(office.json("POST", path.formatted(visit), bill.replace("BILL", "NO_CHARGE")), 409);
        assertEquals("BILL", late.getJsonObject("stored").getString("decision"));
        assertEquals("NO_CHARGE", late.getJsonObject("sent").getString("decision"));
        assertEquals("[\"decision\"]", late.getJsonArray("fields").toString());
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
        HttpResponse<String> close = office.json("POST", path, "{\"id\": \"" + closing + "\", \"reason\": \"A gift\"}");
        assertEquals(closing, json(close, 201).getString("id"));
        assertTrue(Visitor.location(close).endsWith("/api/books/documents/" + closing), Visitor.location(close));
        assertEquals("CLOSED_NOT_BILLED", at.read(visit).getString("status"));
        assertEquals(closing, at.read(visit).getString("closing"));

        json(at.technician().json("POST", path + "/reversal", reversal), 403);
        json(office.json("POST", path + "/reversal", reversal.replace(closing, CrewAtWork.id())), 409);
        json(office.json("POST", path + "/reversal", reversal.replace("It was to be billed", " ")), 422);
        json(office.json("POST", path + "/reversal", "{}"), 400);
        json(office.json("POST", path.replace(visit, CrewAtWork.id()) + "/reversal", reversal), 404);
        assertEquals("CLOSED_NOT_BILLED", at.read(visit).getString("status"));

        JsonObject reopened = json(office.json("POST", path + "/reversal", reversal), 201);
        assertEquals(Set.of("id", "type", "number", "postingDate"), reopened.keySet());
        assertEquals("COMPLETED", at.read(visit).getString("status"));
        assertFalse(at.read(visit).containsKey("closing"));
        assertEquals(reopened, json(office.json("POST", path + "/reversal", reversal), 201), "a retry");
        json(office.json("POST", path + "/reversal", reversal.replace("billed", "given")), 409);
        assertEquals(1, at.site().audited("visit.reopened", "DONE", visit), "the retry is no deed");
    }
}
