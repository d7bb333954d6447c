package eaveside.web.overview;

import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** The owner's first page over months of a company's business: every figure is that of the report or list that it opens. */
@LooksAtDemo
class OverviewHttpIT {
    private static final Server DEMO = Server.demo();
    private static final Visitor OWNER = Visitor.signedIn(DEMO, "edda", DEMO.passwordOf("edda"));

    private static Document shown(String query) {
        var answer = OWNER.get("overview" + query);
        assertEquals(200, answer.statusCode(), text(answer));
        return page(answer);
    }

    private static BigDecimal amount(String text) {
        return new BigDecimal(text.replaceAll("[$,]", "").replace('−', '-'));
    }

    private static BigDecimal figure(Document page, String label) {
        return amount(page.select(".glance > div:has(dt:containsOwn(" + label + ")) dd > a")
                .text());
    }

    private static YearMonth lastMonth() {
        return YearMonth.from(LocalDate.parse(Visitor.value(DEMO, "select max(posting_date)::text from document")))
                .minusMonths(1);
    }

    @Test
    void revenue_and_margin_are_those_of_the_margin_report() {
        YearMonth month = lastMonth();
        Document overview = shown("?month=" + month);
        Document report = page(OWNER.get("margins?from=" + month.atDay(1) + "&to=" + month.atEndOfMonth()));
        List<String> total =
                report.select("tr:has(th:containsOwn(All lines)) td").eachText();
        assertEquals(amount(total.getFirst()), figure(overview, "Revenue"));
        assertEquals(amount(total.get(5)), figure(overview, "Margin"));
    }

    @Test
    void what_each_figure_opens_adds_up_to_it() {
        Document overview = shown("?month=" + lastMonth());
        String opens = overview.select(".glance > div:has(dt:containsOwn(Revenue)) dd > a")
                .attr("href");
        String sum = Visitor.value(
                DEMO,
                "select (-sum(e.amount))::numeric(19,2)::text from money_entry e join document d on d.id = e.document_id"
                        + " join account a on a.code = e.account_code where a.role = 'REVENUE' and d.posting_date between '"
                        + lastMonth().atDay(1) + "' and '" + lastMonth().atEndOfMonth() + "'");
        assertEquals(new BigDecimal(sum), figure(overview, "Revenue"));
        assertEquals(200, OWNER.get(opens.substring(1)).statusCode());
        assertEquals(
                amount(
                        Visitor.value(
                                DEMO,
                                "select coalesce(sum(open), 0)::numeric(19,2)::text from invoice where open > 0 and due_date < current_date")),
                figure(shown(""), "Past due"));
    }

    @Test
    void cash_in_is_what_was_paid_less_what_was_taken_back() {
        YearMonth month = lastMonth();
        String sum = Visitor.value(
                DEMO,
                "select (coalesce((select sum(p.amount) from payment p join document d on d.id = p.id where d.posting_date between '"
                        + month.atDay(1) + "' and '" + month.atEndOfMonth()
                        + "'), 0) - coalesce((select sum(p.amount) from payment p join document r on r.reverses = p.id"
                        + " where r.posting_date between '" + month.atDay(1) + "' and '" + month.atEndOfMonth()
                        + "'), 0))::numeric(19,2)::text");
        assertEquals(new BigDecimal(sum), figure(shown("?month=" + month), "Cash in"));
    }

    @Test
    void the_table_says_what_the_picture_shows_and_a_months_margins_add_up_to_the_reports() {
        YearMonth month = lastMonth();
        Document overview = shown("?month=" + month);
        BigDecimal sum = BigDecimal.ZERO;
        for (Element row : overview.select("main table tbody tr")) {
            sum = sum.add(amount(row.select("td").last().text()));
        }
        BigDecimal off = sum.subtract(figure(overview, "Margin")).abs();
        assertTrue(off.compareTo(new BigDecimal("3")) < 0, "four rounded figures, off by " + off);
        assertEquals(
                overview.select("main table tbody tr").size(),
                overview.select("svg .strip-name").size(),
                "a strip for each row");
        assertTrue(overview.select("svg title").text().contains("margin $"), "the picture in words");
    }

    @Test
    void what_changed_is_told_in_amounts_that_add_up() {
        for (Element told : shown("?month=" + lastMonth()).select("section.panel p:has(strong)")) {
            String said = told.select("strong").text();
            BigDecimal change = amount(said.replaceAll(".* earned (\\$[0-9,.]+) .*", "$1"));
            change = said.contains(" less:") ? change.negate() : change;
            BigDecimal sum = BigDecimal.ZERO;
            var parts = java.util.regex.Pattern.compile("([−+])\\u2060?(\\$[0-9,.]*[0-9])")
                    .matcher(told.ownText());
            while (parts.find()) {
                sum = sum.add(
                        parts.group(1).equals("+")
                                ? amount(parts.group(2))
                                : amount(parts.group(2)).negate());
            }
            assertEquals(change, sum, told.text());
        }
    }

    @Test
    void quarters_and_nonsense_are_shown_too() {
        assertTrue(text(OWNER.get("overview?span=quarter")).contains("Q"));
        for (String odd :
                List.of("?month=soon", "?month=9999999-01", "?month=0001-01", "?span=year", "?month=2026-13")) {
            shown(odd);
        }
    }

    @Test
    void the_office_is_not_led_to_it() {
        Visitor office = Visitor.signedIn(DEMO, "linus", DEMO.passwordOf("linus"));
        assertTrue(
                page(office.get("worklist")).select("#menu a[href=/overview]").isEmpty());
    }
}
