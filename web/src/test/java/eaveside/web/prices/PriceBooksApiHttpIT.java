package eaveside.web.prices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import eaveside.web.quotes.SiteToQuote;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Writing and publishing price books for scripts, on the real server. */
class PriceBooksApiHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();
    private final String path = "api/price-books/" + UUID.randomUUID();

    private static String book(String name) {
        return """
                {"name": "%s", "from": "%s", "visitMinimum": 150, "sharedReductionPercent": 5,
                 "lineMinimums": [{"serviceLine": "%s", "amount": 100}],
                 "prices": [
                   {"serviceItem": "%s", "unit": "H87",
                    "steps": [{"price": 7.5}, {"from": 40, "price": 6.5}],
                    "surcharges": [{"attribute": "STORY", "atLeast": 2, "percent": 20},
                                   {"attribute": "PITCH_DEGREES", "atLeast": 35, "amount": 1.25}]},
                   {"serviceItem": "%s", "baseQuantity": 100, "unit": "FTK", "steps": [{"price": 38}]}]}
                """.formatted(
                        name, SiteToQuote.today(), SiteToQuote.SOLAR_LINE, SiteToQuote.PANEL, SiteToQuote.SOFT_WASH);
    }

    private HttpResponse<String> put(HttpClient who, String body) {
        return at.json(who, "PUT", path, body);
    }

    private HttpResponse<String> publish(HttpClient who, int version) {
        return at.json(who, "POST", path + "/publish", "{\"version\": " + version + "}");
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    @Test
    void a_draft_is_written_read_changed_and_published() throws SQLException {
        JsonObject draft = json(put(at.owner(), book("Scripted list")), 200);
        assertEquals("DRAFT", draft.getString("state"));
        assertEquals(draft, json(put(at.owner(), book("Scripted list")), 200), "the same again changes nothing");
        JsonObject panels = draft.getJsonArray("prices").getJsonObject(0);
        assertEquals(2, panels.getJsonArray("steps").size());
        assertEquals(2, panels.getJsonArray("surcharges").size());
        assertEquals(100, draft.getJsonArray("prices").getJsonObject(1).getInt("baseQuantity"), "per 100 square feet");

        // What was read can be sent back with one thing changed.
        JsonObject dearer =
                Json.createObjectBuilder(draft).add("visitMinimum", 165).build();
        JsonObject changed = json(put(at.owner(), dearer.toString()), 200);
        assertEquals(165, changed.getInt("visitMinimum"));
        assertEquals(panels, changed.getJsonArray("prices").getJsonObject(0));
        JsonObject late =
                Json.createObjectBuilder(draft).add("visitMinimum", 170).build();
        json(put(at.owner(), late.toString()), 409);

        json(publish(at.owner(), draft.getInt("version") + 7), 409);
        JsonObject published = json(publish(at.owner(), changed.getInt("version")), 200);
        assertEquals("IN_FORCE", published.getString("state"));
        assertEquals(
                published.getInt("number"),
                json(publish(at.owner(), changed.getInt("version")), 200).getInt("number"),
                "a retry");
        assertEquals(2, at.audited("price-book.publish", "DONE", path.substring(path.lastIndexOf('/') + 1)));
        assertEquals(published, json(at.get(at.office(), path, "application/json"), 200));
        json(put(at.owner(), book("Scripted list, cheaper")), 409);
    }

    @Test
    void what_cannot_be_a_book_leaves_nothing() {
        String body = book("No list");
        json(put(at.owner(), body.replace("\"price\": 6.5", "\"price\": 9.99")), 422);
        json(put(at.owner(), body.replace("\"H87\"", "\"FTK\"")), 422);
        json(put(at.owner(), body.replace("\"name\"", "\"currency\": \"EUR\", \"name\"")), 422);
        json(put(at.owner(), body.replace("\"visitMinimum\": 150", "\"visitMinimum\": 150.001")), 422);
        json(put(at.owner(), body.replace("\"percent\": 20", "\"percent\": 20, \"amount\": 1")), 400);
        json(put(at.owner(), body.replace("\"atLeast\": 2", "\"atLeast\": 99")), 400);
        json(put(at.owner(), body.replace("\"price\": 38", "\"price\": 1e-99")), 400);
        json(put(at.owner(), "{}"), 400);
        json(put(at.owner(), body.replace(SiteToQuote.PANEL, UUID.randomUUID().toString())), 404);
        json(put(at.owner(), body.replace("\"name\"", "\"version\": 3, \"name\"")), 404);
        json(publish(at.owner(), 0), 404);
        json(at.get(at.owner(), path, "application/json"), 404);
    }

    @Test
    void a_book_without_prices_is_not_published() {
        JsonObject empty = Json.createObjectBuilder(
                        Json.createReader(new StringReader(book("Empty list"))).readObject())
                .add("prices", JsonValue.EMPTY_JSON_ARRAY)
                .build();
        JsonObject draft = json(put(at.owner(), empty.toString()), 200);
        json(publish(at.owner(), draft.getInt("version")), 422);
        assertEquals(
                "DRAFT", json(at.get(at.owner(), path, "application/json"), 200).getString("state"));
    }

    @Test
    void only_the_owner_writes() {
        for (HttpClient who : new HttpClient[] {at.office(), at.technician()}) {
            json(put(who, book("Not mine")), 403);
            json(publish(who, 0), 403);
        }
        assertFalse(at.get(at.office(), "api/price-books", "application/json")
                .body()
                .contains("Not mine"));
    }
}
