package eaveside.web.worklist;

import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Ids;
import eaveside.web.invoices.VisitToBill;
import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** One job on its way over the worklist: each step takes it off one list and puts it on the next. */
class WorklistHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();
    private final Visitor office = Visitor.office();

    private List<Element> rows(String type) {
        return page(office.get("worklist?type=" + type + "&show=5000")).select(".due-list tbody tr");
    }

    private boolean isOn(String type, String thing) {
        return rows(type).stream()
                .anyMatch(row -> !row.select("input[value*=:" + thing + ":]").isEmpty());
    }

    private Element row(String type, String thing) {
        return rows(type).stream()
                .filter(row -> !row.select("input[value*=:" + thing + ":]").isEmpty())
                .findFirst()
                .orElseThrow();
    }

    private long counted() {
        String count = page(office.get("settings"))
                .select("#menu a[href=/worklist] .count")
                .text();
        return count.isEmpty() ? 0 : Long.parseLong(count.replaceAll("[^0-9]", ""));
    }

    private static String key(String type, String thing) {
        return type + ":" + thing + ":" + thing;
    }

    private String billable() {
        at.published("Prices of the worklist");
        String visit = VisitToBill.scheduled(at, VisitToBill.accepted(at));
        VisitToBill.signed(at, visit, "");
        new VisitToBill(at, "", visit).give();
        return visit;
    }

    @Test
    void a_job_goes_from_list_to_list_until_it_is_drafted() {
        at.published("Prices of the worklist");
        String quote = VisitToBill.accepted(at);
        assertTrue(isOn("accepted", quote), "accepted, and no visit carries it out");
        String visit = VisitToBill.scheduled(at, quote);
        assertTrue(!isOn("accepted", quote), "scheduled");

        VisitToBill.signed(at, visit, "Gate code is 4411 now");
        assertTrue(isOn("decide", visit));
        assertTrue(!isOn("bill", visit), "what cannot be billed yet is not offered");
        assertTrue(row("note", visit).text().contains("“Gate code is 4411 now”"));

        new VisitToBill(at, quote, visit).give();
        assertTrue(!isOn("decide", visit));
        Element toBill = row("bill", visit);
        String worth = toBill.select("td.num").text();

        String draft = Ids.next().toString();
        for (int i = 0; i < 2; i++) {
            var billed = office.post(
                    "worklist/bill", Map.of("item", key("BILL", visit), "draft-" + visit, draft, "shown", "bill"));
            assertEquals(303, billed.statusCode(), text(billed));
        }
        assertEquals("1", Visitor.value("select count(*)::text from invoice_draft where visit_id = ?::uuid", visit));
        assertTrue(!isOn("bill", visit) && isOn("draft", draft));
        assertTrue(
                text(office.get("invoices/" + draft)).contains("Subtotal " + worth),
                worth + " in " + text(office.get("invoices/" + draft)));

        assertEquals(
                303,
                office.post("worklist/read", Map.of("item", key("NOTE", visit))).statusCode());
        assertTrue(!isOn("note", visit), "read");
    }

    @Test
    void what_is_put_aside_is_off_the_list_and_its_counts_until_its_day() {
        String visit = billable();
        long before = counted();
        String day = LocalDate.parse(SiteToQuote.today()).plusDays(3).toString();
        for (int i = 0; i < 2; i++) {
            assertEquals(
                    303,
                    office.post(
                                    "worklist/aside",
                                    Map.of("item", key("BILL", visit), "until", day, "note", "Waits for the PO"))
                            .statusCode());
        }
        assertTrue(!isOn("bill", visit));
        assertEquals(before - 1, counted());
        Element aside = page(office.get("worklist/aside"))
                .select("tr:has(input[value*=:" + visit + ":])")
                .first();
        assertTrue(aside != null && aside.text().contains("Waits for the PO"), String.valueOf(aside));
        assertEquals(
                "2",
                Visitor.value(
                        "select count(*)::text from audit_event where action = 'worklist.put-aside' and subject = ?",
                        key("BILL", visit)));

        assertEquals(
                303,
                office.post("worklist/take-up", Map.of("item", key("BILL", visit)))
                        .statusCode());
        assertTrue(isOn("bill", visit));
        assertEquals(before, counted());
    }

    @Test
    void what_is_wrong_is_said_and_leaves_nothing_half_done() {
        String visit = billable();
        String key = key("BILL", visit);
        String today = SiteToQuote.today();
        String far = LocalDate.parse(today).plusDays(367).toString();
        for (Map<String, String> form : List.of(
                Map.of("item", key, "until", today),
                Map.of("item", key, "until", far),
                Map.of("item", key, "until", "soon"),
                Map.of("until", LocalDate.parse(today).plusDays(1).toString()),
                Map.of(
                        "item",
                        "BILL:" + visit,
                        "until",
                        LocalDate.parse(today).plusDays(1).toString()),
                Map.of(
                        "item",
                        key("WORK", visit),
                        "until",
                        LocalDate.parse(today).plusDays(1).toString()),
                Map.of("item", key, "until", LocalDate.parse(today).plusDays(1).toString(), "note", "n".repeat(501)))) {
            var refused = office.post("worklist/aside", form);
            assertEquals(422, refused.statusCode(), form + ": " + text(refused));
            assertTrue(!page(refused).select(".errors li").isEmpty(), form + ": " + text(refused));
        }
        assertEquals(422, office.post("worklist/read", Map.of("item", key)).statusCode());
        assertEquals(422, office.post("worklist/bill", Map.of()).statusCode());
        assertEquals(
                422,
                office.post("worklist/bill", Map.of("item", key("QUOTE", visit)))
                        .statusCode());
        assertTrue(isOn("bill", visit));
        assertEquals(303, office.post("worklist/take-up", Map.of("item", key)).statusCode(), "is there already");
    }

    @Test
    void of_many_visits_those_that_can_be_are_drafted_and_the_others_say_why() {
        String good = billable();
        at.published("Prices of the worklist");
        String open = VisitToBill.scheduled(at, VisitToBill.accepted(at));
        VisitToBill.signed(at, open, "");
        var answer = office.postAll(
                "worklist/bill",
                List.of(
                        Map.entry("item", key("BILL", good)),
                        Map.entry("item", key("BILL", open)),
                        Map.entry("name-" + open, "Alder Lane")));
        assertEquals(422, answer.statusCode(), text(answer));
        assertTrue(text(answer).contains("Alder Lane is not drafted."), text(answer));
        assertTrue(!isOn("bill", good));
        assertEquals("0", Visitor.value("select count(*)::text from invoice_draft where visit_id = ?::uuid", open));
    }

    @Test
    void one_visit_alone_goes_on_to_the_issue_of_its_invoice() {
        String visit = billable();
        String draft = Ids.next().toString();
        var billed = office.post("worklist/bill", Map.of("only", key("BILL", visit), "draft-" + visit, draft));
        assertEquals(303, billed.statusCode(), text(billed));
        assertEquals("/invoices/" + draft + "/issue", Visitor.location(billed));
        assertEquals(200, office.get("invoices/" + draft + "/issue").statusCode());
    }

    @Test
    void the_file_says_what_the_list_says() {
        String visit = billable();
        String worth = row("bill", visit).select("td.num").text().replaceAll("[$,]", "");
        var file = office.get("worklist/list.csv?type=bill");
        assertEquals(200, file.statusCode());
        assertTrue(file.body().contains("due since,type,customer,phone,what,amount"), file.body());
        assertTrue(file.body().contains("," + worth), file.body());
        assertEquals(rows("bill").size(), file.body().strip().split("\r?\n").length - 1, "a line for each row");
    }

    @Test
    void technicians_see_none_of_it() {
        Visitor technician = Visitor.technician();
        assertEquals(403, technician.get("worklist/aside").statusCode());
        assertEquals(403, technician.post("worklist/read", Map.of("item", "x")).statusCode());
    }
}
