package eaveside.web.prices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import eaveside.web.quotes.SiteToQuote;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** Writing and publishing price books for scripts, on the real server. */
class PriceBooksApiHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();
    private final String path = "api/price-books/" + UUID.randomUUID();

    private static String book(String name) {
        return """
            {"list": {"name": "%s", "from": "%s", "visitMinimum": %s, "sharedReduction": "5",
             "lineMinimums": [{"serviceLine": "%s", "amount": %s}],
             "prices": [
               {"serviceItem": "%s",
                "steps": [{"price": %s}, {"from": {"value": "40", "unit": "H87"}, "price": %s}],
                "surcharges": [{"attribute": "STORY", "atLeast": 2, "percent": "20"},
                               {"attribute": "PITCH_DEGREES", "atLeast": 35, "amount": %s}]},
               {"serviceItem": "%s", "steps": [{"price": %s}]}]}}
            """.formatted(
                        name,
                        SiteToQuote.today(),
                        money("150"),
                        SiteToQuote.SOLAR_LINE,
                        money("100"),
                        SiteToQuote.PANEL,
                        price("7.5", "1", "H87"),
                        price("6.5", "1", "H87"),
                        price("1.25", "1", "H87"),
                        SiteToQuote.SOFT_WASH,
                        price("38", "100", "FTK"));
    }

    private static String money(String amount) {
        return "{\"amount\": \"" + amount + "\", \"currency\": \"USD\"}";
    }

    private static String price(String amount, String per, String unit) {
        return "{\"amount\": \"" + amount + "\", \"currency\": \"USD\", \"per\": {\"value\": \"" + per
                + "\", \"unit\": \"" + unit + "\"}}";
    }

    /** What was read, to send back with the minimum of a visit changed. */
    private static String withMinimum(JsonObject read, String minimum) {
        return Json.createObjectBuilder()
                .add("version", read.getInt("version"))
                .add(
                        "list",
                        Json.createObjectBuilder(read.getJsonObject("list"))
                                .add(
                                        "visitMinimum",
                                        Json.createObjectBuilder(read.getJsonObject("list")
                                                        .getJsonObject("visitMinimum"))
                                                .add("amount", minimum)))
                .build()
                .toString();
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
        assertEquals("DRAFT", draft.getString("status"));
        assertEquals(draft, json(put(at.owner(), book("Scripted list")), 200), "the same again changes nothing");
        JsonObject panels = draft.getJsonObject("list").getJsonArray("prices").getJsonObject(0);
        assertEquals(2, panels.getJsonArray("steps").size());
        assertEquals(2, panels.getJsonArray("surcharges").size());
        assertEquals(
                "100",
                draft.getJsonObject("list")
                        .getJsonArray("prices")
                        .getJsonObject(1)
                        .getJsonArray("steps")
                        .getJsonObject(0)
                        .getJsonObject("price")
                        .getJsonObject("per")
                        .getString("value"),
                "per 100 square feet");

        // What was read can be sent back with one thing changed.
        JsonObject changed = json(put(at.owner(), withMinimum(draft, "165")), 200);
        assertEquals(
                "165.00",
                changed.getJsonObject("list").getJsonObject("visitMinimum").getString("amount"));
        assertEquals(
                panels, changed.getJsonObject("list").getJsonArray("prices").getJsonObject(0));
        JsonObject late = json(put(at.owner(), withMinimum(draft, "170")), 409);
        assertEquals(
                "165.00",
                late.getJsonObject("stored")
                        .getJsonObject("list")
                        .getJsonObject("visitMinimum")
                        .getString("amount"));

        json(publish(at.owner(), draft.getInt("version") + 7), 409);
        JsonObject published = json(publish(at.owner(), changed.getInt("version")), 200);
        assertEquals("IN_FORCE", published.getString("status"));
        assertEquals(
                published.getInt("number"),
                json(publish(at.owner(), changed.getInt("version")), 200).getInt("number"),
                "a retry");
        assertEquals(
                1,
                at.audited("price-book.publish", "DONE", path.substring(path.lastIndexOf('/') + 1)),
                "a retry is no second deed");
        assertEquals(published, json(at.get(at.office(), path, "application/json"), 200));
        json(put(at.owner(), book("Scripted list, cheaper")), 409);
    }

    @Test
    void what_cannot_be_a_book_leaves_nothing() {
        String body = book("No list");
        json(put(at.owner(), body.replace("\"6.5\"", "\"9.99\"")), 422);
        json(put(at.owner(), body.replace("\"H87\"", "\"FTK\"")), 422);
        json(put(at.owner(), body.replace("USD", "EUR")), 422);
        json(put(at.owner(), body.replace("\"amount\": \"150\"", "\"amount\": \"150.001\"")), 422);
        JsonObject both = json(
                put(
                        at.owner(),
                        body.replace(
                                "\"percent\": \"20\"", "\"percent\": \"20\", \"amount\": " + price("1", "1", "H87"))),
                422);
        assertEquals(
                "list.prices[0].surcharges[0].percent",
                both.getJsonArray("fields").getString(0));
        JsonObject outside = json(put(at.owner(), body.replace("\"atLeast\": 2", "\"atLeast\": 99")), 422);
        assertEquals(
                "list.prices[0].surcharges[0].atLeast",
                outside.getJsonArray("fields").getString(0));
        json(put(at.owner(), body.replace("\"38\"", "\"1e-99\"")), 400);
        json(put(at.owner(), body.replace("\"name\"", "\"label\"")), 400);
        json(put(at.owner(), "{}"), 400);
        json(put(at.owner(), body.replace(SiteToQuote.PANEL, UUID.randomUUID().toString())), 422);
        json(put(at.owner(), body.replace("\"list\"", "\"version\": 3, \"list\"")), 404);
        json(publish(at.owner(), 0), 404);
        json(at.get(at.owner(), path, "application/json"), 404);
    }

    @Test
    void a_book_without_prices_is_not_published() {
        JsonObject full =
                Json.createReader(new StringReader(book("Empty list"))).readObject();
        JsonObject empty = Json.createObjectBuilder()
                .add(
                        "list",
                        Json.createObjectBuilder(full.getJsonObject("list")).add("prices", JsonValue.EMPTY_JSON_ARRAY))
                .build();
        JsonObject draft = json(put(at.owner(), empty.toString()), 200);
        json(publish(at.owner(), draft.getInt("version")), 422);
        assertEquals(
                "DRAFT", json(at.get(at.owner(), path, "application/json"), 200).getString("status"));
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

    /** The service may have changed since the draft was saved; the page of the question has no rows that could say so. */
    @Test
    void what_is_wrong_with_a_row_is_told_where_its_book_is_edited() {
        String service = UUID.randomUUID().toString();
        String wash = """
                {"serviceLine": "%s", "code": "RETYPED", "name": "Retyped wash", "unit": "H87", "minutesPerUnit": "1",
                 "taxCode": "Q-STANDARD", "version": %%d%%s}
                """.formatted(SiteToQuote.SOLAR_LINE);
        put("api/services/" + service, wash.formatted(0, ", \"surfaceType\": \"ARRAY\""));
        put(path, book("Rows of the retyped").replace(SiteToQuote.PANEL, service));
        put("api/services/" + service, wash.formatted(1, ""));

        var refused =
                at.post(at.owner(), path.replace("api/price-books", "prices") + "/publish", Map.of("version", "1"));

        assertEquals(422, refused.statusCode(), refused.body());
        Element error = Jsoup.parse(refused.body()).selectFirst(".errors a");
        assertEquals("#prices", error.attr("href"));
        assertEquals(
                "Prices: Retyped wash is done on surfaces that have no STORY, so it has no surcharge for it",
                error.text());
        assertNotNull(Jsoup.parse(refused.body()).getElementById("prices"));
    }

    private void put(String at, String body) {
        HttpResponse<String> answer = this.at.json(this.at.owner(), "PUT", at, body);
        assertEquals(200, answer.statusCode(), answer.body());
    }
}
