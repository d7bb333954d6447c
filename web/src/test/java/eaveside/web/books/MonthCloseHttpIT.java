package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.time.Instant;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The close of last month by page, in a company of its own whose books are made to begin then. */
@OnItsOwnCompany
class MonthCloseHttpIT {
    private static YearMonth month;

    private static final Server SERVER = Server.foundedAt(Instant.parse("2027-07-15T18:00:00Z"));
    private static final Visitor owner = Visitor.ownerOf(SERVER);
    private static final Visitor office = owner.hire("Office of the Close", "office.close", "OFFICE");

    @BeforeAll
    static void the_books_begin_a_month_earlier() throws SQLException {
        month = EarlierBooks.begin(SERVER, owner);
    }

    @AfterAll
    static void stop() {
        SERVER.stop();
    }

    /** Posts wages of the month and answers the document's posting date. */
    private String wages(String amount) {
        String wages =
                JournalForm.posted(owner, "EXPENSE", month.atDay(20), "Wages of the month", "6000", "1000", amount);
        return Visitor.value(SERVER, "select posting_date from document where id = ?::uuid", wages);
    }

    private Document page() {
        return Visitor.page(owner.get("books/months/" + month));
    }

    private static String labor(Document page) {
        return page.select("main table")
                .getFirst()
                .select("tbody tr")
                .getFirst()
                .text();
    }

    @Test
    void a_close_shows_what_is_open_asks_first_and_empties_no_account() {
        assertEquals(month.atDay(20).toString(), wages("820.50"));
        Document open = page();
        assertEquals("Labor variance $820.50 $0.00 $820.50", labor(open));
        assertTrue(open.select("main h2").eachText().contains("Still open"), open.text());
        assertEquals(403, office.get("books/months/" + month).statusCode(), "the books are the owner's");
        assertTrue(owner.getJson("api/books/months/" + month).body().contains("\"closable\":true"));

        Map<String, String> form = new HashMap<>(owner.form("books/months/" + month, "/books/close"));
        HttpResponse<String> asked = owner.post("books/close", form);
        assertEquals(422, asked.statusCode());
        assertEquals(1, Visitor.page(asked).select(".errors a[href=#confirm]").size(), "it asks first");
        assertEquals("0", Visitor.value(SERVER, "select count(*) from period where closed_at is not null"));

        form.put("confirm", "yes");
        HttpResponse<String> done = owner.post("books/close", form);
        assertEquals(303, done.statusCode(), () -> Visitor.text(done));
        assertEquals("/books/months/" + month + "?done=books.closed", Visitor.location(done));
        Document closed = page();
        assertTrue(closed.select("main .lead").text().startsWith("Closed"), closed.text());
        assertTrue(closed.select("form[action=/books/close]").isEmpty(), "closed for good");
        assertEquals("Labor variance $820.50 $0.00 $820.50", labor(closed), "wages stay where they were spent");
        for (Element figure : closed.select("main table")
                .getFirst()
                .select("tbody tr")
                .getFirst()
                .select("a")) {
            String opens = Visitor.text(owner.get(figure.attr("href").substring(1)));
            assertTrue(opens.contains("Total ") && opens.contains(figure.text()), figure + " opens " + opens);
        }
        assertTrue(Visitor.text(owner.get("documents/" + form.get("id"))).contains("has no entries"));

        assertEquals(303, owner.post("books/close", form).statusCode(), "the same again is a retry");
        assertEquals("1", Visitor.value(SERVER, "select count(*) from period where closed_at is not null"));
        assertEquals(month.plusMonths(1).atDay(1).toString(), wages("1.00"), "late wages land on the next open day");
        assertTrue(owner.getJson("api/books/months/" + month).body().contains("\"closedAt\":\""));
    }
}
