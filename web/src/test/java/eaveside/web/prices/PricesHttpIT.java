package eaveside.web.prices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.sql.SQLException;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;

/** Price books over HTTP, on the real server. */
class PricesHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();

    @Test
    void a_draft_is_written_read_changed_and_published() throws SQLException {
        String book = at.draft("First list", SiteToQuote.today());

        var draft = at.get(at.owner(), "prices/" + book);
        assertEquals(200, draft.statusCode());
        assertTrue(draft.headers().allValues("cache-control").contains("no-store"));
        String text = Jsoup.parse(draft.body()).select("main").text();
        assertTrue(text.contains("below 40 $7.50 each") && text.contains("from 40 $6.50 each"), text);
        assertTrue(text.contains("+20% from story 2 up"), text);
        assertTrue(text.contains("any $38.00 per 100 sq ft"), text);

        var form = SiteToQuote.fields(at.get(at.owner(), "prices/" + book + "/edit"));
        form.put("visitMinimum", "165");
        assertEquals(303, at.post(at.owner(), "prices/" + book, form).statusCode());

        String version = at.version(book);
        var published = at.post(at.owner(), "prices/" + book + "/publish", Map.of("version", version));
        assertEquals(303, published.statusCode());
        assertEquals("/prices/" + book + "?done=prices.published-done", SiteToQuote.location(published));
        assertEquals(1, at.audited("price-book.publish", "DONE", book));
        String page = at.get(at.office(), "prices/" + book).body();
        assertTrue(page.contains("In force") && page.contains("$165.00"), page);
        // Sent again it is a retry, and changes nothing.
        assertEquals(
                303,
                at.post(at.owner(), "prices/" + book + "/publish", Map.of("version", version))
                        .statusCode());
    }

    @Test
    void a_published_book_never_changes() {
        String book = at.published("Fixed list");

        var form = SiteToQuote.priceForm("Fixed list, cheaper", SiteToQuote.today());
        assertEquals(409, at.post(at.owner(), "prices/" + book, form).statusCode());
        // There is no form for it either.
        assertEquals("/prices/" + book, SiteToQuote.location(at.get(at.owner(), "prices/" + book + "/edit")));
    }

    @Test
    void what_is_wrong_is_marked_and_nothing_typed_is_lost() {
        var form = SiteToQuote.priceForm("", SiteToQuote.today());
        form.put("price-0-step-1-price", "9.99");
        form.put("price-2-step-0-price", "dear");
        form.put("price-0-surcharge-0-amount", "1.25");
        String book = UUID.randomUUID().toString();

        var answer = at.post(at.owner(), "prices/" + book, form);

        assertEquals(422, answer.statusCode());
        var page = Jsoup.parse(answer.body());
        assertEquals("dear", page.select("#price-2-step-0-price").val());
        assertEquals("true", page.select("#price-2-step-0-price").attr("aria-invalid"));
        assertTrue(page.select(".errors a[href=#name]").hasText());
        assertTrue(page.select(".errors a[href=#price-0-surcharge-0-percent]").hasText());
        assertEquals(404, at.get(at.owner(), "prices/" + book).statusCode());
    }

    @Test
    void a_price_that_rises_with_the_quantity_is_refused_at_its_service_item() {
        var form = SiteToQuote.priceForm("Rising", SiteToQuote.today());
        form.put("price-0-step-1-price", "9.99");

        var answer = at.post(at.owner(), "prices/" + UUID.randomUUID(), form);

        assertEquals(422, answer.statusCode());
        assertTrue(Jsoup.parse(answer.body())
                .select(".errors a[href=#price-0-steps]")
                .hasText());
    }

    @Test
    void two_people_on_one_draft_see_both_versions() {
        String book = at.draft("Shared list", "2027-01-01");
        var mine = SiteToQuote.fields(at.get(at.owner(), "prices/" + book + "/edit"));
        var theirs = SiteToQuote.fields(at.get(at.owner(), "prices/" + book + "/edit"));
        theirs.put("price-0-step-0-price", "8.25");
        assertEquals(303, at.post(at.owner(), "prices/" + book, theirs).statusCode());

        mine.put("price-0-step-0-price", "8.75");
        var answer = at.post(at.owner(), "prices/" + book, mine);

        assertEquals(409, answer.statusCode());
        String both = Jsoup.parse(answer.body()).select("#version").text();
        assertTrue(both.contains("$8.25 each $8.75 each"), both);
        // The form now starts from what is stored, so that mine can be saved over it knowingly.
        assertEquals(
                303,
                at.post(at.owner(), "prices/" + book, SiteToQuote.fields(answer))
                        .statusCode());
        assertTrue(at.get(at.owner(), "prices/" + book).body().contains("$8.75 each"));
    }

    @Test
    void two_books_are_compared_price_by_price() {
        String old = at.published("Old list");
        var dearer = SiteToQuote.priceForm("New list", "2027-02-01");
        dearer.put("price-0-step-0-price", "8.25");
        dearer.remove("price-2-step-0-price");
        String draft = UUID.randomUUID().toString();
        assertEquals(303, at.post(at.owner(), "prices/" + draft, dearer).statusCode());

        var page = at.get(at.office(), "prices/compare?old=" + old + "&new=" + draft);

        assertEquals(200, page.statusCode());
        String text = Jsoup.parse(page.body()).select("main table").text();
        assertTrue(text.contains("$7.50 each $8.25 each +10%"), text);
        assertTrue(text.contains("$38.00 per 100 sq ft none"), text);
    }

    @Test
    void the_office_looks_but_does_not_write() throws SQLException {
        String book = at.draft("Owner's list", "2027-01-01");

        assertEquals(200, at.get(at.office(), "prices").statusCode());
        assertEquals(200, at.get(at.office(), "prices/" + book).statusCode());
        assertEquals(403, at.get(at.office(), "prices/" + book + "/edit").statusCode());
        assertEquals(
                403,
                at.post(at.office(), "prices/" + book + "/publish", Map.of("version", "1"))
                        .statusCode());
        assertEquals(1, at.audited("access.post", "REFUSED", "/prices/" + book + "/publish"));
    }

    @Test
    void a_technician_sees_no_prices() throws SQLException {
        int before = at.audited("access.get", "REFUSED", "/prices");

        assertEquals(403, at.get(at.technician(), "prices").statusCode());

        assertEquals(before + 1, at.audited("access.get", "REFUSED", "/prices"));
        assertEquals(
                403,
                at.json(at.technician(), "POST", "api/prices/calculation", "{}").statusCode());
    }

    @Test
    void unknown_books_are_not_found() {
        assertEquals(404, at.get(at.owner(), "prices/" + UUID.randomUUID()).statusCode());
        assertEquals(404, at.get(at.owner(), "prices/no-such-thing").statusCode());
    }

    @Test
    void the_list_is_downloaded_as_csv() {
        String book = at.draft("List to download", "2027-01-01");

        var csv = at.get(at.office(), "prices/" + book + "/list.csv", "*/*");

        assertEquals(200, csv.statusCode());
        assertTrue(csv.body().contains("Q-PANEL,Wash panels,40,6.50"), csv.body());
    }

    @Test
    void scripts_read_books_and_work_prices_out() {
        String book = at.published("List for scripts");

        var inForce =
                object(at.get(at.office(), "api/price-books/in-force?date=" + SiteToQuote.today(), "application/json")
                        .body());
        assertEquals(book, inForce.getString("id"));
        assertEquals("IN_FORCE", inForce.getString("status"));
        assertEquals(3, inForce.getJsonObject("list").getJsonArray("prices").size());
        assertTrue(at.get(at.office(), "api/price-books", "application/json")
                .body()
                .contains(book));

        // 48 panels reach the step from 40: 6.50, and a fifth more on story 2 is 7.80 each.
        var asked = """
            {"book": "%s", "lines": [{"serviceItem": "%s", "quantity": {"value": "48", "unit": "H87"},
             "attributes": {"STORY": 2}}]}
            """.formatted(book, SiteToQuote.PANEL);
        var answer = at.json(at.office(), "POST", "api/prices/calculation", asked);
        assertEquals(200, answer.statusCode(), answer.body());
        var worked = object(answer.body());
        assertEquals("374.40", worked.getJsonObject("total").getString("amount"));
        String because = worked.getJsonArray("lines").getJsonObject(0).getString("explanation");
        assertTrue(because.contains("plus 20% ($1.30) for story 2"), because);
    }

    @Test
    void scripts_are_told_what_is_wrong() {
        String book = at.published("List for bad input");
        String path = "api/prices/calculation";
        String line = "{\"book\": \"" + book
                + "\", \"lines\": [{\"serviceItem\": \"%s\", \"quantity\": {\"value\": \"%s\", \"unit\": \"H87\"}}]}";

        assertEquals(400, at.json(at.office(), "POST", path, "{\"lines\": ").statusCode());
        assertEquals(
                400, at.json(at.office(), "POST", path, "{\"lines\": [{}]}").statusCode());
        assertEquals(422, at.json(at.office(), "POST", path, "{\"lines\": []}").statusCode());
        var zero = at.json(at.office(), "POST", path, line.formatted(SiteToQuote.PANEL, "0"));
        assertEquals(422, zero.statusCode());
        assertEquals(
                "lines[0].quantity", object(zero.body()).getJsonArray("fields").getString(0));
        assertEquals(
                422,
                at.json(at.office(), "POST", path, line.formatted(UUID.randomUUID(), "1"))
                        .statusCode());
        var soon = at.get(at.office(), "api/price-books/in-force?date=soon", "application/json");
        assertEquals(400, soon.statusCode());
        assertEquals("date", object(soon.body()).getJsonArray("fields").getString(0));
        assertFalse(zero.body().contains("Exception"));
    }

    @Test
    void a_copied_book_prices_the_same_and_prices_are_refilled_as_they_are_typed() {
        String book = at.published("List to copy");
        var form = SiteToQuote.fields(at.get(at.owner(), "prices/new?from=" + book));
        assertEquals("Copy of List to copy", form.get("name"));
        assertEquals("7.50", form.get("price-0-step-0-price"));
        assertEquals("100", form.get("price-2-per"));
        String copy = UUID.randomUUID().toString();
        assertEquals(303, at.post(at.owner(), "prices/" + copy, form).statusCode());

        String compared = at.get(at.office(), "prices/compare?old=" + book + "&new=" + copy)
                .body();
        assertTrue(compared.contains("have the same entries"), compared);
        assertEquals(
                0,
                jsonList(copy).getJsonArray("prices").stream()
                        .filter(price ->
                                price.asJsonObject().getJsonArray("steps").isEmpty())
                        .count());
    }

    private JsonObject jsonList(String book) {
        return object(at.get(at.owner(), "api/price-books/" + book, "application/json")
                        .body())
                .getJsonObject("list");
    }

    @Test
    void what_a_price_is_for_must_be_a_quantity_and_is_refused_at_its_field() {
        var form = SiteToQuote.priceForm("Per nothing", SiteToQuote.today());
        form.put("price-2-per", "0");

        var answer = at.post(at.owner(), "prices/" + UUID.randomUUID(), form);

        assertEquals(422, answer.statusCode());
        var errors = Jsoup.parse(answer.body()).select(".errors a");
        assertEquals(java.util.List.of("#price-2-per"), errors.eachAttr("href"));
        assertTrue(errors.text().contains("Priced per: Enter a quantity greater than zero"), errors.text());
    }

    private static JsonObject object(String body) {
        try (var reader = Json.createReader(new StringReader(body))) {
            return reader.readObject();
        }
    }
}
