package eaveside.web.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Consumables and the documents that move them for scripts, on the real server. */
class StockApiHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();

    private static String id() {
        return UUID.randomUUID().toString();
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private static String item(String code) {
        return """
                {"code": "%s", "name": "Window soap %s", "type": "CONCENTRATE", "baseUnit": "OZA", "alkaline": true,
                 "packs": [{"name": "canister", "content": {"value": "1", "unit": "GLL"}}]}
                """.formatted(code, code);
    }

    /** A new item of which the van holds two canisters, 256 fluid ounces, that cost 64.00; its id. */
    private String received(String code) {
        String item = id();
        json(office.json("PUT", "api/stock/items/" + item, item(code)), 200);
        json(
                office.json("POST", "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co",
                 "lines": [{"item": "%s", "lot": "%s", "pack": "canister",
                            "quantity": {"value": "2", "unit": "H87"}, "cost": {"amount": "64.00", "currency": "USD"}}]}
                """.formatted(
                                id(), SiteToQuote.today(), CrewAtWork.VAN, item, id())),
                201);
        return item;
    }

    private JsonObject level(String item) {
        return json(office.getJson("api/stock/locations/" + CrewAtWork.VAN + "/levels"), 200)
                .getJsonArray("levels")
                .getValuesAs(JsonObject.class)
                .stream()
                .filter(level -> level.getString("item").equals(item))
                .findFirst()
                .orElseThrow();
    }

    private static String writeOff(String id, String item, String ounces) {
        return """
                {"id": "%s", "date": "%s", "location": "%s", "reason": "Frozen",
                 "lines": [{"item": "%s", "quantity": {"value": "%s", "unit": "OZA"}}]}
                """.formatted(id, SiteToQuote.today(), CrewAtWork.VAN, item, ounces);
    }

    @Test
    void a_receipts_delivery_note_is_read_back() {
        String item = received("N-SOAP");
        String receipt = id();
        json(
                office.json("POST", "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co", "deliveryNote": "DN 2208",
                 "lines": [{"item": "%s", "lot": "%s", "pack": "canister",
                            "quantity": {"value": "1", "unit": "H87"}, "cost": {"amount": "32.00", "currency": "USD"}}]}
                """.formatted(
                                receipt, SiteToQuote.today(), CrewAtWork.VAN, item, id())),
                201);
        assertEquals(
                "Goods from Suds & Co, delivery note DN 2208",
                json(Visitor.owner().getJson("api/books/documents/" + receipt), 200)
                        .getString("summary"));
    }

    @Test
    void a_consumable_is_added_and_changed() {
        String path = "api/stock/items/" + id();
        JsonObject added = json(office.json("PUT", path, item("A-SOAP")), 200);
        assertEquals(added, json(office.json("PUT", path, item("A-SOAP")), 200), "the same again changes nothing");
        JsonObject content = added.getJsonArray("packs").getJsonObject(0).getJsonObject("content");
        assertEquals("128", content.getString("value"), "a gallon in fluid ounces, the item's base unit");
        assertEquals("OZA", content.getString("unit"));
        json(office.json("PUT", path, item("A-SOAP").replace("Window", "Roof")), 409);

        JsonObject renamed =
                Json.createObjectBuilder(added).add("name", "Roof soap").build();
        assertEquals(
                "Roof soap",
                json(office.json("PUT", path, renamed.toString()), 200).getString("name"));
        JsonObject stale =
                Json.createObjectBuilder(added).add("name", "Gutter soap").build();
        json(office.json("PUT", path, stale.toString()), 409);
        assertEquals("Roof soap", json(office.getJson(path), 200).getString("name"));
        assertTrue(office.getJson("api/stock/items").body().contains("\"A-SOAP\""));
        assertEquals(
                "2",
                Visitor.value(
                        "select count(*) from audit_event where action = 'stock-item.save' and subject = ?",
                        added.getString("id")),
                "one for each save, none for the retry");
    }

    @Test
    void a_consumable_that_cannot_be_is_refused() {
        String path = "api/stock/items/" + id();
        json(office.json("PUT", path, item("V-SOAP")), 409);
        json(office.json("PUT", path, item("A-BAD").replace("OZA", "FTK")), 422);
        json(office.json("PUT", path, item("A-BAD").replace("OZA", "QQQ")), 422);
        json(office.json("PUT", path, item("A-BAD").replace("CONCENTRATE", "JUICE")), 400);
        assertEquals(
                "[\"code\",\"name\",\"type\",\"baseUnit\"]",
                json(office.json("PUT", path, "{}"), 400).getJsonArray("fields").toString(),
                "all that is missing");
        json(office.json("PUT", path, item("A-BAD").replace("\"alkaline\"", "\"alcaline\"")), 400);
        json(office.json("PUT", path, item("A-BAD").replace("{\"code\"", "{\"version\": 3, \"code\"")), 404);
        json(at.technician().json("PUT", path, item("A-BAD")), 403);
        json(at.technician().getJson("api/stock/items"), 403);
        json(office.getJson(path), 404);
    }

    @Test
    void a_location_has_a_reorder_point_until_it_is_zero() {
        String item = received("A-LEAST");
        String path = "api/stock/locations/" + CrewAtWork.VAN + "/reorder-points/" + item;
        String gallon = "{\"quantity\": {\"value\": \"1\", \"unit\": \"GLL\"}}";

        JsonObject set = json(office.json("PUT", path, gallon), 200);
        assertEquals(set, json(office.json("PUT", path, gallon), 200), "a retry");
        assertEquals("128", set.getJsonObject("quantity").getString("value"));
        assertEquals(item, set.getString("item"));
        JsonObject least = level(item).getJsonObject("reorderPoint");
        assertEquals("128", least.getString("value"), "a gallon in the item's fluid ounces");
        assertEquals("OZA", least.getString("unit"));

        JsonObject refused = json(office.json("PUT", path, gallon.replace("1", "-1")), 422);
        assertEquals("Quantity cannot be below zero", refused.getString("title"));
        assertEquals("[\"quantity\"]", refused.getJsonArray("fields").toString());
        json(office.json("PUT", path, gallon.replace("GLL", "FOT")), 422);
        json(office.json("PUT", path, "{}"), 400);
        json(office.json("PUT", path.replace(CrewAtWork.VAN, id()), gallon), 404);
        json(office.json("PUT", path.replace(item, id()), gallon), 404);
        json(at.technician().json("PUT", path, gallon), 403);
        assertEquals("128", level(item).getJsonObject("reorderPoint").getString("value"));

        json(office.json("PUT", path, gallon.replace("1", "0")), 200);
        assertFalse(level(item).containsKey("reorderPoint"));
    }

    @Test
    void goods_are_written_off_and_the_write_off_reversed() {
        String item = received("A-WRITE-OFF");
        String writeOff = id();
        JsonObject done = json(office.json("POST", "api/stock/write-offs", writeOff(writeOff, item, "64")), 201);
        assertEquals(
                done,
                json(office.json("POST", "api/stock/write-offs", writeOff(writeOff, item, "64")), 201),
                "a retry");
        json(office.json("POST", "api/stock/write-offs", writeOff(writeOff, item, "65")), 409);
        assertEquals("192", level(item).getJsonObject("quantity").getString("value"));
        assertEquals("48.00", level(item).getJsonObject("value").getString("amount"), "a quarter of 64.00 is gone");
        json(office.json("POST", "api/stock/write-offs", writeOff(id(), item, "193")), 422);
        json(office.json("POST", "api/stock/write-offs", writeOff(id(), id(), "1")), 422);
        json(office.json("POST", "api/stock/write-offs", writeOff(id(), item, "some")), 400);
        json(at.technician().json("POST", "api/stock/write-offs", writeOff(id(), item, "1")), 403);

        String path = "api/stock/documents/" + writeOff + "/reversal";
        String reversal = "{\"id\": \"" + id() + "\", \"reason\": \"It thawed\"}";
        json(at.technician().json("POST", path, reversal), 403);
        json(office.json("POST", path, reversal.replace("It thawed", " ")), 422);
        json(office.json("POST", path, "{}"), 400);
        JsonObject reversed = json(office.json("POST", path, reversal), 201);
        assertEquals(reversed, json(office.json("POST", path, reversal), 201), "a retry");
        json(office.json("POST", path, reversal.replace("It thawed", "It did not")), 409);
        assertEquals("256", level(item).getJsonObject("quantity").getString("value"));
        assertEquals("64.00", level(item).getJsonObject("value").getString("amount"));
        json(office.json("POST", path.replace(writeOff, id()), "{\"id\": \"" + id() + "\", \"reason\": \"x\"}"), 404);
        assertEquals("WRITE_OFF", done.getString("type"));
        assertEquals(writeOff, done.getString("id"));
    }

    @Test
    void a_location_is_added_and_changed() {
        String path = "api/stock/locations/" + id();
        String shed = "{\"name\": \"Script shed\", \"type\": \"STORE\"}";
        JsonObject added = json(office.json("PUT", path, shed), 200);
        assertEquals(added, json(office.json("PUT", path, shed), 200), "the same again changes nothing");
        assertTrue(added.getBoolean("active"));
        assertEquals(added, json(office.getJson(path), 200));
        assertTrue(
                json(office.getJson("api/stock/locations"), 200)
                        .getJsonArray("locations")
                        .contains(added),
                "as it is listed");
        assertEquals(1, added.getInt("version"));
        json(office.json("PUT", path, shed.replace("shed", "barn")), 409);

        String driver = "[\"" + CrewAtWork.TECHNICIAN + "\"]";
        json(office.json("PUT", path, "{}"), 400);
        json(
                office.json(
                        "PUT", "api/stock/locations/" + id(), shed.replace("}", ", \"technicians\": " + driver + "}")),
                422);
        json(office.json("PUT", "api/stock/locations/" + id(), shed), 409);
        json(office.json("PUT", "api/stock/locations/" + id(), shed.replace("STORE", "TENT")), 400);
        json(office.json("PUT", "api/stock/locations/" + id(), shed.replace("}", ", \"version\": 3}")), 404);
        json(at.technician().json("PUT", path, shed), 403);

        Visitor.owner().hire("Driver of scripts", "script.driver", "TECHNICIAN");
        String hired = Visitor.value("select id from app_user where username = ?", "script.driver");
        JsonObject van = Json.createObjectBuilder(added)
                .add("type", "VAN")
                .add("technicians", Json.createArrayBuilder().add(hired))
                .build();
        JsonObject driven = json(office.json("PUT", path, van.toString()), 200);
        assertEquals(hired, driven.getJsonArray("technicians").getString(0));
        json(office.json("PUT", path, added.toString()), 409);
        JsonObject parked = Json.createObjectBuilder(driven)
                .add("type", "STORE")
                .add("technicians", Json.createArrayBuilder())
                .build();
        assertTrue(json(office.json("PUT", path, parked.toString()), 200)
                .getJsonArray("technicians")
                .isEmpty());
        assertEquals(
                "3",
                Visitor.value(
                        "select count(*) from audit_event where action = 'location.save' and subject = ?",
                        added.getString("id")));
    }

    @Test
    void a_mix_is_added_and_changed() {
        String item = id();
        json(office.json("PUT", "api/stock/items/" + item, item("A-MIX")), 200);
        String path = "api/stock/mixes/" + id();
        String mix =
                "{\"name\": \"Script wash\", \"concentrate\": \"%s\", \"ratio\": {\"parts\": \"40\", \"meaning\": \"IN_SOLUTION\"}}"
                        .formatted(item);
        JsonObject added = json(office.json("PUT", path, mix), 200);
        assertEquals(added, json(office.json("PUT", path, mix), 200), "the same again changes nothing");
        assertEquals(added, json(office.getJson(path), 200));
        assertTrue(
                json(office.getJson("api/stock/mixes"), 200)
                        .getJsonArray("mixes")
                        .contains(added),
                "as it is listed");
        json(office.json("PUT", path, added.toString().replace("\"40\"", "\"60\"")), 200);
        JsonObject stale = json(office.json("PUT", path, added.toString().replace("\"40\"", "\"80\"")), 409);
        assertEquals("60", stale.getJsonObject("stored").getJsonObject("ratio").getString("parts"));
        assertEquals("80", stale.getJsonObject("sent").getJsonObject("ratio").getString("parts"));

        String other = "api/stock/mixes/" + id();
        json(office.json("PUT", other, mix), 409);
        json(office.json("PUT", other, mix.replace("\"40\"", "\"0.5\"")), 422);
        json(office.json("PUT", other, mix.replace("\"40\"", "\"strong\"")), 400);
        json(office.json("PUT", other, mix.replace("IN_SOLUTION", "IN_SOUP")), 400);
        json(office.json("PUT", other, mix.replace(item, CrewAtWork.RESIN)), 422);
        json(office.json("PUT", other, mix.replace(item, id())), 422);
        json(office.json("PUT", other, "{}"), 400);
        json(office.getJson(other), 404);
        json(at.technician().getJson("api/stock/mixes"), 403);
        json(at.technician().json("PUT", path, mix), 403);
    }

    @Test
    void a_receipt_is_answered_where_it_can_be_read_also_when_it_is_sent_again() {
        String item = received("L-SOAP");
        String receipt = id();
        String body = """
                {"id": "%s", "location": "%s", "supplier": "Suds & Co",
                 "lines": [{"item": "%s", "quantity": {"value": "3", "unit": "OZA"}, "cost": {"amount": "1.50", "currency": "USD"}}]}
                """.formatted(receipt, CrewAtWork.VAN, item);
        for (String time : new String[] {"first", "again"}) {
            var answer = office.json("POST", "api/stock/receipts", body);
            assertEquals(201, answer.statusCode(), time + answer.body());
            assertTrue(
                    answer.headers().firstValue("Location").orElseThrow().endsWith("/api/books/documents/" + receipt),
                    time);
        }
        JsonObject document = json(Visitor.owner().getJson("api/books/documents/" + receipt), 200);
        assertEquals(SiteToQuote.today().toString(), document.getString("postingDate"), "today where no date is sent");
        json(office.json("POST", "api/stock/receipts", body.replace("1.50", "1.60")), 409);
        JsonObject wrong = json(
                office.json(
                        "POST",
                        "api/stock/receipts",
                        body.replace("Suds & Co", "")
                                .replace("\"3\"", "\"some\"")
                                .replace("\"1.50\"", "true")),
                400);
        assertEquals(
                "[\"lines[0].quantity.value\",\"lines[0].cost.amount\"]",
                wrong.getJsonArray("fields").toString());
    }

    @Test
    void goods_are_transferred_and_counted() {
        String item = received("T-SOAP");
        String shed = id();
        json(
                office.json("PUT", "api/stock/locations/" + shed, "{\"name\": \"Transfer shed\", \"type\": \"STORE\"}"),
                200);
        String lines =
                ", \"lines\": [{\"item\": \"" + item + "\", \"quantity\": {\"value\": \"56\", \"unit\": \"OZA\"}}]}";
        String transfer =
                "{\"id\": \"" + id() + "\", \"from\": \"" + CrewAtWork.VAN + "\", \"to\": \"" + shed + "\"" + lines;
        assertEquals(
                "TRANSFER",
                json(office.json("POST", "api/stock/transfers", transfer), 201).getString("type"));
        assertEquals("200", level(item).getJsonObject("quantity").getString("value"));
        json(office.json("POST", "api/stock/transfers", transfer.replace(shed, CrewAtWork.VAN)), 422);

        String count = "{\"id\": \"" + id() + "\", \"location\": \"" + CrewAtWork.VAN + "\", \"reason\": \"Month end\""
                + lines;
        JsonObject counted = json(office.json("POST", "api/stock/counts", count), 201);
        assertEquals("COUNT", counted.getString("type"));
        assertEquals("56", level(item).getJsonObject("quantity").getString("value"), "what was found");
        json(at.technician().json("POST", "api/stock/counts", count), 403);
    }

    @Test
    void items_are_found_page_by_page() {
        received("F-SOAP");
        JsonObject found = json(office.getJson("api/stock/items?q=f-soap"), 200);
        assertEquals(1, found.getJsonArray("items").size());
        assertFalse(found.containsKey("next"));
        JsonObject refused = json(office.getJson("api/stock/items?after=" + id()), 400);
        assertEquals("[\"after\"]", refused.getJsonArray("fields").toString());
        json(office.getJson("api/stock/locations/" + id()), 404);
        json(office.getJson("api/stock/locations/" + id() + "/levels"), 404);
    }

    @Test
    void a_visits_sheet_is_not_reversed_here() {
        String sheet = at.signedOff(at.visit());
        JsonObject refused = json(
                office.json(
                        "POST",
                        "api/stock/documents/" + sheet + "/reversal",
                        "{\"id\": \"" + id() + "\", \"reason\": \"Wrong door\"}"),
                422);
        assertTrue(refused.getString("title").contains("is not a receipt"), refused.toString());
    }
}
