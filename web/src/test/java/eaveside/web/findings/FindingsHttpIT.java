package eaveside.web.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class FindingsHttpIT {
    private final Visitor office = Visitor.office();

    @BeforeAll
    static void arrange() {
        SiteToQuote.shared();
    }

    /** Another finding like the one of the site to quote. */
    private static String finding() {
        String id = UUID.randomUUID().toString();
        try (var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.prepareStatement(
                        "insert into finding (id, type_code, severity_code, visit_id, customer_id, site_id, note,"
                                + " customer_notified, opened_by, opened_at, fingerprint) select ?::uuid, type_code,"
                                + " severity_code, visit_id, customer_id, site_id, note, customer_notified, opened_by,"
                                + " opened_at, fingerprint from finding where id = ?::uuid")) {
            statement.setString(1, id);
            statement.setString(2, SiteToQuote.FINDING);
            statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return id;
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    @Test
    void the_list_is_a_file_as_well() {
        String link = Visitor.page(office.get("findings?q=alder"))
                .select("a.button[href*=.csv]")
                .attr("href");

        var file = office.get(link.substring(1));

        assertEquals(200, file.statusCode());
        assertTrue(file.headers().firstValue("content-type").orElse("").startsWith("text/csv"));
        assertTrue(file.body().contains("Thick along the north eaves"), file.body());
        assertEquals(200, office.get("findings/" + SiteToQuote.FINDING).statusCode());
        assertEquals(404, office.get("findings/no-such-file.csv").statusCode());
    }

    @Test
    void each_action_is_recorded_once_with_its_line_on_the_audit_log() {
        String id = finding();
        String here = "findings/" + id;
        Map<String, String> notice = office.form(here, "/" + here + "/notice");
        notice.put("sentTo", "by hand");
        assertEquals(303, office.post(here + "/notice", notice).statusCode());
        assertEquals(303, office.post(here + "/notice", notice).statusCode(), "the same again is a retry");
        notice.put("sentTo", "by mail");
        assertEquals(409, office.post(here + "/notice", notice).statusCode(), "one id, two contents");
        assertEquals("1", Visitor.value("select count(*) from finding_action where finding_id = ?::uuid", id));
        assertEquals(
                "1",
                Visitor.value(
                        "select count(*) from audit_event where outcome = 'DONE' and action = 'finding.act' and subject = ?",
                        id));

        Map<String, String> referral = office.form(here, "/" + here + "/referral");
        referral.put("trade", "roofer");
        var refused = office.post(here + "/referral", referral);
        assertEquals(422, refused.statusCode());
        var page = Visitor.page(refused);
        assertEquals("roofer", page.select("#trade").attr("value"), "what was typed is still there");
        assertEquals(1, page.select(".errors a[href=#referredTo]").size());
        assertTrue(
                page.select(".errors").text().contains("Referred to is required"),
                page.select(".errors").text());
        assertFalse(page.select("#sentTo").attr("value").isEmpty(), "the other forms stay filled in");

        Map<String, String> close = office.form(here, "/" + here + "/close");
        close.put("reason", "Mended");
        assertEquals(303, office.post(here + "/close", close).statusCode());
        assertTrue(Visitor.text(office.get("findings?show=CLOSED")).contains("Closed"));
        assertEquals(
                1,
                Visitor.page(office.get("findings?show=CLOSED&q=alder"))
                        .select("main a[href=/" + here + "]")
                        .size());
        assertTrue(Visitor.page(office.get("findings?q=alder"))
                .select("main a[href=/" + here + "]")
                .isEmpty());
    }

    @Test
    void scripts_act_on_findings_by_the_same_records() {
        String id = finding();
        String here = "api/findings/" + id;
        JsonObject before = json(office.getJson(here), 200);
        assertEquals("OPEN", before.getString("status"));
        assertTrue(before.getJsonObject("type").containsKey("code"), before.toString());

        String body = "{\"id\":\"" + UUID.randomUUID() + "\",\"note\":\"Offer a spring clean\"}";
        JsonObject noted = json(office.json("POST", here + "/upsell", body), 200);
        assertEquals(noted, json(office.json("POST", here + "/upsell", body), 200), "the same again is a retry");
        JsonObject action = noted.getJsonArray("actions").getJsonObject(0);
        assertEquals("UPSELL", action.getString("type"));
        assertEquals("Offer a spring clean", action.getJsonObject("action").getString("note"));

        JsonObject refused = json(
                office.json("POST", here + "/referral", "{\"id\":\"" + UUID.randomUUID() + "\",\"trade\":\"\"}"), 400);
        assertTrue(refused.getJsonArray("fields").toString().contains("referredTo"), refused.toString());
        body = "{\"id\":\"" + UUID.randomUUID() + "\",\"reason\":\"Painted\"}";
        assertEquals(
                "CLOSED",
                json(office.json("POST", here + "/closing", body), 200).getString("status"));
        assertEquals(200, office.json("POST", here + "/closing", body).statusCode(), "a retry");
        assertEquals(
                404,
                office.json(
                                "POST",
                                "api/findings/" + UUID.randomUUID() + "/closing",
                                body.replaceFirst("[0-9a-f-]{36}", "" + UUID.randomUUID()))
                        .statusCode());
    }

    @Test
    void the_list_is_filtered_and_an_unknown_filter_is_refused_by_its_field() {
        String id = finding();
        String customer = Visitor.value("select customer_id from finding where id = ?::uuid", id);
        assertTrue(office.getJson("api/findings?customer=" + customer).body().contains(id));
        assertFalse(office.getJson("api/findings?status=CLOSED&customer=" + customer)
                .body()
                .contains(id));
        assertEquals(
                422,
                office.getJson("api/findings?customer=" + UUID.randomUUID()).statusCode());
        for (String wrong : new String[] {"status=PENDING", "after=soon"}) {
            JsonObject refused = json(office.getJson("api/findings?" + wrong), 400);
            assertEquals(
                    "[\"" + wrong.split("=")[0] + "\"]",
                    refused.getJsonArray("fields").toString());
        }
    }
}
