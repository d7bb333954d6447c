package eaveside.web.margins;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The days of the margin report: this month's where none are named, and those that cannot be named at their field. */
class MarginsHttpIT {
    private final Visitor owner = Visitor.owner();

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    @Test
    void page_and_scripts_are_about_the_same_days() {
        JsonObject report = json(owner.getJson("api/margins"), 200);
        var page = Visitor.page(owner.get("margins"));
        assertEquals(page.select("#from").attr("value"), report.getString("from"));
        assertEquals(page.select("#to").attr("value"), report.getString("to"));
        assertEquals("USD", report.getJsonObject("result").getString("currency"));
        assertTrue(report.getJsonObject("total").getJsonObject("revenue").containsKey("amount"));
        assertEquals(403, Visitor.office().getJson("api/margins").statusCode());
    }

    @Test
    void days_that_cannot_be_are_named_at_their_field() {
        for (String path : List.of("margins", "margins/margins.pdf", "margins/margins.xlsx")) {
            var backwards = owner.get(path + "?from=2026-03-31&to=2026-03-01");
            assertEquals(422, backwards.statusCode(), path);
            var page = Visitor.page(backwards);
            assertEquals(1, page.select(".errors a[href=#to]").size(), path);
            assertEquals("2026-03-31", page.select("#from").attr("value"), "what was typed is still there");
            var nonsense = owner.get(path + "?from=yesterday");
            assertEquals(422, nonsense.statusCode(), path);
            assertEquals(
                    1, Visitor.page(nonsense).select(".errors a[href=#from]").size(), path);
        }
        JsonObject backwards = json(owner.getJson("api/margins?from=2026-03-31&to=2026-03-01"), 422);
        assertEquals("[\"to\"]", backwards.getJsonArray("fields").toString());
        JsonObject wrong = json(owner.getJson("api/margins?to=soon"), 400);
        assertEquals("[\"to\"]", wrong.getJsonArray("fields").toString());
    }
}
