package eaveside.web.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the owner and the office set, and the audit log of it, for scripts on the real server. */
class SettingsApiHttpIT {
    private final Visitor owner = Visitor.owner();
    private final Visitor office = Visitor.office();

    /** It sets the first cost rates of the run, which must not begin in the future. */
    @BeforeAll
    static void arrange() {
        assertEquals(
                200,
                SiteToQuote.shared()
                        .get(SiteToQuote.shared().office(), "quotes")
                        .statusCode());
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private static JsonArray list(HttpResponse<String> answer, String name) {
        return json(answer, 200).getJsonArray(name);
    }

    private static JsonObject with(JsonObject body, String field, String value) {
        return Json.createObjectBuilder(body).add(field, value).build();
    }

    /** The settings that are the owner's alone are closed to everybody else, and the others to technicians. */
    @Test
    void roles_are_those_of_the_pages() {
        for (String path :
                List.of("api/settings/company", "api/settings/rates", "api/settings/taxes", "api/audit-log")) {
            json(office.getJson(path), 403);
            json(Visitor.technician().getJson(path), 403);
        }
        json(office.json("PUT", "api/settings/company", "{}"), 403);
        json(office.json("POST", "api/settings/rates", "{}"), 403);
        json(office.json("POST", "api/settings/taxes", "{}"), 403);
        for (String path : List.of("api/settings/manufacturers", "api/service-lines/" + UUID.randomUUID())) {
            json(Visitor.technician().getJson(path), 403);
            json(Visitor.technician().json("PUT", path, "{}"), 403);
        }
        json(Visitor.stranger().getJson("api/audit-log"), 401);
    }

    @Test
    void the_company_changes_but_its_currency_does_not() {
        String path = "api/settings/company";
        JsonObject before = json(owner.getJson(path), 200);
        JsonObject wanted = with(before, "taxNumber", "TEST-0001");

        JsonObject saved = json(owner.json("PUT", path, wanted.toString()), 200);
        assertEquals("TEST-0001", saved.getString("taxNumber"));
        assertEquals(saved, json(owner.json("PUT", path, wanted.toString()), 200), "a retry");
        json(owner.json("PUT", path, with(before, "taxNumber", "TEST-0002").toString()), 409);
        json(owner.json("PUT", path, with(saved, "currency", "EUR").toString()), 422);
        json(owner.json("PUT", path, with(saved, "zone", "Mars/Olympus").toString()), 422);
        json(owner.json("PUT", path, with(saved, "measures", "CUBITS").toString()), 400);
        json(owner.json("PUT", path, "{}"), 400);

        // What never changes need not be sent.
        JsonObject part = Json.createObjectBuilder(saved)
                .remove("currency")
                .remove("booksFrom")
                .add("taxNumber", before.getString("taxNumber"))
                .build();
        JsonObject back = json(owner.json("PUT", path, part.toString()), 200);
        assertEquals("USD", back.getString("currency"));
        assertEquals(before.getString("booksFrom"), back.getString("booksFrom"));
    }

    @Test
    void rates_are_set_from_a_day_on() {
        String path = "api/settings/rates";
        LocalDate today = LocalDate.parse(SiteToQuote.today());
        LocalDate from = today.plusYears(4);
        String rates = """
                {"from": "%s", "laborPerHour": {"amount": "41.25", "currency": "USD"},
                 "travelPerDistance": {"amount": "0.725", "currency": "USD", "per": {"value": "1", "unit": "SMI"}},
                 "overheadPerHour": {"amount": "15.00", "currency": "USD"}}""".formatted(from);

        JsonObject set = json(owner.json("POST", path, rates), 201);
        assertEquals("0.725", set.getJsonObject("travelPerDistance").getString("amount"));
        assertEquals(set, json(owner.json("POST", path, rates), 201), "a retry");
        assertEquals(set, json(owner.getJson(path + "/" + from.plusDays(1)), 200), "in force from then on");
        json(owner.getJson(path + "/1999-01-01"), 404);
        JsonObject all = json(owner.getJson(path), 200);
        assertEquals(
                1,
                all.getJsonArray("rates").getValuesAs(JsonObject.class).stream()
                        .filter(set::equals)
                        .count());
        json(
                owner.json(
                        "POST",
                        path,
                        rates.replace(from.toString(), today.minusDays(1).toString())),
                422);
        json(owner.json("POST", path, rates.replace("41.25", "-1")), 422);
        json(owner.json("POST", path, rates.replace("SMI", "HUR")), 422);
        json(owner.json("POST", path, rates.replace("41.25", "dear")), 400);
        assertEquals(all, json(owner.getJson(path), 200));
    }

    @Test
    void taxes_are_dated() {
        String path = "api/settings/taxes";
        String tax = "{\"code\": \"A-TAX\", \"category\": \"S\", \"rate\": \"6.5\", \"from\": \"2026-01-01\"}";

        JsonObject set = json(owner.json("POST", path, tax), 201);
        assertEquals(set, json(owner.json("POST", path, tax), 201), "a retry");
        assertTrue(list(owner.getJson(path), "taxes").contains(set));
        assertEquals(set, json(owner.getJson(path + "/A-TAX/2026-03-01"), 200));
        json(owner.getJson(path + "/A-TAX/2025-12-31"), 404);
        json(owner.json("POST", path, tax.replace("6.5", "7")), 422);
        json(owner.json("POST", path, tax.replace("\"S\"", "\"E\"").replace("6.5", "0")), 422);
        json(owner.json("POST", path, tax.replace("\"S\"", "\"Q\"")), 400);
        json(owner.json("POST", path, tax.replace("A-TAX", "no code")), 422);
        JsonObject exempt = json(
                owner.json(
                        "POST",
                        path,
                        "{\"code\": \"A-EXEMPT\", \"category\": \"E\", \"from\": \"2026-01-01\","
                                + " \"exemptionReason\": \"Exempt by the tests\"}"),
                201);
        assertEquals("0", exempt.getString("rate"));
        assertEquals(
                "1", Visitor.value("select count(*) from tax_setting where code = 'A-TAX'"), "nothing else was set");
    }

    @Test
    void manufacturers_are_kept_by_the_office() {
        String path = "api/settings/manufacturers";
        String manufacturer =
                "{\"name\": \"Scripted / South\", \"maxPressure\": {\"value\": \"690\", \"unit\": \"KPA\"},"
                        + " \"source\": \"Manual, page 7\"}";

        JsonObject first = json(office.json("PUT", path, manufacturer), 200);
        assertEquals(first, json(office.json("PUT", path, manufacturer), 200), "the same again changes nothing");
        assertFalse(first.getBoolean("alkaliForbidden"));
        assertFalse(first.containsKey("maxHardness"), "the manual does not say");
        JsonObject stale = json(office.json("PUT", path, manufacturer.replace("690", "500")), 409);
        assertEquals(first, stale.getJsonObject("stored"));
        json(office.json("PUT", path, manufacturer.replace("Scripted", "SCRIPTED")), 409);
        json(office.json("PUT", path, manufacturer.replace("\"690\"", "\"0\"")), 422);
        json(office.json("PUT", path, "{}"), 400);
        JsonObject lower = Json.createReader(new StringReader(first.toString().replace("690", "500")))
                .readObject();
        JsonObject changed = json(office.json("PUT", path, lower.toString()), 200);
        assertTrue(list(office.getJson(path), "manufacturers").contains(changed));
        assertEquals("500", changed.getJsonObject("maxPressure").getString("value"));
    }

    @Test
    void a_service_line_is_added_and_changed() {
        String path = "api/service-lines/" + UUID.randomUUID();
        String line = "{\"code\": \"A-LINE\", \"name\": \"Lines of scripts\"}";

        JsonObject first = json(office.json("PUT", path, line), 200);
        assertEquals(first, json(office.json("PUT", path, line), 200), "the same again changes nothing");
        json(office.json("PUT", path, line.replace("scripts", "others")), 409);
        JsonObject closed = Json.createObjectBuilder(first).add("active", false).build();
        JsonObject changed = json(office.json("PUT", path, closed.toString()), 200);
        assertFalse(changed.getBoolean("active"));
        assertEquals(changed, json(office.getJson(path), 200));
        assertTrue(list(office.getJson("api/service-lines"), "serviceLines").contains(changed));

        String other = "api/service-lines/" + UUID.randomUUID();
        json(office.json("PUT", other, line), 409);
        json(office.json("PUT", other, line.replace("A-LINE", "a line")), 422);
        json(office.json("PUT", other, closed.toString()), 400);
        json(
                office.json(
                        "PUT",
                        other,
                        Json.createObjectBuilder(closed).remove("id").build().toString()),
                404);
        json(office.getJson(other), 404);
        json(office.json("PUT", other, "{\"code\": \"A-OTHER\"}"), 400);
    }

    @Test
    void a_service_names_consumables_of_stock_only() {
        SiteToQuote.shared();
        String line = UUID.randomUUID().toString();
        json(office.json("PUT", "api/service-lines/" + line, "{\"code\": \"A-STOCKED\", \"name\": \"Stocked\"}"), 200);
        String path = "api/services/" + UUID.randomUUID();
        String plain = "{\"serviceLine\": \"" + line + "\", \"code\": \"A-STOCKED\", \"name\": \"Stocked\","
                + " \"unit\": \"H87\", \"minutesPerUnit\": \"1.5\", \"taxCode\": \"Q-STANDARD\", \"consumables\": [";
        String unknown =
                "{\"item\": \"" + UUID.randomUUID() + "\", \"perUnit\": {\"value\": \"1\", \"unit\": \"MLT\"}}";

        JsonObject refused = json(office.json("PUT", path, plain + unknown + "]}"), 422);

        assertEquals("[\"consumables[0].item\"]", refused.getJsonArray("fields").toString());
        json(office.getJson(path), 404);
        JsonObject saved = json(office.json("PUT", path, plain + "]}"), 200);
        assertEquals(1, saved.getInt("version"));
        assertEquals(saved, json(office.json("PUT", path, plain + "]}"), 200), "a retry");
        assertTrue(list(office.getJson("api/services"), "services").contains(saved));
        JsonObject several =
                json(office.json("PUT", path, saved.toString().replace("\"A-STOCKED\"", "\"a stocked\"")), 422);
        assertEquals("[\"code\"]", several.getJsonArray("fields").toString());
    }

    @Test
    void the_audit_log_is_read_page_by_page() {
        String code = "A-AUDIT-LOG";
        String id = UUID.randomUUID().toString();
        json(
                office.json(
                        "PUT",
                        "api/service-lines/" + id,
                        "{\"code\": \"" + code + "\", \"name\": \"Lines of the audit log\"}"),
                200);
        json(office.getJson("api/audit-log"), 403);
        String by = Visitor.value("select id from app_user where username = 'office.visitor'");

        JsonArray done = json(owner.getJson("api/audit-log?action=service-line.save&outcome=DONE&by=" + by), 200)
                .getJsonArray("auditLog");
        JsonObject newest = done.getValuesAs(JsonObject.class).stream()
                .filter(line -> line.getString("subject").equals(id))
                .findFirst()
                .orElseThrow();
        assertEquals("Office of the Tests", newest.getString("byName"));
        assertEquals(by, newest.getString("by"));
        JsonArray refused = json(owner.getJson("api/audit-log?outcome=REFUSED&action=access."), 200)
                .getJsonArray("auditLog");
        assertTrue(refused.getValuesAs(JsonObject.class).stream()
                .allMatch(line -> line.getString("outcome").equals("REFUSED")));
        assertTrue(refused.getValuesAs(JsonObject.class).stream()
                .anyMatch(line -> line.getString("subject").equals("/api/audit-log")));

        String today = SiteToQuote.today();
        assertFalse(json(owner.getJson("api/audit-log?from=" + today + "&to=" + today), 200)
                .getJsonArray("auditLog")
                .isEmpty());
        JsonObject none = json(owner.getJson("api/audit-log?to=2020-01-01"), 200);
        assertTrue(none.getJsonArray("auditLog").isEmpty());
        assertFalse(none.containsKey("next"));
        json(owner.getJson("api/audit-log?action=Not%20An%20Action"), 400);
        json(owner.getJson("api/audit-log?outcome=MAYBE"), 400);
        json(owner.getJson("api/audit-log?from=soon"), 400);
        json(owner.getJson("api/audit-log?after=nonsense"), 400);
    }
}
