package eaveside.web.customers;

import static eaveside.web.testing.Visitor.location;
import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import java.io.StringReader;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Customers with their contacts, sites and surfaces, as the office keeps them on the real server. */
class CustomersHttpIT {
    private final Visitor office = Visitor.office();

    private String customer(String name) {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("name", name);
        form.put("city", "Larkford");
        var answer = office.post("customers/save", form);
        assertEquals("/customers/" + form.get("id") + "?done=customers.saved", location(answer), text(answer));
        return form.get("id");
    }

    private String site(String customer, String name, String hazards) {
        Map<String, String> form =
                office.form("customers/" + customer + "/sites/new", "/customers/" + customer + "/sites");
        form.put("name", name);
        form.put("hazards", hazards);
        form.put("waterOnSite", "yes");
        assertEquals(303, office.post("customers/" + customer + "/sites", form).statusCode());
        return form.get("id");
    }

    private Map<String, String> surface(String site, String type, String name, String extent) {
        Map<String, String> form =
                office.form("sites/" + site + "/surfaces/new?type=" + type, "/sites/" + site + "/surfaces");
        form.put("name", name);
        form.put("extent", extent);
        return form;
    }

    @Test
    void a_customer_is_entered_with_site_contact_and_surfaces() {
        String customer = customer("Wren Copperfield");
        String site = site(customer, "Weaver's Barn", "Pond behind the barn");
        Map<String, String> contact =
                office.form("customers/" + customer + "/contacts/new", "/customers/" + customer + "/contacts");
        contact.put("name", "Jory Wick");
        contact.put("role", "caretaker");
        contact.put("phone", "555-0123");
        assertEquals(
                303, office.post("customers/" + customer + "/contacts", contact).statusCode());
        Map<String, String> array = surface(site, "ARRAY", "South roof", "48");
        array.put("rows", "2");
        array.put("STORY", "2");
        array.put("SOILING_GRADE", "1");
        assertEquals(303, office.post("sites/" + site + "/surfaces", array).statusCode());
        assertEquals(
                303,
                office.post("sites/" + site + "/surfaces", surface(site, "ROOF", "Main roof", "1900"))
                        .statusCode());

        var shown = office.get("customers/" + customer);

        assertEquals(List.of("no-store"), shown.headers().allValues("cache-control"));
        String text = text(shown);
        assertTrue(text.contains("caretaker Jory Wick 555-0123"), text);
        assertTrue(text.contains("South roof Solar array, in 2 rows Story: 2, Soiling grade: film 48"), text);
        assertTrue(text.contains("Main roof Roof 1,900 sq ft"), text);
        var cautions = page(shown).select(".cautions li").eachText();
        assertEquals("Pond behind the barn", cautions.getFirst());
        assertTrue(cautions.stream().anyMatch(c -> c.startsWith("Electricity")), cautions.toString());
        for (String path : List.of("/quotes", "/visits", "/invoices", "/books/entries")) {
            assertEquals(
                    1,
                    page(shown)
                            .select("a[href=" + path + "?customer=" + customer + "]")
                            .size(),
                    path);
        }
    }

    @Test
    void how_a_customer_would_like_to_be_reached_is_chosen_and_seen_by_whoever_calls() {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("name", "Fern Texter");
        form.put("phone", "555-0188");
        form.put("preferredContact", "TEXT");
        form.put("email", "no mail");
        HttpResponse<String> refused = office.post("customers/save", form);
        assertEquals(422, refused.statusCode());
        assertEquals(
                "Text",
                page(refused).select("#preferredContact option[selected]").text(),
                "a refused form keeps what was chosen");
        form.put("email", "");
        assertEquals(303, office.post("customers/save", form).statusCode());

        String shown = text(office.get("customers/" + form.get("id")));
        assertTrue(shown.contains("Phone and email 555-0188 Preferred contact: Text"), shown);
        String whole = office.getJson("api/customers/" + form.get("id")).body();
        assertTrue(whole.contains("\"preferredContact\":\"TEXT\""), whole);
        String file = office.get("customers/list.csv?q=fern%20texter").body();
        assertTrue(file.contains(",preferred_contact,") && file.contains(",555-0188,text,"), file);
        String imported = text(office.get("customers/import"));
        assertTrue(imported.contains("preferred_contact Preferred contact: call, text, email"), imported);
        String body = "{\"name\":\"Fern Caller\",\"type\":\"BUSINESS\",\"paymentTermDays\":30,"
                + "\"preferredContact\":\"PIGEON\",\"address\":{\"country\":\"US\"}}";
        String path = "api/customers/" + UUID.randomUUID();
        HttpResponse<String> unknown = office.json("PUT", path, body);
        assertEquals(400, unknown.statusCode());
        assertTrue(unknown.body().contains("preferredContact"), unknown.body());
        assertEquals(
                200, office.json("PUT", path, body.replace("PIGEON", "CALL")).statusCode());
    }

    @Test
    void search_finds_by_beginnings_of_words_and_exports_what_it_found() {
        customer("Tamsin Quillfeather");
        customer("=2+5 Quillfeather & Sons");
        customer("＝2+5 Quillfeather");

        var found = office.get("customers?q=quillf");
        assertEquals(3, page(found).select("#found tbody tr").size());
        assertEquals(
                0,
                page(office.get("customers?q=quillf%20nobody"))
                        .select("#found tbody tr")
                        .size());
        String csv = page(found).select("#csv").attr("href");
        var file = office.get(csv.substring(1));
        assertTrue(file.headers().firstValue("content-type").orElse("").startsWith("text/csv"));
        assertEquals(4, file.body().lines().count(), file.body());
        assertTrue(file.body().contains("'=2+5 Quillfeather & Sons"), "a formula is only text");
        assertTrue(file.body().contains("'＝2+5 Quillfeather"), "nor is one in wide letters");
    }

    @Test
    void what_was_typed_is_only_ever_text() {
        String nasty = "</title><script>alert(1)</script>\"'><img src=x onerror=alert(2)>";
        String customer = customer("Marked " + nasty);
        site(customer, nasty, nasty);
        for (String address : List.of(
                "customers/" + customer,
                "customers/" + customer + "/edit",
                "customers?q=marked",
                "customers?q=" + URLEncoder.encode(nasty, StandardCharsets.UTF_8),
                "quotes/new?customer=" + customer,
                "invoices/new?customer=" + customer,
                "invoices/account/" + customer)) {
            var page = office.get(address);
            assertEquals(200, page.statusCode(), address);
            assertEquals(0, page(page).select("img[src=x], [onerror]").size(), address);
            assertTrue(page(page).select("script").stream().allMatch(script -> script.hasAttr("src")), address);
        }
        assertTrue(text(office.get("customers/" + customer)).contains(nasty));
        String json = office.getJson("api/customers/" + customer).body();
        try (var reader = Json.createReader(new StringReader(json))) {
            assertEquals(
                    "Marked " + nasty,
                    reader.readObject().getJsonObject("customer").getString("name"),
                    "and whole again out of JSON");
        }
    }

    /** RFC 9110 leaves open what a name twice means: what counts is what stood in the form, and no address adds to it. */
    @Test
    void a_form_is_read_from_its_body_alone() {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("name", "Told by the form");
        var saved = office.post("customers/save?name=Told+by+the+address&version=9&id=" + UUID.randomUUID(), form);
        assertEquals(303, saved.statusCode());
        assertEquals("1", Visitor.value("select count(*) from customer where name = 'Told by the form'"));
        assertEquals("0", Visitor.value("select count(*) from customer where name = 'Told by the address'"));
    }

    @Test
    void a_form_that_cannot_be_saved_keeps_what_was_typed() {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("email", "no mail");
        form.put("country", "XX");
        form.put("paymentTermDays", "soon");

        var answer = office.post("customers/save", form);

        assertEquals(422, answer.statusCode());
        var document = page(answer);
        assertTrue(document.title().startsWith("Error:"));
        assertEquals("no mail", document.select("#email").val());
        assertEquals("soon", document.select("#paymentTermDays").val());
        for (String wrong : List.of("name", "country", "paymentTermDays")) {
            assertEquals("true", document.select("#" + wrong).attr("aria-invalid"), wrong);
            assertEquals(1, document.select(".errors a[href=#" + wrong + "]").size(), wrong);
        }
        assertEquals("0", Visitor.value("select count(*) from customer where id = ?::uuid", form.get("id")));

        form.put("name", "Mailless");
        form.put("country", "US");
        form.put("paymentTermDays", "14");
        var again = office.post("customers/save", form);
        assertEquals(422, again.statusCode());
        assertTrue(page(again).select("#email-error").text().contains("is not an email address"));
    }

    @Test
    void the_slower_of_two_sees_both_versions() {
        String customer = customer("Both Versions");
        Map<String, String> one = office.form("customers/" + customer + "/edit", "/customers/save");
        Map<String, String> other = office.form("customers/" + customer + "/edit", "/customers/save");
        one.put("phone", "555-0111");
        other.put("phone", "555-0122");
        assertEquals(303, office.post("customers/save", one).statusCode());
        assertEquals(303, office.post("customers/save", one).statusCode(), "the same again is a retry");

        var answer = office.post("customers/save", other);

        assertEquals(409, answer.statusCode());
        assertTrue(text(answer).contains("Phone 555-0111 555-0122"), text(answer));
        assertEquals("555-0122", page(answer).select("#phone").val());
        assertTrue(office.get("customers/" + customer).body().contains("555-0111"));

        // Both were seen: sent again, the second is saved over the first.
        assertEquals(
                303,
                office.post("customers/save", Visitor.form(answer, "/customers/save"))
                        .statusCode());
        assertTrue(office.get("customers/" + customer).body().contains("555-0122"));
    }

    @Test
    void surfaces_are_checked_by_their_type_and_keep_their_history() {
        String site = site(customer("Counted Again"), "Home", "");
        Map<String, String> skylights = surface(site, "SKYLIGHT", "Hall", "six");
        skylights.put("STORY", "99");
        var refused = office.post("sites/" + site + "/surfaces", skylights);
        assertEquals(422, refused.statusCode());
        assertEquals("six", page(refused).select("#extent").val());
        assertEquals("true", page(refused).select("#extent").attr("aria-invalid"));
        assertEquals("true", page(refused).select("#STORY").attr("aria-invalid"));
        assertEquals(
                0, page(refused).select("#rows, #ROW_ACCESS, #GROWTH_GRADE").size());

        skylights.put("STORY", "2");
        skylights.put("extent", "6");
        assertEquals(303, office.post("sites/" + site + "/surfaces", skylights).statusCode());
        String path = "sites/" + site + "/surfaces/" + skylights.get("id");
        Map<String, String> edit = office.form(path, "/sites/" + site + "/surfaces");
        edit.put("extent", "10");
        assertEquals(303, office.post("sites/" + site + "/surfaces", edit).statusCode());

        assertTrue(text(office.get(path)).contains("6, now 10"));
    }

    @Test
    void what_is_not_there_is_not_found() {
        String unknown = UUID.randomUUID().toString();
        for (String path : List.of(
                "customers/" + unknown,
                "customers/not-an-id",
                "customers/" + unknown + "/edit",
                "customers/" + unknown + "/sites/new",
                "sites/" + unknown + "/surfaces/new",
                "api/customers/" + unknown)) {
            assertEquals(404, office.get(path).statusCode(), path);
        }
    }

    @Test
    void customers_are_not_open_to_technicians() {
        String customer = customer("Closed to Technicians");
        String path = "customers/" + customer;

        assertEquals(403, Visitor.technician().get(path).statusCode());
        assertEquals(403, Visitor.technician().get("customers/import").statusCode());
        assertEquals(403, Visitor.technician().getJson("api/" + path).statusCode());

        assertEquals(
                "1",
                Visitor.value(
                        "select count(*) from audit_event where outcome = 'REFUSED' and subject = ?", "/" + path));
        assertEquals(303, Visitor.stranger().get(path).statusCode());
        assertEquals(401, Visitor.stranger().getJson("api/" + path).statusCode());
    }

    @Test
    void a_file_is_tried_out_before_it_is_imported() {
        String bad = """
                customer;country;site;surface;surface_type;extent
                Nora Imported;US;Home;Front;window;12
                Nora Imported;US;Home;Roof;roof;many
                ;US;Home;Back;window;3
                """;
        String before = Visitor.value("select count(*) from customer");

        var tried = office.upload("customers/import", "file", "bad.csv", bad);

        assertEquals(200, tried.statusCode());
        var lines = page(tried).select("section.panel tbody td.num").eachText();
        assertEquals(List.of("3", "4"), lines, text(tried));
        assertEquals(0, page(tried).select("form[action=/customers/import/run]").size());
        assertEquals(before, Visitor.value("select count(*) from customer"));
        assertEquals(422, office.upload("customers/import", "file", "", "").statusCode(), "no file was chosen");
        var without = office.upload("customers/import", "other", "good.csv", bad);
        assertEquals(422, without.statusCode(), "no such part was sent");
        assertEquals(1, page(without).select(".errors a[href=#file]").size(), "no such part was sent");
        assertEquals(
                422,
                office.upload("customers/import", "file", "picture.csv", "\u0000\u0001 no table")
                        .statusCode());
        assertEquals(
                400,
                office.post("customers/import/run", Map.of("packed", "never tried out"))
                        .statusCode());
    }

    @Test
    void the_sample_file_comes_in_once() {
        HttpResponse<String> sample = office.get("customers/import/sample.csv");

        var tried = office.upload("customers/import", "file", "sample.csv", sample.body());
        assertTrue(text(tried).contains("3 rows with 2 customers, 2 sites and 3 surfaces"), text(tried));
        Map<String, String> run = Visitor.form(tried, "/customers/import/run");
        assertEquals("/customers?done=customers.imported", location(office.post("customers/import/run", run)));
        assertEquals(303, office.post("customers/import/run", run).statusCode(), "sent twice, imported once");

        assertEquals("2", Visitor.value("select count(*) from customer where name like ?", "Sample: %"));
        assertTrue(text(office.upload("customers/import", "file", "sample.csv", sample.body()))
                .contains("was imported on"));
    }

    @Test
    void scripts_keep_customers_under_their_own_ids() {
        String customer = "api/customers/" + UUID.randomUUID();
        String site = customer + "/sites/" + UUID.randomUUID();
        String surface = site + "/surfaces/" + UUID.randomUUID();
        String address = "\"address\":{\"street\":\"1 Script Road\",\"country\":\"US\"}";
        String body = "{\"name\":\"Scripted Ltd\",\"type\":\"BUSINESS\",\"paymentTermDays\":30," + address + "}";
        String roof = "{\"type\":\"ROOF\",\"name\":\"Roof\",\"extent\":{\"value\":\"1900\",\"unit\":\"FTK\"},"
                + "\"attributes\":{\"GROWTH_GRADE\":2}}";

        var first = office.json("PUT", customer, body);
        assertEquals(200, first.statusCode(), first.body());
        assertEquals(first.body(), office.json("PUT", customer, body).body(), "the same again changes nothing");
        assertEquals(
                200,
                office.json("PUT", site, "{\"name\":\"Works\"," + address + "}").statusCode());
        assertEquals(200, office.json("PUT", surface, roof).statusCode());
        var whole = office.getJson(customer);
        assertTrue(whole.body().contains("\"GROWTH_GRADE\":2"), whole.body());
        assertTrue(office.getJson("api/customers?q=scripted").body().contains("Scripted Ltd"));

        var overtaken = office.json("PUT", customer, body.replace("30", "60"));
        assertEquals(409, overtaken.statusCode());
        assertTrue(overtaken.body().contains("\"stored\"") && overtaken.body().contains("\"sent\""));
        assertEquals(
                200,
                office.json("PUT", customer, body.replace("30", "60").replace("{\"name", "{\"version\":1,\"name"))
                        .statusCode());
        assertEquals(
                422, office.json("PUT", customer, body.replace("30", "999")).statusCode());
        assertEquals(400, office.json("PUT", customer, "{\"name\":").statusCode());
        assertEquals(400, office.json("PUT", customer, "{}").statusCode());
        assertEquals(
                404,
                office.json(
                                "PUT",
                                site.replace(customer, "api/customers/" + UUID.randomUUID()),
                                "{\"name\":\"Works\"," + address + "}")
                        .statusCode());
        assertNotEquals(first.body(), office.getJson(customer).body());
        assertFalse(office.getJson(customer).body().contains("\"paymentTermDays\":999"));
    }
}
