package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nothing that somebody typed into a form is lost when the form is refused, nor when its type is switched. */
class RefusedFormsHttpIT {
    @BeforeAll
    static void arrange() {
        CrewAtWork.shared();
        SiteToQuote.shared().published("Prices for refused forms");
    }

    private static final Visitor OWNER = Visitor.owner();

    /** Every form with rows, a switch or a list: all of it filled in with what no field of a number or day takes. */
    @ParameterizedTest
    @CsvSource({
        "stock/new/receipt, /stock/new/receipt",
        "stock/new/transfer, /stock/new/transfer",
        "stock/new/count, /stock/new/count",
        "stock/new/write-off, /stock/new/write-off",
        "stock/items/new, /stock/items",
        "stock/mixes/new, /stock/mixes",
        "books/journal, /books/journal",
        "customers/new, /customers/save",
        "customers/{customer}/contacts/new, /customers/{customer}/contacts",
        "customers/{customer}/sites/new, /customers/{customer}/sites",
        "sites/{site}/surfaces/new?type=ARRAY, /sites/{site}/surfaces",
        "sites/{site}/surfaces/new?type=ROOF, /sites/{site}/surfaces",
        "quotes/new?customer={customer}&site={site}, /quotes",
        "visits/new?site={site}, /visits/new",
        "invoices/new?customer={customer}, /invoices",
        "payments/new?customer={customer}, /payments",
        "prices/new, /prices/*",
        "settings/services/new, /settings/services",
        "settings/service-lines/new, /settings/service-lines",
        "settings/finding-types/new, /settings/finding-types",
        "settings/manufacturers/edit, /settings/manufacturers",
        "settings/taxes/new, /settings/taxes",
        "settings/rates/new, /settings/rates",
        "settings/company, /settings/company",
        "settings/users/new, /settings/users",
        "books/accounts/new, /books/accounts"
    })
    void a_refused_form_comes_back_as_it_was_sent(String page, String action) {
        String path = filled(page);
        HttpResponse<String> shown = OWNER.get(path);
        assertEquals(200, shown.statusCode(), path);
        Element form = SentForm.of(shown, filled(action));
        Map<String, String> sent = SentForm.nonsense(form);

        HttpResponse<String> answer = OWNER.post(form.attr("action").substring(1), sent);

        assertEquals(422, answer.statusCode(), path + ": " + Visitor.text(answer));
        Map<String, String> back = SentForm.fields(SentForm.of(answer, form.attr("action")));
        assertEquals(Map.of(), SentForm.lost(sent, back), path);
        assertEquals(List.of(), SentForm.astray(Visitor.page(answer)), path);
    }

    @Test
    void a_transfer_without_its_other_location_names_the_field_and_keeps_the_rest() {
        Visitor office = Visitor.office();
        Map<String, String> form = office.form("stock/new/transfer", "/stock/new/transfer");
        form.put("note", "To the van of tomorrow");
        form.put("from", "01900000-0000-7000-8000-000000000105");
        form.put("to", "");
        form.put("line-0-item", "01900000-0000-7000-8000-000000000101");
        form.put("line-0-quantity", "3");
        form.put("line-1-quantity", "5");

        HttpResponse<String> answer = office.post("stock/new/transfer", form);

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Map<String, String> back = Visitor.form(answer, "/stock/new/transfer");
        form.forEach((name, value) -> assertEquals(value, back.get(name), name));
        assertEquals("true", Visitor.page(answer).select("#to").attr("aria-invalid"));
        assertEquals(
                List.of("#to", "#line-1-item"),
                Visitor.page(answer).select(".errors a").eachAttr("href"),
                "a row with a quantity and no item is not dropped in silence either");
    }

    /** What the use case calls {@code packs[1].content} or {@code scope.validUntil} has another name on its page. */
    @ParameterizedTest
    @CsvSource({
        "stock/items/new, /stock/items, pack-0-name, Jug, pack-0-content, 2, pack-0-contentUnit, FOT, #pack-0-content",
        "quotes/new?customer={customer}&site={site}, /quotes, validUntil, 2020-01-31, line-0-on, yes, line-0-quantity, 3, #validUntil",
        "quotes/new?customer={customer}&site={site}, /quotes, note, Long, line-0-on, yes, line-0-quantity, 987654321, #line-0-quantity",
        "sites/{site}/surfaces/new?type=ARRAY, /sites/{site}/surfaces, name, Porch, extent, 987654321987, STORY, 2, #extent",
        "sites/{site}/surfaces/new?type=ARRAY, /sites/{site}/surfaces, name, Porch, extent, 2, STORY, 99, #STORY",
    })
    void what_is_refused_of_a_part_stands_at_its_own_field(
            String page,
            String action,
            String one,
            String first,
            String other,
            String second,
            String last,
            String third,
            String field) {
        Map<String, String> form = OWNER.form(filled(page), filled(action));
        if (page.startsWith("stock")) {
            form.putAll(Map.of("name", "Jug soap", "code", "JUGSOAP", "type", "CONCENTRATE", "baseUnit", "OZA"));
        }
        form.putAll(Map.of(one, first, other, second, last, third));

        HttpResponse<String> answer = OWNER.post(filled(action).substring(1), form);

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        assertEquals(List.of(field), Visitor.page(answer).select(".errors a").eachAttr("href"), Visitor.text(answer));
        assertEquals(
                "true",
                Visitor.page(answer).select(field).attr("aria-invalid"),
                "the field is there and says that it is wrong");
    }

    /** A row's service is none of the fields that people fill in, but what is wrong with it stands in the row. */
    @Test
    void a_row_of_a_quote_says_what_is_wrong_with_its_service() {
        String service = UUID.randomUUID().toString();
        var added = OWNER.json("PUT", "api/services/" + service, """
                {"serviceLine": "%s", "code": "UNPRICED", "name": "Unpriced wash", "unit": "H87", "minutesPerUnit": "1",
                 "taxCode": "Q-STANDARD", "surfaceType": "ARRAY"}
                """.formatted(SiteToQuote.SOLAR_LINE));
        assertEquals(200, added.statusCode(), added.body());
        String page = "quotes/new?customer=" + SiteToQuote.CUSTOMER + "&site=" + SiteToQuote.SITE;
        Map<String, String> form = OWNER.form(page, "/quotes");
        form.put("line-0-serviceItem", service);
        form.put("line-0-on", "yes");

        HttpResponse<String> answer = OWNER.post("quotes", form);

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        String row = Visitor.page(answer).select(".errors a").attr("href");
        assertEquals("#line-0-serviceItem", row);
        assertTrue(Visitor.page(answer).select(row).text().contains("has no price for"), Visitor.text(answer));
    }

    @Test
    void a_slip_of_the_finger_is_told_without_the_bounds_of_a_computer() {
        Map<String, String> form = OWNER.form("customers/new", "/customers/save");
        form.putAll(Map.of("name", "Long terms", "paymentTermDays", "99999999999"));

        HttpResponse<String> answer = OWNER.post("customers/save", form);

        assertEquals(422, answer.statusCode());
        assertTrue(
                Visitor.text(answer).contains("Payment terms cannot be as large as 99,999,999,999"),
                Visitor.text(answer));
    }

    /** The totals of a draft are told at its fields too, in their words. */
    @Test
    void the_totals_of_a_draft_say_what_is_wrong_in_the_words_of_its_fields() {
        Map<String, String> form = OWNER.form("invoices/new?customer=" + SiteToQuote.CUSTOMER, "/invoices");
        form.putAll(Map.of(
                "serviceDate", LocalDate.now(ZoneOffset.UTC).minusYears(9).toString(),
                "line-0-description", "Moss",
                "line-0-taxCode", "Q-STANDARD",
                "line-0-serviceLine", SiteToQuote.SOLAR_LINE,
                "line-0-quantity", "1",
                "line-0-gross", "40"));

        HttpResponse<String> answer = OWNER.post("invoices/calculation", form);

        String text = Visitor.text(answer);
        assertTrue(text.contains("has no setting in force on"), text);
        assertFalse(text.contains("lines[0]") || answer.body().contains("#lines"), text);
        assertEquals(
                List.of("#line-0-taxCode"),
                Visitor.page(answer).select(".errors a").eachAttr("href"),
                text);
    }

    @Test
    void a_new_surface_keeps_what_was_typed_while_its_type_is_switched_and_back() {
        Visitor office = Visitor.office();
        String customer = "api/customers/" + UUID.randomUUID();
        String address = "\"address\":{\"country\":\"US\"}";
        String site = UUID.randomUUID().toString();
        assertEquals(
                200,
                office.json(
                                "PUT",
                                customer,
                                "{\"name\":\"Porch of a test\",\"type\":\"HOUSEHOLD\",\"paymentTermDays\":14," + address
                                        + "}")
                        .statusCode());
        assertEquals(
                200,
                office.json("PUT", customer + "/sites/" + site, "{\"name\":\"Home\"," + address + "}")
                        .statusCode());
        String action = "/sites/" + site + "/surfaces";
        HttpResponse<String> array = office.get("sites/" + site + "/surfaces/new");
        Map<String, String> typed = Visitor.form(array, action);
        typed.put("name", "Over the porch");
        typed.put("extent", "12");
        typed.put("rows", "3");
        typed.put("STORY", "2");
        typed.put("ROW_ACCESS", "1");
        typed.remove("active");

        HttpResponse<String> roof = switched(office, array, typed, "ROOF");
        Map<String, String> asRoof = Visitor.form(roof, action);
        assertEquals("ROOF", asRoof.get("type"));
        assertEquals("FTK", asRoof.get("extentUnit"));
        for (String kept : List.of("id", "name", "extent", "STORY")) {
            assertEquals(typed.get(kept), asRoof.get(kept), kept);
        }
        assertTrue(Visitor.page(roof).select("#active[checked]").isEmpty(), "unticked stays unticked");
        assertEquals(
                0,
                Visitor.page(roof)
                        .select("input[type=text]#ROW_ACCESS, select#ROW_ACCESS")
                        .size());
        asRoof.put("GROWTH_GRADE", "3");

        Map<String, String> back = Visitor.form(switched(office, roof, asRoof, "ARRAY"), action);
        for (String kept : List.of("id", "name", "extent", "rows", "STORY", "ROW_ACCESS")) {
            assertEquals(typed.get(kept), back.get(kept), kept);
        }
        assertEquals("3", back.get("GROWTH_GRADE"), "kept in case it is a roof after all");
        back.put("active", "yes");
        assertEquals(303, office.post(action.substring(1), back).statusCode(), "and is no part of an array");
        assertEquals(
                "0",
                Visitor.value(
                        "select count(*) from surface_attribute where attribute = 'GROWTH_GRADE' and surface_id = ?::uuid",
                        back.get("id")));
    }

    /** As the browser sends a form by another button than its own. */
    private static HttpResponse<String> switched(
            Visitor who, HttpResponse<String> page, Map<String, String> typed, String type) {
        Element button = Visitor.page(page).selectFirst("form button[name=switch][value=" + type + "]");
        assertEquals("get", button.attr("formmethod"));
        Map<String, String> sent = new LinkedHashMap<>(typed);
        sent.put("switch", type);
        StringBuilder query = new StringBuilder();
        sent.forEach((name, value) -> query.append(query.isEmpty() ? '?' : '&')
                .append(name)
                .append('=')
                .append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
        HttpResponse<String> answer = who.get(button.attr("formaction").substring(1) + query);
        assertEquals(200, answer.statusCode());
        return answer;
    }

    private static String filled(String path) {
        return path.replace("{customer}", SiteToQuote.CUSTOMER).replace("{site}", SiteToQuote.SITE);
    }
}
