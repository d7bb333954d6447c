package eaveside.web.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Types of findings, by page and for scripts. */
class FindingTypesHttpIT {
    private final Visitor office = Visitor.office();

    private Map<String, String> wasps() {
        Map<String, String> form = new HashMap<>(office.form("settings/finding-types/new", "/settings/finding-types"));
        form.put("code", "WASPS");
        form.put("name", "Wasps under the eaves");
        form.put("trade", "pest controller");
        form.put("caution", "Keep windows below shut; follow local codes.");
        return form;
    }

    @Test
    void a_type_is_entered_changed_and_offered_no_longer() {
        assertEquals(303, office.post("settings/finding-types", wasps()).statusCode());
        Map<String, String> form =
                new HashMap<>(office.form("settings/finding-types/WASPS", "/settings/finding-types"));
        assertEquals("pest controller", form.get("trade"));
        form.put("name", "Wasps or hornets");
        form.remove("active");
        assertEquals(303, office.post("settings/finding-types", form).statusCode());
        assertTrue(Visitor.page(office.get("settings/finding-types?q=hornets"))
                .select("tbody tr")
                .text()
                .endsWith("Keep windows below shut; follow local codes. No"));

        // Whoever started from the older version sees both.
        form.put("name", "Hornets");
        var rival = office.post("settings/finding-types", form);
        assertEquals(409, rival.statusCode());
        assertTrue(Visitor.text(rival).contains("Wasps or hornets"), Visitor.text(rival));
        assertEquals("Hornets", Visitor.page(rival).select("#name").attr("value"));
    }

    @Test
    void what_is_wrong_is_marked_and_kept() {
        Map<String, String> form = wasps();
        form.put("code", "wasps!");
        form.put("name", "");
        var refused = office.post("settings/finding-types", form);
        assertEquals(422, refused.statusCode());
        assertEquals(
                List.of(
                        "Code takes capital letters, digits and underscores, 40 at most, a letter first, not 'wasps!'",
                        "Name is required"),
                Visitor.page(refused).select(".errors li").eachText());
        assertEquals(
                "Keep windows below shut; follow local codes.",
                Visitor.page(refused).select("#caution").text());
        assertEquals("wasps!", Visitor.page(refused).select("#code").attr("value"));
        assertEquals(404, office.get("settings/finding-types/NOBODY_SAW").statusCode());
        assertEquals(403, Visitor.technician().get("settings/finding-types").statusCode());
    }

    @Test
    void scripts_do_the_same() {
        String body = "{\"name\": \"Ice dam\", \"trade\": \"roofer\", \"caution\": \"Keep off below.\"}";
        var saved = office.json("PUT", "api/finding-types/ICE_DAM", body);
        assertEquals(200, saved.statusCode(), saved.body());
        assertEquals(200, office.json("PUT", "api/finding-types/ICE_DAM", body).statusCode(), "a retry");
        var stale = office.json("PUT", "api/finding-types/ICE_DAM", body.replace("Ice dam", "Ice"));
        assertEquals(409, stale.statusCode(), "from version 0, which is overtaken");
        assertTrue(stale.body().contains("\"stored\""), stale.body());
        assertEquals(saved.body(), office.getJson("api/finding-types/ICE_DAM").body());
        assertEquals(404, office.getJson("api/finding-types/NOBODY_SAW").statusCode());
        assertEquals(422, office.json("PUT", "api/finding-types/ice", body).statusCode());
        assertTrue(office.getJson("api/finding-types").body().contains("\"ICE_DAM\""));
        assertEquals(
                403,
                Visitor.technician().json("PUT", "api/finding-types/ICE", body).statusCode());
    }
}
