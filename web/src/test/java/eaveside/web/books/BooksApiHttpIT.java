package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Journals and their reversal by scripts, in the records of the ledger. */
class BooksApiHttpIT {
    private final Visitor owner = Visitor.owner();

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private static String line(String account, String side, String amount) {
        return "{\"account\":\"" + account + "\",\"" + side + "\":{\"amount\":\"" + amount
                + "\",\"currency\":\"USD\"}}";
    }

    private static String journal(String id, String... lines) {
        return "{\"id\":\"" + id + "\",\"type\":\"JOURNAL\",\"summary\":\"Tires\",\"lines\":[" + String.join(",", lines)
                + "]}";
    }

    @Test
    void a_journal_is_posted_once_read_and_reversed_once() {
        String id = UUID.randomUUID().toString();
        String body = journal(id, line("6100", "debit", "386.20"), line("1000", "credit", "386.20"));
        HttpResponse<String> first = owner.json("POST", "api/books/journals", body);
        JsonObject posted = json(first, 201);
        assertEquals("JOURNAL", posted.getString("type"));
        String location = first.headers().firstValue("Location").orElseThrow();
        assertTrue(location.endsWith("/api/books/documents/" + id), location);
        assertEquals(posted, json(owner.json("POST", "api/books/journals", body), 201), "the same again is a retry");
        assertEquals(
                409,
                owner.json("POST", "api/books/journals", body.replace("Tires", "Rims"))
                        .statusCode());

        JsonObject document = json(owner.getJson("api/books/documents/" + id), 200);
        assertEquals(posted.getJsonNumber("number"), document.getJsonNumber("number"));
        assertEquals("Tires", document.getString("summary"));
        JsonObject credit = document.getJsonArray("entries").getJsonObject(1);
        assertEquals("1000", credit.getString("account"));
        assertEquals("-386.20", credit.getJsonObject("amount").getString("amount"));

        String path = "api/books/documents/" + id + "/reversal";
        String reversal = "{\"id\":\"" + UUID.randomUUID() + "\",\"reason\":\"Entered twice\"}";
        JsonObject reversed = json(owner.json("POST", path, reversal), 201);
        assertEquals("REVERSAL", reversed.getString("type"));
        assertEquals(reversed, json(owner.json("POST", path, reversal), 201));
        assertEquals(
                409,
                owner.json("POST", path, reversal.replaceFirst("[0-9a-f-]{36}", "" + UUID.randomUUID()))
                        .statusCode(),
                "once only");
        assertEquals(
                reversed.getString("id"),
                json(owner.getJson("api/books/documents/" + id), 200).getString("reversedBy"));
    }

    @Test
    void everything_that_is_wrong_with_a_journal_is_told_by_its_field() {
        String id = UUID.randomUUID().toString();
        JsonObject both = json(
                owner.json(
                        "POST",
                        "api/books/journals",
                        journal(
                                id,
                                line("6100", "debit", "5.00")
                                        .replace("}}", "},\"credit\":{\"amount\":\"5.00\",\"currency\":\"USD\"}}"),
                                "{\"account\":\"1000\"}")),
                422);
        assertEquals(
                "[\"lines[0].credit\",\"lines[1].debit\"]",
                both.getJsonArray("fields").toString());

        JsonObject off = json(
                owner.json(
                        "POST",
                        "api/books/journals",
                        journal(id, line("6100", "debit", "5.00"), line("1000", "credit", "4.00"))),
                422);
        assertEquals("[\"lines\"]", off.getJsonArray("fields").toString());
        JsonObject unknown = json(
                owner.json(
                        "POST",
                        "api/books/journals",
                        journal(id, line("6199", "debit", "5.00"), line("1000", "credit", "5.00"))),
                422);
        assertTrue(unknown.getString("title").contains("6199"), unknown.toString());
        assertEquals(404, owner.getJson("api/books/documents/" + id).statusCode());
    }

    @Test
    void the_trial_balance_is_of_this_month_where_no_days_are_named() {
        JsonObject balance = json(owner.getJson("api/books/trial-balance"), 200);
        assertTrue(balance.getString("from").endsWith("-01"), balance.getString("from"));
        assertFalse(balance.getString("to").isEmpty());
        JsonObject wrong = json(owner.getJson("api/books/trial-balance?from=soon"), 400);
        assertEquals("[\"from\"]", wrong.getJsonArray("fields").toString());
    }
}
