package eaveside.web.search;

import static eaveside.web.testing.Visitor.location;
import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One field finds everything that has a name or a number, among months of a company's business. */
@LooksAtDemo
class SearchHttpIT {
    private static final Server DEMO = Server.demo();
    private static final Visitor OFFICE = Visitor.signedIn(DEMO, "petra", DEMO.passwordOf("petra"));

    private HttpResponse<String> asked(String text) {
        return OFFICE.get("search/hits?q=" + URLEncoder.encode(text, StandardCharsets.UTF_8));
    }

    private List<Element> options(String text) {
        var answer = asked(text);
        assertEquals(200, answer.statusCode(), answer.body());
        return page(answer).select("[role=option]");
    }

    private List<String> groups(String text) {
        return page(asked(text)).select("[role=group]").eachAttr("aria-label");
    }

    private static String value(String sql) {
        return Visitor.value(DEMO, sql);
    }

    @Test
    void a_customer_comes_with_the_newest_of_its_documents() {
        String name = value("select c.name from customer c join payment p on p.customer_id = c.id"
                + " join quote q on q.customer_id = c.id order by p.number desc limit 1");
        List<String> groups = groups(name);
        assertEquals("Customers", groups.getFirst());
        assertTrue(groups.containsAll(List.of("Visits", "Quotes", "Invoices", "Payments")), groups.toString());
        String newest =
                value("select max(i.number) from invoice i join customer c on c.id = i.customer_id where c.name = '"
                        + name.replace("'", "''") + "'");
        assertTrue(
                options(name).stream().anyMatch(o -> o.text().startsWith("Invoice " + newest + ", " + name)),
                options(name).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"larchwik", "lrachwick apartments", "larchwick apartmants"})
    void a_slip_finds_what_comes_close_and_says_so(String typed) {
        assertTrue(
                options(typed).getFirst().text().startsWith("Larchwick Apartments"),
                options(typed).toString());
        assertTrue(page(asked(typed)).text().contains("Nothing is spelled like that. These come close."));
    }

    @Test
    void a_phone_number_is_found_in_any_writing() {
        String phone = value("select phone from customer where name = 'Larchwick Apartments'");
        String digits = phone.replaceAll("[^0-9]", "");
        for (String typed :
                List.of(phone, digits, "(" + digits.substring(0, 3) + ") " + digits.substring(3), "+1 212 " + phone)) {
            assertTrue(options(typed).getFirst().text().startsWith("Larchwick Apartments"), typed);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "invoice, Invoice, select max(number) from invoice, /invoices/",
        "quote, Quote, select max(number) from quote, /quotes/",
        "payment, Payment, select max(number) from payment, /payments/"
    })
    void a_number_finds_its_document_first(String type, String label, String sql, String opens) {
        String number = value(sql);
        var only = options(type + " " + number);
        assertEquals(1, only.size(), only.toString());
        assertTrue(only.getFirst().text().startsWith(label + " " + number + ", "), only.toString());
        assertTrue(only.getFirst().attr("href").startsWith(opens), only.toString());
        assertTrue(
                options("#" + number).stream().anyMatch(o -> o.text().startsWith(label + " " + number + ", ")),
                "by the number alone");
        assertTrue(
                List.of("Quotes", "Invoices", "Payments")
                        .contains(groups(number).getFirst()),
                "documents come first");
    }

    @Test
    void a_payment_is_found_by_the_number_of_its_check_and_a_lot_by_its_label() {
        String check = value("select min(reference) from payment where reference <> ''");
        assertTrue(options(check).stream().anyMatch(o -> o.attr("href").startsWith("/payments/")), check);
        String label = value("select min(label) from lot where label <> '' and not withdrawn");
        var lots = options(label.substring(0, 3)).stream()
                .filter(o -> o.attr("href").contains("?lot="))
                .toList();
        assertTrue(!lots.isEmpty(), label);
        assertEquals(200, OFFICE.get(lots.getFirst().attr("href").substring(1)).statusCode());
    }

    @Test
    void an_item_is_found_with_a_slip_in_its_name() {
        assertTrue(
                options("sqeegee").getFirst().attr("href").startsWith("/stock/items/"),
                options("sqeegee").toString());
    }

    @Test
    void every_hit_opens() {
        for (String typed : List.of("larchwick", "dana", "soap", "7")) {
            for (Element option : options(typed)) {
                String path = option.attr("href").substring(1).replaceAll("#.*", "");
                assertEquals(200, OFFICE.get(path).statusCode(), option.toString());
            }
        }
    }

    @Test
    void the_page_says_the_same_and_opens_what_alone_is_found() {
        var opened = OFFICE.get("search?q=invoice+" + value("select max(number) from invoice"));
        assertEquals(303, opened.statusCode());
        assertTrue(location(opened).startsWith("/invoices/"), location(opened));
        var several = OFFICE.get("search?q=larchwick");
        assertEquals(200, several.statusCode());
        assertTrue(text(several).contains("Results for “larchwick”"), text(several));
        assertTrue(text(OFFICE.get("search?q=qzxvkw")).contains("Nothing found for “qzxvkw”"));
        assertTrue(text(OFFICE.get("search")).contains("Type a name, phone number"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "%",
                "_",
                "\\",
                "'",
                "\"><script>",
                "' or 1=1 --",
                "{x}",
                "999999999",
                "9999999999999999999",
                "(((((((",
                "＃7"
            })
    void what_nothing_is_called_finds_nothing_and_breaks_nothing(String typed) {
        var answer = asked(typed);
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(page(answer).select("script").isEmpty());
        assertTrue(page(answer).select("[role=option]").size() < 10, answer.body());
    }

    @Test
    void a_text_that_is_too_long_is_refused_by_name() {
        assertEquals(422, asked("a".repeat(201)).statusCode());
    }

    @Test
    void technicians_are_shown_no_search() {
        Visitor technician = Visitor.signedIn(DEMO, "ivy", DEMO.passwordOf("ivy"));
        assertTrue(page(technician.get("sheets")).select("#find").isEmpty());
    }
}
