package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import jakarta.json.JsonObject;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is done with a thing asks for little, often for a reason alone, and its form stands on the thing's page beside others:
 * refused, it comes back open, as it was typed, and the error leads to its field and no other form's.
 */
class RefusedActionsHttpIT {
    private static final Visitor OWNER = Visitor.owner();
    private static final String TOO_LONG = "much too long ".repeat(36).strip();

    /** The ids of what there is to do something with, by the word that stands for each in an address. */
    private static final Map<String, String> THINGS = new HashMap<>();

    private static CrewAtWork at;

    @BeforeAll
    static void arrange() {
        at = CrewAtWork.shared();
        at.site().published("Prices for refused actions");
        THINGS.put("visit", at.visit());
        THINGS.put("undecided", done());
        THINGS.put("done", settled());
        THINGS.put("closed", closed());
        THINGS.put("quote", quote());
        THINGS.put("finding", SiteToQuote.FINDING);
        THINGS.put("receipt", receipt());
        THINGS.put("journal", journal());
        THINGS.put("user", user("refused.edit"));
        String customer = customer("To the Good");
        THINGS.put("customer", customer);
        THINGS.put("payment", payment(customer));
        THINGS.put("invoice", draft(customer));
        made(200, "api/invoices/" + THINGS.get("invoice") + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}");
        THINGS.put("draft", draft(customer));
    }

    private static void made(int status, String path, String body) {
        HttpResponse<String> answer = at.office().json("POST", path, body);
        assertEquals(status, answer.statusCode(), answer.body());
    }

    private static String done() {
        String visit = at.visit();
        at.signedOff(visit);
        return visit;
    }

    private static String settled() {
        String visit = done();
        at.settled(visit);
        return visit;
    }

    private static String closed() {
        String visit = settled();
        made(
                201,
                "api/visits/" + visit + "/closing",
                "{\"id\": \"%s\", \"reason\": \"A promise of last year\"}".formatted(CrewAtWork.id()));
        return visit;
    }

    private static String quote() {
        String id = CrewAtWork.id();
        made(201, "api/quotes", """
                {"id": "%s", "customer": "%s", "site": "%s", "scope": {"validUntil": "%s", "lines": [
                  {"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "48", "unit": "H87"}}]}}
                """.formatted(
                        id,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.SITE,
                        LocalDate.parse(SiteToQuote.today()).plusDays(30),
                        CrewAtWork.id(),
                        SiteToQuote.PANEL,
                        SiteToQuote.ARRAY));
        return id;
    }

    private static String receipt() {
        String id = CrewAtWork.id();
        made(201, "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co", "lines": [
                  {"item": "%s", "lot": "%s", "quantity": {"value": "64", "unit": "OZA"}, "cost": {"amount": "32.00", "currency": "USD"}}]}
                """.formatted(
                        id, SiteToQuote.today(), CrewAtWork.VAN, CrewAtWork.SOAP, CrewAtWork.id()));
        return id;
    }

    private static String journal() {
        Map<String, String> form = OWNER.form("books/journal", "/books/journal");
        form.put("type", "EXPENSE");
        form.put("date", SiteToQuote.today());
        form.put("summary", "Leaflets");
        form.put("line-0-account", "6000");
        form.put("line-0-debit", "12.00");
        form.put("line-1-account", "1000");
        form.put("line-1-credit", "12.00");
        HttpResponse<String> posted = OWNER.post("books/journal", form);
        assertEquals(303, posted.statusCode(), () -> Visitor.text(posted));
        return form.get("id");
    }

    private static String user(String username) {
        OWNER.hire("Somebody to edit", username, "OFFICE");
        return Visitor.value("select id from app_user where username = ?", username);
    }

    private static String customer(String name) {
        String id = CrewAtWork.id();
        HttpResponse<String> answer = at.office()
                .json(
                        "PUT",
                        "api/customers/" + id,
                        "{\"name\": \"" + name + "\", \"type\": \"HOUSEHOLD\", \"paymentTermDays\": 14,"
                                + " \"address\": {\"country\": \"US\"}}");
        assertEquals(200, answer.statusCode(), answer.body());
        return id;
    }

    private static String payment(String customer) {
        String id = CrewAtWork.id();
        made(201, "api/payments", """
                {"id": "%s", "customer": "%s", "amount": {"amount": "30.00", "currency": "USD"}, "method": "CHECK",
                 "keepAsCredit": true}
                """.formatted(id, customer));
        return id;
    }

    private static String draft(String customer) {
        String id = CrewAtWork.id();
        made(201, "api/invoices", """
                {"id": "%s", "customer": "%s", "serviceDate": "%s", "lines": [
                  {"id": "%s", "serviceLine": "%s", "description": "Moss off the steps", "taxCode": "Q-STANDARD",
                   "quantity": {"value": "1", "unit": "HUR"},
                   "price": {"gross": {"amount": "40.00", "currency": "USD", "per": {"value": "1", "unit": "HUR"}},
                             "discount": "0"}}]}
                """.formatted(
                        id, customer, SiteToQuote.today(), CrewAtWork.id(), SiteToQuote.SOLAR_LINE));
        return id;
    }

    private static String filled(String address) {
        String path = address;
        for (var thing : THINGS.entrySet()) {
            path = path.replace("{" + thing.getKey() + "}", thing.getValue());
        }
        return path;
    }

    /** The columns: the page, where its form posts, what is left empty in it, and where the errors lead. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "vehicles/new | /vehicles | name | name",
                "stock/locations/new | /stock/locations | name | name",
                "settings/users/{user} | /settings/users/{user} | name | name",
                "settings/users/{user} | /settings/users/{user}/tokens | | days",
                "visits/{visit} | /visits/{visit}/reschedule | | date",
                "visits/{visit} | /visits/{visit}/cancel | reason | reason",
                "visits/{done} | /visits/{done}/close | reason | reason",
                "visits/{closed} | /visits/{closed}/close/reverse | reason | reason",
                "visits/{done} | /visits/{done}/sheet/reverse | reason | reason",
                "quotes/{quote} | /quotes/{quote}/decline | reason | reason",
                "invoices/{draft}/issue | /invoices/{draft}/issue | | date",
                "invoices/{draft}/issue | /invoices/{draft}/issue | applyCredit | date",
                "invoices/{invoice}/apply | /invoices/{invoice}/apply | | amount date",
                "invoices/{invoice}/credit | /invoices/{invoice}/credit | | date",
                "invoices/{invoice}/credit | /invoices/{invoice}/credit | reason | date reason",
                "invoices/account/{customer} | /invoices/account/{customer}/refund | | amount date",
                "payments/{payment} | /payments/{payment}/reverse | reason | reason",
                "documents/{receipt} | /documents/{receipt}/reverse | reason | reason",
                "documents/{journal} | /documents/{journal}/reverse | reason | reason",
                "findings/{finding} | /findings/{finding}/notice | sentTo | sentTo",
                "findings/{finding} | /findings/{finding}/upsell | note | note",
                "findings/{finding} | /findings/{finding}/referral | referredTo | referredTo",
                "findings/{finding} | /findings/{finding}/referral | trade | trade",
                "findings/{finding} | /findings/{finding}/close | reason | reason"
            })
    void a_refused_action_comes_back_as_it_was_sent(String page, String action, String empty, String wrong) {
        HttpResponse<String> shown = OWNER.get(filled(page));
        Map<String, String> sent = SentForm.nonsense(SentForm.of(shown, filled(action)));
        for (String name : empty == null ? List.<String>of() : List.of(empty.split(" "))) {
            // A browser sends no box that is not ticked.
            if (sent.remove(name) != null && !List.of("crew", "applyCredit").contains(name)) {
                sent.put(name, "");
            }
        }

        cameBack(OWNER, shown, filled(action), sent, List.of(wrong.split(" ")));
    }

    private static void cameBack(
            Visitor who, HttpResponse<String> shown, String action, Map<String, String> sent, List<String> wrong) {
        HttpResponse<String> answer = who.post(action.substring(1), sent);

        assertEquals(422, answer.statusCode(), action + ": " + Visitor.text(answer));
        Document page = Visitor.page(answer);
        Element form = page.selectFirst("main form[method=post][action=" + action + "]");
        assertNotNull(form, action);
        Map<String, String> back = SentForm.fields(form);
        Map<String, String> shownAgain = new TreeMap<>(sent);
        for (Element password : form.select("input[type=password]")) {
            assertEquals("", password.val(), "no page says a password");
            shownAgain.put(password.attr("name"), "");
        }
        assertEquals(Map.of(), SentForm.lost(shownAgain, back), action);
        assertEquals(new TreeSet<>(sent.keySet()), new TreeSet<>(back.keySet()), "nothing is ticked that was not");
        assertEquals(List.of(), SentForm.astray(page), action);
        assertEquals(
                wrong.stream().map(name -> "#" + name).sorted().toList(),
                page.select(".errors a").eachAttr("href").stream().sorted().toList());
        for (String name : wrong) {
            Element field = form.getElementById(name);
            assertNotNull(field, name + " is a field of another form");
            Element error = page.getElementById(field.attr("aria-describedby"));
            assertTrue(error != null && error.hasClass("error"), name + " is not said to be wrong where it stands");
        }
        for (Element opened : page.select("main details[open]")) {
            assertTrue(
                    form.parents().contains(opened) || open(Visitor.page(shown)).contains(summary(opened)),
                    summary(opened) + " is opened, and nothing was asked for there");
        }
        for (Element around : form.parents()) {
            assertTrue(!around.tagName().equals("details") || around.hasAttr("open"), "the error is hidden");
        }
    }

    private static List<String> open(Document page) {
        return page.select("main details[open]").stream()
                .map(RefusedActionsHttpIT::summary)
                .toList();
    }

    private static String summary(Element details) {
        return details.select("> summary").text();
    }

    @Test
    void a_move_without_a_crew_keeps_its_day_and_its_reason() {
        HttpResponse<String> shown = OWNER.get(filled("visits/{visit}"));
        String action = filled("/visits/{visit}/reschedule");
        Map<String, String> sent = SentForm.nonsense(SentForm.of(shown, action));
        sent.remove("crew");
        sent.put("date", LocalDate.parse(SiteToQuote.today()).plusDays(3).toString());

        cameBack(OWNER, shown, action, sent, List.of("crew"));
    }

    @Test
    void an_acceptance_that_says_too_much_keeps_what_it_says() {
        HttpResponse<String> shown = OWNER.get(filled("quotes/{quote}"));
        Map<String, String> sent = Visitor.form(shown, filled("/quotes/{quote}/accept"));
        sent.put("acceptedBy", TOO_LONG);

        cameBack(OWNER, shown, filled("/quotes/{quote}/accept"), sent, List.of("acceptedBy"));
    }

    @Test
    void a_decision_with_too_long_a_note_keeps_the_note_and_marks_it() {
        JsonObject scopeChange =
                at.read(filled("{undecided}")).getJsonArray("scopeChanges").getJsonObject(0);
        String action = filled("/visits/{undecided}/scope-changes/") + scopeChange.getString("id");
        HttpResponse<String> shown = OWNER.get(filled("visits/{undecided}"));
        Map<String, String> sent = Visitor.form(shown, action);
        sent.put("note", TOO_LONG);
        Map<String, String> decided = new HashMap<>(sent);
        decided.put("decision", scopeChange.getString("type").equals("EXTRA") ? "NO_CHARGE" : "CANCEL");

        HttpResponse<String> answer = OWNER.post(action.substring(1), decided);

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Element form = SentForm.of(answer, action);
        assertEquals(sent, SentForm.fields(form));
        assertEquals(List.of(), SentForm.astray(Visitor.page(answer)));
        assertEquals(List.of("#note"), Visitor.page(answer).select(".errors a").eachAttr("href"));
        assertEquals("true", form.select("#note").attr("aria-invalid"));
        assertEquals(1, Visitor.page(answer).select("#note").size(), "the other scope change has a note of its own");
        assertFalse(Visitor.text(answer).contains("Saved now"), "nobody has decided meanwhile");
    }

    /** A publication asks for nothing: what is wrong is wrong with the draft, and the answer leads to where it is mended. */
    @Test
    void a_refused_publication_leads_to_the_draft() {
        String book = CrewAtWork.id();
        HttpResponse<String> saved = OWNER.json("PUT", "api/price-books/" + book, """
                {"list": {"name": "Prices of nothing", "from": "%s", "sharedReduction": "0",
                          "visitMinimum": {"amount": "0", "currency": "USD"}}}
                """.formatted(SiteToQuote.today()));
        assertEquals(200, saved.statusCode(), saved.body());
        String version = at.site().version(book);

        HttpResponse<String> answer = OWNER.post("prices/" + book + "/publish", Map.of("version", version));

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Document page = Visitor.page(answer);
        assertEquals(List.of("#prices"), page.select(".errors a").eachAttr("href"));
        assertEquals("/prices/" + book + "/edit", page.select("main a#prices").attr("href"));
        assertEquals(Map.of("version", version), SentForm.fields(SentForm.of(answer, "/prices/" + book + "/publish")));
    }

    @Test
    void a_publication_for_a_day_that_is_priced_already_leads_to_the_day() {
        String yesterday = LocalDate.parse(SiteToQuote.today()).minusDays(1).toString();
        String first = at.site().draft("Prices of yesterday", yesterday);
        OWNER.post("prices/" + first + "/publish", Map.of("version", at.site().version(first)));
        String late = at.site().draft("Other prices of yesterday", yesterday);

        HttpResponse<String> answer = OWNER.post(
                "prices/" + late + "/publish", Map.of("version", at.site().version(late)));

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Document page = Visitor.page(answer);
        assertEquals(List.of("#from"), page.select(".errors a").eachAttr("href"));
        assertEquals(1, page.select("#from").size());
        assertTrue(page.select(".errors").text().contains("another price book was in force"), Visitor.text(answer));
        assertEquals(1, page.select("main a[href=/prices/" + late + "/edit]").size(), "where its day is mended");
    }

    @Test
    void a_refused_merge_leads_to_the_customer_that_it_is_about() {
        String from = customer("Twice the same");
        String into = customer("Once only");
        String other = customer("Once more");
        String here = "customers/" + from + "/merge";
        HttpResponse<String> itself = OWNER.post(here, Map.of("into", from));
        assertEquals(422, itself.statusCode(), Visitor.text(itself));
        assertEquals(List.of(), leadingNowhere(itself));
        assertEquals(from, SentForm.fields(SentForm.of(itself, "/" + here)).get("into"), "who was chosen");

        assertEquals(303, OWNER.post(here, Map.of("into", into)).statusCode());
        HttpResponse<String> again = OWNER.post(here, Map.of("into", other));
        assertEquals(409, again.statusCode(), Visitor.text(again));
        assertEquals(List.of(), leadingNowhere(again));
        HttpResponse<String> gone = OWNER.post("customers/" + other + "/merge", Map.of("into", from));
        assertEquals(409, gone.statusCode(), Visitor.text(gone));
        assertEquals(List.of(), leadingNowhere(gone));
    }

    /** Errors without a link, or with one to what the page does not show. */
    private static List<String> leadingNowhere(HttpResponse<String> answer) {
        Document page = Visitor.page(answer);
        assertFalse(page.select(".errors li").isEmpty(), Visitor.text(answer));
        return page.select(".errors li").stream()
                .filter(error -> {
                    Element link = error.selectFirst("a[href^=#]");
                    Element there = link == null
                            ? null
                            : page.getElementById(link.attr("href").substring(1));
                    return there == null || there.attr("type").equals("hidden");
                })
                .map(Element::html)
                .toList();
    }

    @Test
    void a_refused_change_of_the_password_says_what_is_wrong_and_sends_no_password_back() {
        String old = "five plain words for refusals";
        Visitor somebody = signedIn("refused.password", old);

        passwordRefused(
                somebody, "not the old password at all", "quite another long one", "quite another long one", "old");
        passwordRefused(somebody, old, "quite another long one", "quite a different long one", "again");
        passwordRefused(somebody, old, "short", "short", "wanted");
        passwordRefused(somebody, old, "quite another long one", "", "again");

        assertEquals(
                303,
                somebody.post("account", password(old, "quite another long one", "quite another long one"))
                        .statusCode(),
                "once all is right");
    }

    private static Visitor signedIn(String username, String password) {
        Map<String, String> form = OWNER.form("settings/users/new", "/settings/users");
        form.put("name", "Somebody who forgets");
        form.put("username", username);
        form.put("role", "OFFICE");
        form.put("password", password);
        assertEquals(password, Visitor.secret(OWNER.post("settings/users", form)));
        return Visitor.signedIn(username, password);
    }

    private static Map<String, String> password(String old, String wanted, String again) {
        return Map.of("old", old, "wanted", wanted, "again", again);
    }

    private static void passwordRefused(Visitor who, String old, String wanted, String again, String wrong) {
        HttpResponse<String> answer = who.post("account", password(old, wanted, again));

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Document page = Visitor.page(answer);
        assertEquals(List.of("#" + wrong), page.select(".errors a").eachAttr("href"));
        assertEquals(List.of(), SentForm.astray(page));
        assertEquals("true", page.select("#" + wrong).attr("aria-invalid"));
        for (String typed :
                Stream.of(old, wanted, again).filter(text -> !text.isEmpty()).toList()) {
            assertFalse(page.select("main form").outerHtml().contains("\"" + typed + "\""), "a password comes back");
            assertFalse(typed.length() > 10 && answer.body().contains(typed), "a password comes back");
        }
        assertEquals(
                List.of("", "", ""),
                page.select("main form input[type=password]").eachAttr("value"));
    }

    @Test
    void a_refused_job_sheet_comes_back_as_it_was_sent() {
        String visit = at.visit();
        String action = "/sheets/" + visit;
        Map<String, String> sent = SentForm.nonsense(SentForm.of(at.technician().get("sheets/" + visit), action));
        assertTrue(
                sent.keySet()
                        .containsAll(List.of("line-0-done", "extra-0-quantity", "reading-0-volume", "count-0-found")),
                "every section of the sheet is filled in: " + sent.keySet());

        HttpResponse<String> answer = at.technician().post("sheets/" + visit, sent);

        assertEquals(422, answer.statusCode(), Visitor.text(answer));
        Element form = SentForm.of(answer, action);
        assertEquals(Map.of(), SentForm.lost(sent, SentForm.fields(form)));
        for (String field : List.of("extra-0-surface", "count-0-item")) {
            assertEquals(
                    sent.get(field),
                    Visitor.value(
                            "select f.value from sent_sheet_field f join sent_sheet s on s.id = f.sent_sheet_id"
                                    + " where s.visit_id = ?::uuid and f.name = ?",
                            visit,
                            field),
                    "what is kept for the office is as it was sent too");
        }
        assertEquals(List.of(), SentForm.astray(Visitor.page(answer)));
        assertEquals(
                List.of(),
                Visitor.page(answer).select(".errors a").eachAttr("href").stream()
                        .filter(link -> form.getElementById(link.substring(1)).parents().stream()
                                .anyMatch(around -> around.tagName().equals("details") && !around.hasAttr("open")))
                        .toList(),
                "errors in sections that are shut");
    }
}
