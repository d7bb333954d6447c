package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Costs and journals, their reversal and the close of a month, by page. */
class BooksHttpIT {
    private final Visitor office = Visitor.office();

    @BeforeAll
    static void openBooks() {
        Visitor.letOfficeReadBooks(true);
    }

    @AfterAll
    static void closeBooks() {
        Visitor.letOfficeReadBooks(false);
    }

    private final Visitor owner = Visitor.owner();

    /** The form of a cost of so much, paid by the bank. */
    private Map<String, String> cost(String summary, String amount) {
        Map<String, String> form = new HashMap<>(office.form("books/journal", "/books/journal"));
        form.put("kind", "COST");
        form.put("summary", summary);
        form.put("line-0-account", "6200");
        form.put("line-0-debit", amount);
        form.put("line-1-account", "1000");
        form.put("line-1-credit", amount);
        return form;
    }

    @Test
    void a_cost_is_posted_once_opened_and_reversed_once() {
        Map<String, String> form = cost("Telephone of the depot", "48.20");
        var posted = office.post("books/journal", form);
        assertEquals(303, posted.statusCode());
        assertEquals(303, office.post("books/journal", form).statusCode(), "the same again is a retry");
        String document = "documents/" + form.get("id");
        assertEquals("1", Visitor.value("select count(*) from document where id = ?::uuid", form.get("id")));
        String shown = Visitor.text(office.get(document));
        assertTrue(shown.contains("Telephone of the depot") && shown.contains("$48.20"), shown);
        assertEquals(
                1,
                Visitor.page(office.get("books/entries?account=6200"))
                        .select("a[href=/" + document + "]")
                        .size());

        Map<String, String> reversal = new HashMap<>(office.form(document, "/" + document + "/reverse"));
        reversal.put("reason", "Entered twice");
        assertEquals(303, office.post(document + "/reverse", reversal).statusCode());
        reversal.remove("id");
        assertEquals(409, office.post(document + "/reverse", reversal).statusCode(), "once only");
    }

    @Test
    void what_does_not_balance_or_is_not_for_journals_is_marked_and_kept() {
        Map<String, String> form = cost("Rent", "900.00");
        form.put("line-1-credit", "90.00");
        var refused = office.post("books/journal", form);
        assertEquals(422, refused.statusCode());
        assertEquals("Rent", Visitor.page(refused).select("#summary").attr("value"));

        Map<String, String> controlled = cost("By hand", "10.00");
        controlled.put("line-0-account", "1200");
        assertEquals(422, office.post("books/journal", controlled).statusCode());
        Map<String, String> later = cost("Next year", "10.00");
        later.put("date", "2190-01-01");
        assertEquals(422, office.post("books/journal", later).statusCode());
        assertEquals("0", Visitor.value("select count(*) from document where id = ?::uuid", later.get("id")));
        assertEquals(403, Visitor.technician().post("books/journal", form).statusCode());
    }

    @Test
    void only_the_owner_closes_and_only_a_month_that_is_over() {
        Map<String, String> form = Map.of("month", YearMonth.now().plusMonths(1).toString());
        assertEquals(403, office.post("books/close", form).statusCode());
        var refused = owner.post("books/close", form);
        assertTrue(refused.statusCode() == 422 || refused.statusCode() == 409, refused.statusCode() + "");
        assertEquals(
                "0",
                Visitor.value("select count(*) from period where closed_at is not null and first_day > current_date"));
    }
}
