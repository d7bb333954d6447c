package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Job sheets for scripts, on the real server. */
class SheetApiHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final PhoneSheet phone = new PhoneSheet();

    @Test
    void scripts_sign_off_only_their_own_visits() throws SQLException {
        String others = at.visit(Visitor.value("select id::text from app_user where username = 'quotes.office'"));
        String line = at.read(others).getJsonArray("lines").getJsonObject(0).getString("id");
        String sheet = """
                {"id": "%s", "completedOn": "%s", "lines": [{"line": "%s", "done": {"value": "48", "unit": "H87"}}],
                 "effort": {"onSiteMinutes": 60, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(CrewAtWork.id(), SiteToQuote.today(), line);
        String path = "api/visits/" + others + "/sheet";
        assertEquals(403, technician.json("PUT", path, sheet).statusCode());
        assertEquals(1, at.site().audited("access.put", "REFUSED", "/" + path));
        assertEquals(400, technician.json("PUT", path, "{\"id\": ").statusCode());
        assertEquals(
                400,
                technician
                        .json("PUT", path, sheet.replace("\"48\"", "\"many\""))
                        .statusCode());
        assertEquals("SCHEDULED", phone.status(others));
        assertEquals(200, at.office().json("PUT", path, sheet).statusCode());
        assertEquals(200, at.office().json("PUT", path, sheet).statusCode(), "the same again");
    }

    private String sheet(String visit, String id) {
        String line = at.read(visit).getJsonArray("lines").getJsonObject(0).getString("id");
        return """
                {"id": "%s", "completedOn": "%s", "lines": [{"line": "%s", "done": {"value": "48", "unit": "H87"}}],
                 "items": [{"item": "%s", "quantity": {"value": "3", "unit": "OZA"}}],
                 "newSurfaces": [{"surface": "%s", "type": "SKYLIGHT", "name": "Barn %s", "extent": {"value": "2", "unit": "H87"}}],
                 "count": {"document": "%s", "reason": "Counted", "counted": [{"item": "%s", "basis": "DIFFERENCE", "quantity": {"value": "5", "unit": "OZA"}}]},
                 "effort": {"onSiteMinutes": 60, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(
                        id,
                        SiteToQuote.today(),
                        line,
                        CrewAtWork.SOAP,
                        CrewAtWork.id(),
                        visit,
                        CrewAtWork.id(),
                        CrewAtWork.SOAP);
    }

    @Test
    void a_sheet_sent_twice_at_once_posts_once_and_its_reversal_too() throws SQLException {
        String visit = at.visit();
        String id = CrewAtWork.id();
        String path = "api/visits/" + visit + "/sheet";
        String sheet = sheet(visit, id);
        var both = Stream.of(1, 2)
                .map(i -> CompletableFuture.supplyAsync(() -> technician.json("PUT", path, sheet)))
                .toList();
        var first = both.getFirst().join();
        assertEquals(200, first.statusCode(), first.body());
        assertEquals(first.body(), both.getLast().join().body());
        var signed = CrewAtWork.json(first);
        assertEquals(id, signed.getString("id"));
        assertEquals("JOB_SHEET", signed.getString("type"));
        assertEquals(0, signed.getJsonArray("warnings").size());
        assertEquals(1, at.site().audited("visit.sign-off", "DONE", visit));

        String reversal = "{\"id\": \"%s\", \"reason\": \"Wrong visit\"}".formatted(CrewAtWork.id());
        assertEquals(
                403,
                technician.json("POST", path + "/" + id + "/reversal", reversal).statusCode());
        assertEquals(
                404,
                at.office()
                        .json("POST", "api/visits/" + at.visit() + "/sheet/" + id + "/reversal", reversal)
                        .statusCode(),
                "another visit's");
        var reversed = at.office().json("POST", path + "/" + id + "/reversal", reversal);
        assertEquals(201, reversed.statusCode(), reversed.body());
        assertEquals("REVERSAL", CrewAtWork.json(reversed).getString("type"));
        assertEquals(
                reversed.body(),
                at.office()
                        .json("POST", path + "/" + id + "/reversal", reversal)
                        .body());
        assertEquals("SCHEDULED", phone.status(visit));
        assertEquals(1, at.site().audited("visit.sheet-reversed", "DONE", visit));
    }

    @Test
    void everything_that_is_wrong_is_told_at_once_by_its_place() {
        String visit = at.visit();
        String wrong = sheet(visit, CrewAtWork.id())
                .replace("\"3\"", "\"many\"")
                .replace("SKYLIGHT", "LAKE")
                .replace("\"onSiteMinutes\"", "\"minutes\"");
        var refused = technician.json("PUT", "api/visits/" + visit + "/sheet", wrong);
        assertEquals(400, refused.statusCode(), refused.body());
        for (String field :
                List.of("items[0].quantity", "newSurfaces[0].type", "effort.minutes", "effort.onSiteMinutes")) {
            assertTrue(refused.body().contains("\"" + field), field + " in " + refused.body());
        }
        assertEquals("SCHEDULED", phone.status(visit));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "'value': '3', 'unit': 'OZA'|'value': '0.1234567', 'unit': 'OZA'|items[0].quantity",
                "'value': '3', 'unit': 'OZA'|'value': '99999', 'unit': 'OZA'|items[0].quantity",
                "'value': '3', 'unit': 'OZA'|'value': '3', 'unit': 'H87'|items[0].quantity",
                "'value': '3', 'unit': 'OZA'|'value': '123456789012345', 'unit': 'OZA'|items[0].quantity",
                "'completedOn': 'TODAY'|'completedOn': 'TOMORROW'|completedOn",
                "'completedOn': 'TODAY'|'completedOn': '1990-01-01'|completedOn",
                "'count'|'mixes': [{'mix': 'MIX', 'volume': {'value': '1', 'unit': 'H87'}}], 'count'|mixes[0].volume",
                "'count'|'mixes': [{'mix': 'MIX', 'volume': {'value': '90000', 'unit': 'GLL'}}], 'count'|mixes[0].volume",
                "'counted': [|'counted': [{'item': 'SOAP', 'basis': 'DIFFERENCE', 'quantity': {'value': '5', 'unit': 'OZA'}},|count.counted[1].item",
                "'counted': [|'counted': [{'item': 'SOAP', 'basis': 'FOUND', 'quantity': {'value': '123456789012345', 'unit': 'OZA'}},|count.counted[0].quantity",
                "'item': 'SOAP', 'quantity': {'value': '3', 'unit': 'OZA'}|'item': 'RESIN', 'quantity': {'value': '3', 'unit': 'GRN'}|items[0].item",
                "'item': 'SOAP', 'quantity': {'value': '3', 'unit': 'OZA'}|'item': 'SOAP', 'quantity': {'value': '3', 'unit': 'OZA'}, 'serviceLine': 'NEW'|items[0].serviceLine",
                "'count'|'readings': [{'tapWater': '500', 'pureWater': '5', 'volume': {'value': '9', 'unit': 'GLL'}, 'serviceLine': 'NEW'}], 'count'|readings[0].serviceLine",
                "'count'|'brushes': [{'lot': 'CANISTER', 'units': {'value': '3', 'unit': 'H87'}}], 'count'|brushes[0].lot",
                "'count'|'readings': [{'tapWater': '500', 'pureWater': '5', 'volume': {'value': '999999999999', 'unit': 'GLL'}, 'canister': 'CANISTER'}], 'count'|readings[0].volume",
                "'value': '3', 'unit': 'OZA'|'value': '3', 'unit': 'ZZ9'|items[0].quantity.unit",
                "'value': '48', 'unit': 'H87'|'value': '48', 'unit': 'HUR'|lines[0].done",
                "'value': '2', 'unit': 'H87'|'value': '2', 'unit': 'HUR'|newSurfaces[0].extent",
                "'count'|'findings': [{'id': 'NEW', 'type': 'NO_SUCH_TYPE', 'severity': 'URGENT', 'photos': []}], 'count'|findings[0].type",
                "'count'|'extras': [{'id': 'NEW', 'serviceItem': 'SKYLIGHT_WORK', 'quantity': {'value': '2', 'unit': 'HUR'}, 'acceptedBy': 'Ms. Quill'}], 'count'|extras[0].quantity",
                "'count'|'surfaces': [{'surface': 'SKYLIGHTS', 'extent': {'value': '2', 'unit': 'H87'}}, {'surface': 'SKYLIGHTS', 'extent': {'value': '3', 'unit': 'H87'}}], 'count'|surfaces[1].surface",
            })
    void every_refusal_of_a_sheet_names_its_field(String right, String wrong, String field) {
        String visit = refusedAlways();
        String sent = sheet(visit, CrewAtWork.id()).replace(said(right), said(wrong));

        var refused = technician.json("PUT", "api/visits/" + visit + "/sheet", sent);

        assertEquals(422, refused.statusCode(), refused.body());
        assertEquals(
                "[\"" + field + "\"]",
                CrewAtWork.json(refused).getJsonArray("fields").toString(),
                refused.body());
        assertEquals("SCHEDULED", phone.status(visit));
    }

    /** One visit for all of them: lists of other tests show only so many. */
    private String refusedAlways() {
        String known = refusedVisit;
        if (known == null) {
            known = at.visit();
            refusedVisit = known;
        }
        return known;
    }

    private static @Nullable String refusedVisit;

    private static String said(String part) {
        return part.replace('\'', '"')
                .replace("TODAY", SiteToQuote.today())
                .replace(
                        "TOMORROW",
                        LocalDate.parse(SiteToQuote.today()).plusDays(1).toString())
                .replace("NEW", CrewAtWork.id())
                .replace("SKYLIGHT_WORK", SiteToQuote.SKYLIGHT)
                .replace("SKYLIGHTS", CrewAtWork.SKYLIGHTS)
                .replace("MIX", CrewAtWork.MIX)
                .replace("SOAP", CrewAtWork.SOAP)
                .replace("RESIN", CrewAtWork.RESIN)
                .replace("CANISTER", CrewAtWork.CANISTER);
    }
}
