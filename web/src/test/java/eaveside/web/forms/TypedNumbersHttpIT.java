package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.net.http.HttpResponse;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers as people type them into real forms: what can be read in two ways is refused, what the program prints is taken. */
class TypedNumbersHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor owner = Visitor.owner();

    private String customer() {
        String id = UUID.randomUUID().toString();
        assertEquals(
                200,
                owner.json("PUT", "api/customers/" + id, """
                        {"name": "Comma %s", "type": "HOUSEHOLD", "paymentTermDays": 14, "address": {"country": "US"}}
                        """.formatted(id.substring(0, 8)))
                        .statusCode());
        return id;
    }

    private static void refusedAt(String field, String typed, HttpResponse<String> answer) {
        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        var page = Visitor.page(answer);
        assertEquals(
                1, page.select(".errors a[href=#" + field + "]").size(), field + " in " + page.select(".errors a"));
        assertEquals("true", page.getElementById(field).attr("aria-invalid"), field);
        assertEquals(typed, page.getElementById(field).val(), "kept as it was typed");
    }

    @ParameterizedTest
    @CsvSource({
        "amount, '12,50'",
        "amount, '$1.200,00'",
        "amount, '1,20'",
        "amount, 999999999999999",
        "amount, 1000000000000",
        "amount, 1e13",
        "date, 10000-01-01",
        "date, +10000-01-01",
        "date, 12026-03-02",
        "date, -2026-03-02",
        "date, 9999-12-31",
        "date, 0001-01-01"
    })
    void what_could_be_two_or_is_beyond_what_books_hold_is_refused(String field, String typed) {
        String customer = customer();
        Map<String, String> form = owner.form("payments/new?customer=" + customer, "/payments");
        form.putAll(Map.of("method", "CASH", "keepAsCredit", "yes", "amount", "12"));
        form.put(field, typed);

        refusedAt(field, typed, owner.post("payments", form));

        assertEquals("0", Visitor.value("select count(*) from payment where customer_id = ?::uuid", customer));
    }

    @ParameterizedTest
    @CsvSource({
        "receipt, line-0-quantity, '12,5'",
        "receipt, line-0-cost, '12,50'",
        "receipt, line-0-cost, 999999999999999",
        "receipt, line-0-quantity, 999999999999999999999",
        "transfer, line-0-quantity, '12,5'",
        "count, line-0-quantity, '12,5'",
        "write-off, line-0-quantity, '12,5'"
    })
    void a_quantity_of_stock_that_could_be_two_is_refused(String movement, String field, String typed) {
        String path = "stock/new/" + movement;
        Map<String, String> form = owner.form(path, "/" + path);
        String id = form.get("id");
        form.put("line-0-item", CrewAtWork.SOAP);
        form.put("line-0-quantity", "1");
        form.replaceAll((name, value) -> switch (name) {
            case "location", "from" -> CrewAtWork.VAN;
            case "reason", "supplier" -> "Typed with a comma";
            default -> value;
        });
        form.put(field, typed);

        refusedAt(field, typed, owner.post(path, form));

        assertEquals("0", Visitor.value("select count(*) from document where id = ?::uuid", id));
    }

    @ParameterizedTest
    @CsvSource({"line-0-done, '4,8'", "mix-0-volume, '12,5'", "reading-0-volume, '12,5'", "distance, '12,5'"})
    void a_quantity_on_a_job_sheet_that_could_be_two_is_refused(String field, String typed) {
        String visit = at.visit();
        String path = "sheets/" + visit;
        Map<String, String> form = at.technician().form(path, "/" + path);
        form.putAll(Map.of(
                "line-0-done",
                "48",
                "onSiteMinutes",
                "120",
                "drivingMinutes",
                "40",
                "loadingMinutes",
                "0",
                "distance",
                "12.5",
                "mix-0-mix",
                CrewAtWork.MIX,
                "mix-0-volume",
                "2"));
        form.put("reading-0-tapWater", "250");
        form.put("reading-0-pureWater", "5");
        form.put("reading-0-volume", "40");
        form.put("reading-0-canister", CrewAtWork.CANISTER);
        form.put(field, typed);

        refusedAt(field, typed, at.technician().post(path, form));

        assertEquals("SCHEDULED", at.read(visit).getString("status"));
    }

    @Test
    void an_amount_is_taken_as_the_program_prints_it() {
        String customer = customer();
        Map<String, String> form = owner.form("payments/new?customer=" + customer, "/payments");
        form.putAll(Map.of("method", "CASH", "keepAsCredit", "yes", "amount", "$1,200.00"));

        assertEquals(303, owner.post("payments", form).statusCode());

        assertEquals(
                "1200.00",
                Visitor.value("select amount::numeric(12,2)::text from payment where customer_id = ?::uuid", customer));
        String account = Visitor.text(owner.get("invoices/account/" + customer));
        assertTrue(account.contains("$1,200.00"), account);
    }

    @Test
    void a_rate_is_taken_as_the_program_prints_it_and_refused_with_a_comma() {
        Map<String, String> form = owner.form("settings/taxes/new", "/settings/taxes");
        form.putAll(Map.of("code", "T-TYPED", "rate", "6,35", "from", SiteToQuote.today()));
        refusedAt("rate", "6,35", owner.post("settings/taxes", form));

        form.put("rate", "6.35%");
        HttpResponse<String> saved = owner.post("settings/taxes", form);

        assertEquals(303, saved.statusCode(), Visitor.text(saved));
        String taxes = Visitor.text(owner.get("settings/taxes"));
        assertTrue(taxes.contains("T-TYPED S · standard rate 6.35%"), taxes);
    }
}
