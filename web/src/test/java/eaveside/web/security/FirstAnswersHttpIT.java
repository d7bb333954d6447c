package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The same request again gets the first answer, also where its thing has been changed since; on the real server. */
class FirstAnswersHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();
    private final Visitor owner = Visitor.owner();

    private static String kept() {
        return Visitor.value("select count(*)::text from kept_answer");
    }

    private static void same(HttpResponse<String> first, HttpResponse<String> again) {
        assertEquals(first.statusCode(), again.statusCode(), again.body());
        assertEquals(first.body(), again.body());
        assertEquals(first.headers().firstValue("location"), again.headers().firstValue("location"));
        assertEquals(first.headers().firstValue("content-type"), again.headers().firstValue("content-type"));
    }

    private static String shed(String id, int version, String name) {
        return "{\"id\": \"%s\", \"version\": %d, \"name\": \"%s of %s\", \"type\": \"STORE\", \"active\": false}"
                .formatted(id, version, name, id);
    }

    @Test
    void an_edit_that_was_overtaken_is_answered_as_it_was_and_undoes_nothing() {
        String id = UUID.randomUUID().toString();
        String path = "api/stock/locations/" + id;
        var made = owner.json("PUT", path, shed(id, 0, "Shed 1"));
        assertEquals(200, made.statusCode(), made.body());
        var edited = owner.json("PUT", path, shed(id, 1, "Shed 2"));
        assertEquals(200, owner.json("PUT", path, shed(id, 2, "Shed 3")).statusCode());

        same(made, owner.json("PUT", path, shed(id, 0, "Shed 1")));
        same(edited, owner.json("PUT", path, shed(id, 1, "Shed 2")));
        assertTrue(owner.getJson(path).body().contains("Shed 3"), "the last edit stands");
        assertEquals(409, owner.json("PUT", path, shed(id, 1, "Shed 4")).statusCode(), "other content is no retry");
        assertEquals(
                409, office.json("PUT", path, shed(id, 1, "Shed 2")).statusCode(), "nor is another user's request");
    }

    @Test
    void a_draft_is_answered_as_it_was_after_its_invoice_was_issued() {
        String id = UUID.randomUUID().toString();
        String draft =
                """
                {"id": "%s", "version": 0, "customer": "%s", "serviceDate": "%s", "lines": [
                  {"id": "%s", "serviceLine": "%s", "description": "Moss off the steps",
                   "quantity": {"value": "1", "unit": "HUR"},
                   "price": {"gross": {"amount": "40.00", "currency": "USD", "per": {"value": "1", "unit": "HUR"}}, "discount": "0"},
                   "taxCode": "Q-STANDARD"}]}
                """.formatted(id, SiteToQuote.CUSTOMER, SiteToQuote.today(), UUID.randomUUID(), SiteToQuote.SOLAR_LINE);
        var first = office.json("POST", "api/invoices", draft);
        assertEquals(201, first.statusCode(), first.body());
        assertEquals(
                200,
                office.json("POST", "api/invoices/" + id + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}")
                        .statusCode());
        same(first, office.json("POST", "api/invoices", draft));
        assertEquals(
                409,
                office.json("POST", "api/invoices", draft.replace("40.00", "41.00"))
                        .statusCode());
    }

    @Test
    void a_visit_that_was_moved_twice_answers_the_first_move_again_and_stays_where_it_is() {
        String visit = at.visit();
        Map<String, String> move = new HashMap<>(
                Map.of("version", "1", "date", SiteToQuote.today(), "crew", CrewAtWork.TECHNICIAN, "reason", "Rain"));
        String path = "visits/" + visit + "/reschedule";
        move.put("date", LocalDate.parse(SiteToQuote.today()).plusDays(3).toString());
        var first = office.post(path, move);
        assertEquals(303, first.statusCode(), first.body());
        Map<String, String> later = new HashMap<>(move);
        later.put("version", "2");
        later.put("date", LocalDate.parse(SiteToQuote.today()).plusDays(9).toString());
        assertEquals(303, office.post(path, later).statusCode());

        same(first, office.post(path, move));
        assertEquals(later.get("date"), at.read(visit).getString("date"));
    }

    /** What can be done again is done again, and not answered by what was once true. */
    @Test
    void a_setting_that_is_set_to_and_fro_is_as_it_was_set_last() {
        for (String reads : List.of("yes", "", "yes", "")) {
            Map<String, String> form = owner.form("settings/users/office-rights", "/settings/users/office-rights");
            form.remove("readsBooks");
            if (!reads.isEmpty()) {
                form.put("readsBooks", reads);
            }
            assertEquals(303, owner.post("settings/users/office-rights", form).statusCode());
            assertEquals(reads.isEmpty() ? 403 : 200, office.get("books").statusCode());
        }
    }

    @Test
    void a_reorder_point_that_is_raised_lowered_and_raised_again_is_raised() {
        String item = UUID.randomUUID().toString();
        String path = "api/stock/items/" + item;
        assertEquals(
                200,
                owner.json("PUT", path, """
                        {"id": "%s", "name": "Twice %s", "code": "TW-%s", "type": "PLAIN", "baseUnit": "H87"}
                        """.formatted(item, item, item.substring(0, 8)))
                        .statusCode());
        String point = "reorderPoint-" + CrewAtWork.VAN;
        for (String least : List.of("5", "10", "5", "10")) {
            Map<String, String> form = owner.form("stock/items/" + item + "/edit", "/stock/items");
            form.put(point, least);
            assertEquals(303, owner.post("stock/items", form).statusCode());
            assertEquals(
                    least,
                    owner.form("stock/items/" + item + "/edit", "/stock/items").get(point));
        }
    }

    /** What does nothing is asked anew, what is refused is tried anew, and no password is looked at for this. */
    @Test
    void nothing_is_kept_of_what_did_nothing_or_is_secret() {
        String id = UUID.randomUUID().toString();
        String path = "api/stock/locations/" + id;
        String before = kept();
        assertEquals(404, owner.json("PUT", path, shed(id, 7, "Shed 1")).statusCode());
        Map<String, String> hire = owner.form("settings/users/new", "/settings/users");
        hire.putAll(Map.of("name", "Kept Nowhere", "username", "kept.nowhere", "role", "TECHNICIAN"));
        var hired = owner.post("settings/users", hire);
        assertEquals(200, hired.statusCode(), hired.body());
        assertEquals(before, kept());
        Map<String, String> secret = owner.form("stock/locations/new", "/stock/locations");
        secret.putAll(Map.of("name", "Kept Nowhere", "type", "STORE", "doorToken", "4711"));
        assertEquals(303, owner.post("stock/locations", secret).statusCode());
        assertEquals(before, kept(), "a request that says a secret");
        Map<String, String> hidden = owner.form("stock/locations/new", "/stock/locations");
        hidden.putAll(Map.of("name", "Kept nowhere either", "type", "STORE", "p[a]ss", "4711"));
        assertEquals(303, owner.post("stock/locations", hidden).statusCode());
        assertEquals(before, kept(), "nor where a name is encoded, for it may be any");
        assertEquals(200, owner.json("PUT", path, shed(id, 0, "Shed 1")).statusCode());
        String one = kept();
        assertNotEquals(before, one);
        assertEquals(200, owner.json("PUT", path, shed(id, 1, "Shed 1")).statusCode(), "as it is stored already");
        assertEquals(one, kept());
        assertEquals(
                200,
                owner.json("PUT", path, shed(id, 1, "Password, secret, token")).statusCode());
        assertNotEquals(one, kept(), "a name is no secret");
    }
}
