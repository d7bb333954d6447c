package eaveside.web.quotes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Quotes over HTTP, on the real server. */
class QuotesHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();

    @BeforeAll
    static void publishPrices() {
        SiteToQuote.shared().published("Prices to quote from");
    }

    /** The form for the site with the line of the array ticked. */
    private Map<String, String> filledForm() {
        var page = at.get(at.office(), "quotes/new?customer=" + SiteToQuote.CUSTOMER + "&site=" + SiteToQuote.SITE);
        assertEquals(200, page.statusCode());
        Map<String, String> form = SiteToQuote.fields(page);
        form.put(prefix(form, SiteToQuote.PANEL) + "on", "yes");
        return form;
    }

    private static String prefix(Map<String, String> form, String serviceItem) {
        return form.entrySet().stream()
                .filter(field ->
                        field.getKey().startsWith("line-") && field.getValue().equals(serviceItem))
                .map(field -> field.getKey().replace("serviceItem", ""))
                .findFirst()
                .orElseThrow();
    }

    private String saved(Map<String, String> form) {
        var answer = at.post(at.office(), "quotes", form);
        assertEquals(303, answer.statusCode(), answer.body());
        assertEquals("/quotes/" + form.get("id") + "?done=quotes.saved", SiteToQuote.location(answer));
        return form.get("id");
    }

    private String text(HttpResponse<String> page) {
        return Jsoup.parse(page.body()).select("main").text();
    }

    private Map<String, String> versioned(String quote, String... more) {
        String version = Jsoup.parse(at.get(at.office(), "quotes/" + quote).body())
                .select("main input[name=version]")
                .val();
        var form = new HashMap<>(Map.of("version", version));
        for (int i = 0; i < more.length; i += 2) {
            form.put(more[i], more[i + 1]);
        }
        return form;
    }

    @Test
    void a_quote_is_written_sent_and_accepted() throws SQLException {
        Map<String, String> form = filledForm();
        assertEquals("48", form.get(prefix(form, SiteToQuote.PANEL) + "quantity"));
        form.put("note", "We would come in April.");
        String quote = saved(form);

        // 48 panels reach the step from 40: 6.50, and a fifth more on story 2 is 7.80 each.
        String page = text(at.get(at.office(), "quotes/" + quote));
        assertTrue(page.contains("$374.40") && page.contains("plus 20% ($1.30) for story 2"), page);
        assertFalse(page.contains("Expected cost"), page);
        assertFalse(page.contains("Expected margin"), "the margin is the owner's");
        String whole = text(at.get(at.owner(), "quotes/" + quote));
        assertTrue(whole.contains("Expected cost") && whole.contains("Expected margin"), whole);

        assertEquals(
                303,
                at.post(at.office(), "quotes/" + quote + "/send", versioned(quote))
                        .statusCode());
        assertTrue(text(at.get(at.office(), "quotes/" + quote)).contains("Sent"));
        var accepted = at.post(
                at.office(), "quotes/" + quote + "/accept", versioned(quote, "acceptedBy", "Ms. Reed, by phone"));
        assertEquals("/quotes/" + quote + "?done=quotes.done-accepted", SiteToQuote.location(accepted));
        assertEquals(1, at.audited("quote.accept", "DONE", quote));
        var done = at.get(at.office(), "quotes/" + quote);
        assertTrue(text(done).contains("Ms. Reed, by phone"));
        assertEquals(
                1,
                Jsoup.parse(done.body())
                        .select("a[href=/visits/new?quote=" + quote + "]")
                        .size());
        // It never changes again.
        assertEquals(
                409,
                at.post(at.office(), "quotes/" + quote + "/decline", Map.of("version", "3", "reason", "Too dear"))
                        .statusCode());
    }

    @Test
    void the_form_sent_twice_makes_one_quote() {
        Map<String, String> form = filledForm();
        String quote = saved(form);
        String number = Jsoup.parse(at.get(at.office(), "quotes/" + quote).body())
                .select("h1")
                .text();

        saved(form);

        assertEquals(
                number,
                Jsoup.parse(at.get(at.office(), "quotes/" + quote).body())
                        .select("h1")
                        .text());
        // Changed after it went through once: what was typed becomes a change of the stored quote.
        form.put("note", "Another note");
        var answer = at.post(at.office(), "quotes", form);
        assertEquals(409, answer.statusCode());
        assertEquals(
                "/quotes/" + quote,
                Jsoup.parse(answer.body()).select("main form[method=post]").attr("action"));
    }

    @Test
    void prices_are_recalculated_without_storing() {
        Map<String, String> form = filledForm();
        form.put("do", "recalculate");

        var page = at.post(at.office(), "quotes", form);

        assertEquals(200, page.statusCode());
        var document = Jsoup.parse(page.body());
        String prefix = prefix(form, SiteToQuote.PANEL);
        assertTrue(document.select("#" + prefix + "price").text().contains("$374.40"));
        assertTrue(document.select("#" + prefix + "on").hasAttr("checked"));
        assertEquals(404, at.get(at.office(), "quotes/" + form.get("id")).statusCode());

        // Skylights alone are below the visit's minimum of 150: 6 × 18 = 108, and 42 are added.
        form.remove(prefix + "on");
        form.put(prefix(form, SiteToQuote.SKYLIGHT) + "on", "yes");
        form.put(prefix(form, SiteToQuote.SKYLIGHT) + "quantity", "6"); // a sheet may have counted others since
        var parts = Jsoup.parse(at.post(at.office(), "quotes/recalculate", form).body());
        String worked = parts.select("#prices").text();
        assertTrue(worked.contains("$108.00") && worked.contains("$42.00") && worked.contains("$150.00"), worked);
        assertTrue(parts.select("#" + prefix(form, SiteToQuote.SKYLIGHT) + "because")
                .text()
                .contains("minimum"));
    }

    @Test
    void what_is_wrong_is_marked_and_nothing_typed_is_lost() {
        Map<String, String> form = filledForm();
        String quantity = prefix(form, SiteToQuote.PANEL) + "quantity";
        form.put(quantity, "plenty");
        form.put("validUntil", "2020-01-01");
        form.put("note", "Kept");

        var answer = at.post(at.office(), "quotes", form);

        assertEquals(422, answer.statusCode());
        var page = Jsoup.parse(answer.body());
        assertEquals("plenty", page.select("#" + quantity).val());
        assertEquals("true", page.select("#" + quantity).attr("aria-invalid"));
        assertEquals("Kept", page.select("#note").text());
        assertEquals(404, at.get(at.office(), "quotes/" + form.get("id")).statusCode());

        form.put(quantity, "48");
        var expired = at.post(at.office(), "quotes", form);
        assertEquals(422, expired.statusCode());
        assertTrue(Jsoup.parse(expired.body())
                .select(".errors a[href=#validUntil]")
                .hasText());
        form.put("validUntil", LocalDate.parse(SiteToQuote.today()).plusDays(10).toString());
        form.remove(prefix(form, SiteToQuote.PANEL) + "on");
        assertEquals(422, at.post(at.office(), "quotes", form).statusCode(), "nothing is ticked");
    }

    @Test
    void two_people_on_one_quote_see_both_versions() {
        String quote = saved(filledForm());
        var mine = SiteToQuote.fields(at.get(at.office(), "quotes/" + quote + "/edit"));
        var theirs = SiteToQuote.fields(at.get(at.owner(), "quotes/" + quote + "/edit"));
        theirs.put("note", "Theirs");
        var saved = at.post(at.owner(), "quotes/" + quote, theirs);
        assertEquals(
                303,
                saved.statusCode(),
                () -> Jsoup.parse(saved.body()).select(".errors").text());

        mine.put("note", "Mine");
        String free = mine.keySet().stream()
                .filter(name ->
                        name.matches("line-\\d+-serviceItem") && mine.get(name).isEmpty())
                .findFirst()
                .orElseThrow();
        mine.put(free, SiteToQuote.SKYLIGHT);
        mine.put(free.replace("serviceItem", "quantity"), "2");
        var answer = at.post(at.office(), "quotes/" + quote, mine);

        assertEquals(409, answer.statusCode());
        var page = Jsoup.parse(answer.body());
        assertTrue(page.select("#version").text().contains("Theirs"));
        assertEquals("Mine", page.select("#note").text());
        var again = SiteToQuote.fields(answer);
        assertEquals(303, at.post(at.office(), "quotes/" + quote, again).statusCode());
        assertTrue(text(at.get(at.office(), "quotes/" + quote)).contains("Mine"));
        assertTrue(text(at.get(at.office(), "quotes/" + quote)).contains("Clean skylights"));
        // A button pressed on the page of an older version is refused, with the quote as it is now.
        assertEquals(
                409,
                at.post(at.office(), "quotes/" + quote + "/send", Map.of("version", "0"))
                        .statusCode());
    }

    @Test
    void a_finding_becomes_aquote() {
        var page = at.get(at.office(), "quotes/new?finding=" + SiteToQuote.FINDING);
        assertEquals(200, page.statusCode());
        Map<String, String> form = SiteToQuote.fields(page);
        assertEquals(SiteToQuote.SITE, form.get("site"));
        form.put(prefix(form, SiteToQuote.SOFT_WASH) + "on", "yes");

        String quote = saved(form);

        var shown = Jsoup.parse(at.get(at.office(), "quotes/" + quote).body());
        assertEquals(
                1, shown.select("a[href=/findings/" + SiteToQuote.FINDING + "]").size());
    }

    @Test
    void the_customers_paper_is_apdf() {
        String quote = saved(filledForm());

        var pdf = at.get(at.office(), "quotes/" + quote + ".pdf", "text/html,*/*;q=0.8");

        assertEquals(200, pdf.statusCode());
        assertEquals("application/pdf", pdf.headers().firstValue("content-type").orElse(""));
        assertTrue(pdf.headers().allValues("cache-control").contains("no-store"));
        assertTrue(pdf.body().startsWith("%PDF-"));
    }

    @Test
    void the_list_is_filtered_searched_and_downloaded() {
        String quote = saved(filledForm());
        assertEquals(
                303,
                at.post(at.office(), "quotes/" + quote + "/decline", versioned(quote, "reason", "Moved away"))
                        .statusCode());

        String declined = at.get(at.office(), "quotes?status=DECLINED").body();
        assertTrue(declined.contains(quote));
        assertFalse(at.get(at.office(), "quotes?status=DRAFT").body().contains(quote));
        assertTrue(at.get(at.office(), "quotes?customer=" + SiteToQuote.CUSTOMER)
                .body()
                .contains(quote));
        assertFalse(at.get(at.office(), "quotes?customer=" + SiteToQuote.OTHER_CUSTOMER)
                .body()
                .contains(quote));
        assertTrue(at.get(at.office(), "quotes?q=alder&status=DECLINED").body().contains(quote));
        String number = Jsoup.parse(declined)
                .select("td a[href=/quotes/" + quote + "]")
                .first()
                .text();
        assertTrue(at.get(at.office(), "quotes?q=" + number).body().contains(quote));
        var csv = at.get(at.office(), "quotes/list.csv?status=DECLINED", "*/*");
        assertTrue(
                csv.body()
                        .lines()
                        .anyMatch(line -> line.startsWith(number + ",") && line.contains("Alder Lane Clinic")),
                csv.body());
    }

    @Test
    void a_technician_sees_no_quotes() throws SQLException {
        String quote = saved(filledForm());

        assertEquals(403, at.get(at.technician(), "quotes/" + quote).statusCode());

        assertEquals(1, at.audited("access.get", "REFUSED", "/quotes/" + quote));
        assertEquals(
                403, at.get(at.technician(), "api/quotes", "application/json").statusCode());
    }

    @Test
    void unknown_quotes_are_not_found() {
        assertEquals(404, at.get(at.office(), "quotes/" + UUID.randomUUID()).statusCode());
        assertEquals(404, at.get(at.office(), "quotes/nothing").statusCode());
        assertEquals(
                404,
                at.get(at.office(), "quotes/new?customer=" + UUID.randomUUID()).statusCode());
    }

    @Test
    void scripts_make_revise_and_decide() {
        String id = UUID.randomUUID().toString();
        String make = make(id, UUID.randomUUID().toString(), SiteToQuote.SITE, "48");
        var made = at.json(at.office(), "POST", "api/quotes", make);
        assertEquals(201, made.statusCode(), made.body());
        assertEquals("/api/quotes/" + id, SiteToQuote.location(made));
        JsonObject quote = object(made);
        assertEquals("DRAFT", quote.getString("status"));
        assertEquals("374.40", quote.getJsonObject("total").getString("amount"));
        assertEquals(SiteToQuote.today(), quote.getString("date"));
        assertFalse(quote.containsKey("expectedMargin"), "the margin is the owner's");
        assertFalse(quote.containsKey("expectedCost"), "the cost is the owner's");
        assertTrue(object(at.get(at.owner(), "api/quotes/" + id, "application/json"))
                .containsKey("expectedMargin"));

        // The same once more is a retry; other content under the id is a conflict.
        assertEquals(
                quote.getInt("number"),
                object(at.json(at.office(), "POST", "api/quotes", make)).getInt("number"));
        String other = make(id, UUID.randomUUID().toString(), SiteToQuote.SITE, "12");
        assertEquals(409, at.json(at.office(), "POST", "api/quotes", other).statusCode());

        String scope = make.substring(make.indexOf("{\"validUntil\""), make.lastIndexOf('}'))
                .replace("\"48\"", "\"10\"");
        String revise = "{\"version\": " + quote.getInt("version") + ", \"scope\": " + scope + "}";
        var revised = at.json(at.office(), "PUT", "api/quotes/" + id, revise);
        assertEquals(200, revised.statusCode(), revised.body());
        assertNotEquals(quote.getInt("version"), object(revised).getInt("version"));
        String stale = revise.replace("\"10\"", "\"11\"");
        assertEquals(409, at.json(at.office(), "PUT", "api/quotes/" + id, stale).statusCode());

        var sent = at.json(
                at.office(),
                "POST",
                "api/quotes/" + id + "/send",
                "{\"version\": " + object(revised).getInt("version") + "}");
        assertEquals("SENT", object(sent).getString("status"));
        var accepted = at.json(
                at.office(),
                "POST",
                "api/quotes/" + id + "/accept",
                "{\"version\": " + object(sent).getInt("version") + ", \"acceptedBy\": \"by phone\"}");
        assertEquals("ACCEPTED", object(accepted).getString("status"));
        assertEquals("by phone", object(accepted).getJsonObject("decision").getString("words"));
        assertTrue(at.get(at.office(), "api/quotes?status=ACCEPTED", "application/json")
                .body()
                .contains(id));
    }

    @Test
    void scripts_are_told_what_is_wrong() {
        String elsewhere = make(
                UUID.randomUUID().toString(), UUID.randomUUID().toString(), SiteToQuote.OTHER_CUSTOMERS_SITE, "48");
        var refused = at.json(at.office(), "POST", "api/quotes", elsewhere);
        assertEquals(422, refused.statusCode());
        assertEquals("site", object(refused).getJsonArray("fields").getString(0));
        assertEquals(
                400, at.json(at.office(), "POST", "api/quotes", "{\"id\": 7").statusCode());
        assertEquals(400, at.json(at.office(), "POST", "api/quotes", "{}").statusCode());
        assertEquals(400, at.json(at.office(), "POST", "api/quotes", "").statusCode());
        assertEquals(
                404,
                at.get(at.office(), "api/quotes/" + UUID.randomUUID(), "application/json")
                        .statusCode());
        var unknown = at.get(at.office(), "api/quotes?status=MAYBE", "application/json");
        assertEquals(400, unknown.statusCode());
        assertEquals("status", object(unknown).getJsonArray("fields").getString(0));
        var none = at.json(
                at.office(), "POST", "api/quotes", elsewhere.replaceAll("\"quantity\": [^}]*}", "\"quantity\": 0"));
        assertEquals(
                "scope.lines[0].quantity", object(none).getJsonArray("fields").getString(0));
    }

    @Test
    void a_finding_that_does_not_exist_is_refused_by_its_field() {
        String id = UUID.randomUUID().toString();
        String make = make(id, UUID.randomUUID().toString(), SiteToQuote.SITE, "48")
                .replaceFirst("\\{", "{\"cameFrom\": \"" + UUID.randomUUID() + "\", ");
        var refused = at.json(at.office(), "POST", "api/quotes", make);
        assertEquals(422, refused.statusCode(), refused.body());
        assertEquals("cameFrom", object(refused).getJsonArray("fields").getString(0));
        assertEquals(
                404, at.get(at.office(), "api/quotes/" + id, "application/json").statusCode());
        assertEquals(
                201,
                at.json(
                                at.office(),
                                "POST",
                                "api/quotes",
                                make.replaceFirst(
                                        "\"cameFrom\": \"[^\"]*\"", "\"cameFrom\": \"" + SiteToQuote.FINDING + "\""))
                        .statusCode());
    }

    @Test
    void a_new_quote_sent_twice_at_once_is_made_once() throws Exception {
        String id = UUID.randomUUID().toString();
        String make = make(id, UUID.randomUUID().toString(), SiteToQuote.SITE, "48");
        try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
            List<Callable<HttpResponse<String>>> twice =
                    Collections.nCopies(2, () -> at.json(at.office(), "POST", "api/quotes", make));
            Set<Integer> numbers = new HashSet<>();
            for (var answer : pool.invokeAll(twice)) {
                assertEquals(201, answer.get().statusCode(), answer.get().body());
                numbers.add(object(answer.get()).getInt("number"));
            }
            assertEquals(1, numbers.size());
        }
        assertEquals(1, at.audited("quote.draft", "DONE", id));
    }

    @Test
    void a_line_added_in_the_browser_is_kept_when_the_form_is_refused_and_saved_once() {
        Map<String, String> form = filledForm();
        String free = form.keySet().stream()
                .filter(name ->
                        name.matches("line-\\d+-serviceItem") && form.get(name).isEmpty())
                .findFirst()
                .orElseThrow();
        form.put(free, SiteToQuote.SKYLIGHT);
        form.put(free.replace("serviceItem", "quantity"), "many");

        var refused = at.post(at.office(), "quotes", form);

        assertEquals(422, refused.statusCode());
        Map<String, String> back = SiteToQuote.fields(refused);
        assertEquals(SiteToQuote.SKYLIGHT, back.get(free));
        assertEquals("many", back.get(free.replace("serviceItem", "quantity")));
        assertTrue(Jsoup.parse(refused.body())
                .select(".errors a[href=#" + free.replace("serviceItem", "quantity") + "]")
                .text()
                .contains("Quantity of"));
        back.put(free.replace("serviceItem", "quantity"), "2");
        String quote = saved(back);
        saved(back);
        assertTrue(text(at.get(at.office(), "quotes/" + quote)).contains("Clean skylights"));
    }

    private static String make(String id, String line, String site, String panels) {
        return """
            {"id": "%s", "customer": "%s", "site": "%s", "scope":
            {"validUntil": "%s", "note": "", "travel": {"drivingMinutes": 40, "distance": {"value": "18.5", "unit": "SMI"}}, "lines": [
             {"id": "%s", "serviceItem": "%s", "surface": "%s",
              "quantity": {"value": "%s", "unit": "H87"}}]}}
            """.formatted(
                id,
                SiteToQuote.CUSTOMER,
                site,
                LocalDate.parse(SiteToQuote.today()).plusDays(30),
                line,
                SiteToQuote.PANEL,
                SiteToQuote.ARRAY,
                panels).strip();
    }

    private static JsonObject object(HttpResponse<String> answer) {
        try (var reader = Json.createReader(new StringReader(answer.body()))) {
            return reader.readObject();
        }
    }
}
