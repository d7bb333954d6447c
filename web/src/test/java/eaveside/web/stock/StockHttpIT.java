package eaveside.web.stock;

import static eaveside.web.testing.Visitor.form;
import static eaveside.web.testing.Visitor.location;
import static eaveside.web.testing.Visitor.page;
import static eaveside.web.testing.Visitor.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Locations, consumables with their minimums, and mixes, entered through the pages of the real server. */
class StockHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();

    /** Fills in the form of something new and saves it; its id. */
    private String entered(String path, Map<String, String> filled) {
        Map<String, String> form = office.form(path + "/new", "/" + path);
        form.putAll(filled);
        var answer = office.post(path, form);
        assertEquals(303, answer.statusCode(), text(answer));
        assertEquals("/" + path + "?done=" + path.replace('/', '.') + ".saved", location(answer));
        return form.get("id");
    }

    private String soap(String code) {
        return entered(
                "stock/items",
                Map.of(
                        "code", code,
                        "name", "Page soap " + code,
                        "type", "CONCENTRATE",
                        "baseUnit", "OZA",
                        "pack-0-name", "canister",
                        "pack-0-content", "1",
                        "pack-0-contentUnit", "GLL"));
    }

    private static long audited(String action, String subject) {
        return Long.parseLong(
                Visitor.value("select count(*) from audit_event where action = ? and subject = ?", action, subject));
    }

    @Test
    void from_a_location_to_a_mix_on_the_sheet_of_its_technician() {
        Visitor technician = Visitor.owner().hire("Driver of the Page van", "page.driver", "TECHNICIAN");
        String driver = Visitor.value("select id from app_user where username = ?", "page.driver");
        String van = entered("stock/locations", Map.of("name", "Page van", "type", "VAN", "technicians", driver));
        assertTrue(
                text(office.get("stock/locations")).contains("Page van Van Driver of the Page van Yes"),
                text(office.get("stock/locations")));

        Map<String, String> consumable = office.form("stock/items/new", "/stock/items");
        consumable.putAll(Map.of(
                "code",
                "P-ONE",
                "name",
                "Page soap one",
                "type",
                "CONCENTRATE",
                "baseUnit",
                "OZA",
                "alkaline",
                "yes",
                "pack-0-name",
                "canister",
                "pack-0-content",
                "1",
                "pack-0-contentUnit",
                "GLL",
                "reorderPoint-" + van,
                "64"));
        assertEquals(303, office.post("stock/items", consumable).statusCode());
        String item = consumable.get("id");
        String list = text(office.get("stock/items?q=PAGE+soap+one"));
        assertTrue(list.contains("Page soap one P-ONE Soap concentrate fluid ounce canister: 128 fl oz Yes Yes"), list);
        assertTrue(office.get("stock/items/list.csv?q=p-one").body().contains("Page soap one,P-ONE,Soap concentrate"));
        assertTrue(text(office.get("stock?location=" + van)).contains("below reorder point"), "nothing there yet");

        Map<String, String> receipt = office.form("stock/new/receipt?location=" + van, "/stock/new/receipt");
        receipt.putAll(Map.of(
                "supplier",
                "Suds & Co",
                "line-0-item",
                item + "/canister",
                "line-0-quantity",
                "2",
                "line-0-cost",
                "64"));
        var received = office.post("stock/new/receipt", receipt);
        assertEquals(303, received.statusCode(), text(received));
        assertTrue(text(office.get("stock?location=" + van)).contains("256"), "two gallons in fluid ounces");

        entered(
                "stock/mixes",
                Map.of("name", "Page wash", "concentrate", item, "parts", "31", "meaning", "ADDED_TO_WATER"));
        String mixes = text(office.get("stock/mixes"));
        assertTrue(
                mixes.contains("1 : 31 added to water A gallon of the mix takes 4 fl oz of Page soap one"
                        + " and 124 fl oz of water."),
                mixes);
        var sheet = technician.get("sheets/" + at.visit(driver));
        assertTrue(
                page(sheet).select("option").eachText().contains("Page wash"),
                "the sheet of the van's technician offers the mix");
    }

    @Test
    void errors_stand_at_their_fields_and_what_was_typed_stays() {
        Map<String, String> consumable = office.form("stock/items/new", "/stock/items");
        consumable.putAll(Map.of(
                "name",
                "Half typed",
                "type",
                "RESIN",
                "baseUnit",
                "H87",
                "pack-0-name",
                "canister",
                "pack-0-content",
                "lots",
                "reorderPoint-" + CrewAtWork.VAN,
                "-3"));
        var refused = office.post("stock/items", consumable);
        assertEquals(422, refused.statusCode());
        for (String field : List.of("code", "baseUnit", "pack-0-content", "reorderPoint-" + CrewAtWork.VAN)) {
            assertEquals("true", page(refused).getElementById(field).attr("aria-invalid"), field);
            assertEquals(
                    1, page(refused).select(".errors a[href=#" + field + "]").size(), field);
        }
        assertEquals(consumable.get("name"), form(refused, "/stock/items").get("name"));
        assertEquals("lots", form(refused, "/stock/items").get("pack-0-content"));
        assertEquals("-3", form(refused, "/stock/items").get("reorderPoint-" + CrewAtWork.VAN));

        Map<String, String> mix = office.form("stock/mixes/new", "/stock/mixes");
        mix.putAll(Map.of("name", "Too strong", "parts", "0.5", "meaning", "IN_SOLUTION"));
        var bad = office.post("stock/mixes", mix);
        assertEquals(422, bad.statusCode());
        assertEquals("true", page(bad).select("#parts").attr("aria-invalid"));
        assertEquals("true", page(bad).select("#concentrate").attr("aria-invalid"));
        assertEquals("Too strong", page(bad).select("#name").val());

        Map<String, String> location = office.form("stock/locations/new", "/stock/locations");
        location.putAll(Map.of("name", "Shed with a driver", "type", "STORE", "technicians", CrewAtWork.TECHNICIAN));
        var shed = office.post("stock/locations", location);
        assertEquals(422, shed.statusCode());
        assertTrue(page(shed).select("#technicians .error").text().startsWith("Only a van"), text(shed));
        location.put("type", "VAN");
        var taken = office.post("stock/locations", location);
        assertEquals(422, taken.statusCode());
        assertTrue(page(taken).select("#technicians .error").text().contains("Test van"), text(taken));
        assertTrue(
                page(taken)
                        .select("input[name=technicians][value=" + CrewAtWork.TECHNICIAN + "]")
                        .hasAttr("checked"),
                "the tick stays");
    }

    @Test
    void of_two_who_change_a_consumable_the_second_sees_both() {
        String path = "stock/items/" + soap("P-RIVAL") + "/edit";
        Map<String, String> faster = office.form(path, "/stock/items");
        Map<String, String> slower = office.form(path, "/stock/items");
        faster.put("name", "Page soap renamed");
        assertEquals(303, office.post("stock/items", faster).statusCode());
        slower.put("name", "Page soap rebadged");
        slower.put("reorderPoint-" + CrewAtWork.VAN, "12");
        var overtaken = office.post("stock/items", slower);
        assertEquals(409, overtaken.statusCode());
        assertTrue(text(overtaken).contains("Name Page soap renamed Page soap rebadged"), text(overtaken));
        assertEquals("Page soap renamed", page(office.get(path)).select("#name").val(), "nothing is saved yet");
        assertEquals(
                "",
                page(office.get(path)).select("#reorderPoint-" + CrewAtWork.VAN).val(),
                "no part of it");
        Map<String, String> again = form(overtaken, "/stock/items");
        assertEquals(303, office.post("stock/items", again).statusCode());
        assertEquals(
                "Page soap rebadged", page(office.get(path)).select("#name").val());
        assertEquals(
                "12",
                page(office.get(path)).select("#reorderPoint-" + CrewAtWork.VAN).val());
    }

    @Test
    void a_reorder_point_set_by_somebody_else_is_not_undone() {
        String item = soap("P-LEAST");
        String path = "stock/items/" + item + "/edit";
        String reorderPoint = "reorderPoint-" + CrewAtWork.VAN;
        Map<String, String> slow = office.form(path, "/stock/items");
        Map<String, String> quick = office.form(path, "/stock/items");
        quick.put(reorderPoint, "20");
        assertEquals(303, office.post("stock/items", quick).statusCode());
        assertEquals(1, audited("reorder-point.save", CrewAtWork.VAN + "/" + item));
        slow.put("alkaline", "yes");
        assertEquals(303, office.post("stock/items", slow).statusCode());
        assertEquals("20", page(office.get(path)).select("#" + reorderPoint).val());

        Map<String, String> pieces = office.form(path, "/stock/items");
        pieces.putAll(Map.of("type", "PLAIN", "baseUnit", "FOT", "pack-0-name", "", "pack-0-content", ""));
        var fixed = office.post("stock/items", pieces);
        assertEquals(422, fixed.statusCode(), "twenty fluid ounces would become twenty feet");
        assertEquals("true", page(fixed).select("#baseUnit").attr("aria-invalid"));
        Map<String, String> emptied = office.form(path, "/stock/items");
        emptied.put(reorderPoint, "");
        assertEquals(303, office.post("stock/items", emptied).statusCode());
        assertEquals("", page(office.get(path)).select("#" + reorderPoint).val());
    }

    @Test
    void locations_and_mixes_have_rivals_too_and_names_of_their_own() {
        String location = entered("stock/locations", Map.of("name", "Page shed", "type", "STORE"));
        Map<String, String> slower = office.form("stock/locations/" + location, "/stock/locations");
        Map<String, String> faster = new HashMap<>(slower);
        faster.put("name", "Page barn");
        assertEquals(303, office.post("stock/locations", faster).statusCode());
        slower.remove("active");
        var overtaken = office.post("stock/locations", slower);
        assertEquals(409, overtaken.statusCode());
        assertTrue(text(overtaken).contains("Name Page barn Page shed"), text(overtaken));
        assertTrue(text(overtaken).contains("Active Yes –"), text(overtaken));

        String item = soap("P-MIX");
        String mix = entered("stock/mixes", Map.of("name", "Page mix", "concentrate", item, "parts", "4"));
        Map<String, String> late = office.form("stock/mixes/" + mix, "/stock/mixes");
        Map<String, String> early = new HashMap<>(late);
        early.put("parts", "8");
        assertEquals(303, office.post("stock/mixes", early).statusCode());
        late.put("parts", "16");
        var both = office.post("stock/mixes", late);
        assertEquals(409, both.statusCode());
        assertTrue(text(both).contains("Ratio 8 16"), text(both));
        Map<String, String> twin = new HashMap<>(early);
        twin.putAll(Map.of("id", UUID.randomUUID().toString(), "version", ""));
        var taken = office.post("stock/mixes", twin);
        assertEquals(409, taken.statusCode());
        assertEquals("true", page(taken).select("#name").attr("aria-invalid"));
        assertEquals(2, audited("mix.save", mix));
        assertEquals(2, audited("location.save", location));
    }

    @Test
    void a_ratio_is_said_in_words_while_it_is_typed() {
        String words = "stock/mixes/in-words?meaning=IN_SOLUTION&parts=";
        assertEquals(
                "A gallon of the mix takes 16 fl oz of concentrate and 112 fl oz of water.",
                page(office.get(words + "8")).select("#in-words").text());
        assertEquals("", page(office.get(words + "0")).select("#in-words").text());
        assertEquals("", page(office.get(words + "some")).select("#in-words").text());
    }

    @Test
    void the_pages_are_the_offices_and_the_owners() {
        for (String path : List.of(
                "stock/items",
                "stock/items/new",
                "stock/items/list.csv",
                "stock/locations",
                "stock/locations/new",
                "stock/mixes",
                "stock/mixes/new",
                "stock/mixes/in-words")) {
            assertEquals(403, at.technician().get(path).statusCode(), path);
            assertEquals(200, Visitor.owner().get(path).statusCode(), path);
        }
        for (String path : List.of("stock/items", "stock/locations", "stock/mixes")) {
            assertEquals(403, at.technician().post(path, Map.of("name", "Mine")).statusCode(), path);
            assertEquals(404, office.get(path + "/" + SiteToQuote.CUSTOMER).statusCode(), path);
        }
        assertFalse(text(office.get("stock")).contains("Set up stock"), "it has begun");
    }

    @Test
    void a_refused_write_off_keeps_its_lines_and_names_what_is_missing() {
        String item = soap("P-WASTE");
        Map<String, String> receipt = office.form("stock/new/receipt", "/stock/new/receipt");
        receipt.putAll(Map.of(
                "location",
                CrewAtWork.VAN,
                "supplier",
                "Suds & Co",
                "line-0-item",
                item + "/canister",
                "line-0-quantity",
                "1",
                "line-0-cost",
                "some"));
        var unpriced = office.post("stock/new/receipt", receipt);
        assertEquals(422, unpriced.statusCode());
        assertEquals(
                item + "/canister",
                form(unpriced, "/stock/new/receipt").get("line-0-item"),
                "the pack that was chosen");
        receipt.put("line-0-cost", "32");
        assertEquals(303, office.post("stock/new/receipt", receipt).statusCode());

        Map<String, String> form = office.form("stock/new/write-off", "/stock/new/write-off");
        form.putAll(Map.of(
                "location", CrewAtWork.VAN, "line-0-item", item, "line-0-quantity", "", "line-1-quantity", "two"));

        var refused = office.post("stock/new/write-off", form);

        assertEquals(422, refused.statusCode(), text(refused));
        assertEquals(
                List.of(
                        "Quantity in row 1 is required",
                        "Reason is required",
                        "Item in row 2 is required",
                        "Quantity in row 2 must be a number, such as 12.5"),
                page(refused).select(".errors a").eachText());
        Map<String, String> back = form(refused, "/stock/new/write-off");
        assertEquals(item, back.get("line-0-item"));
        assertEquals("two", back.get("line-1-quantity"));
        assertEquals(CrewAtWork.VAN, back.get("location"));

        form.putAll(Map.of("reason", "Frozen", "line-0-quantity", "1,000,000", "line-1-quantity", ""));
        var tooMuch = office.post("stock/new/write-off", form);
        assertEquals(422, tooMuch.statusCode());
        assertTrue(page(tooMuch).select("#line-0-quantity-error").text().contains("the books hold"), text(tooMuch));
        assertEquals("1,000,000", form(tooMuch, "/stock/new/write-off").get("line-0-quantity"));

        form.put("line-0-quantity", "2.5");
        assertEquals(303, office.post("stock/new/write-off", form).statusCode());
        assertEquals(303, office.post("stock/new/write-off", form).statusCode(), "a retry");
        assertEquals(1, audited("stock.write-off", form.get("id")));
    }

    /** Which row is meant only the use case knows; rows left empty are none of its lines. */
    @ParameterizedTest
    @CsvSource({
        "receipt, 'line-2-item={resin},line-2-quantity=4200,line-2-cost=90', line-2-label, Choose the lot",
        "receipt, 'line-0-item={resin},line-0-quantity=9,line-0-cost=9,line-0-label=R-TWIN,"
                + "line-2-item={resin},line-2-quantity=9,line-2-cost=9,line-2-label=R-TWIN', line-2-label, R-TWIN",
        "transfer, 'line-0-item={soap},line-0-quantity=1,line-2-item={resin},line-2-quantity=9', line-2-lot, kept by itself",
        "transfer, 'line-1-lot={canister},line-1-quantity=1', line-1-quantity, grains go together",
        "write-off, 'line-1-item={soap},line-1-quantity=900000', line-1-quantity, the books hold",
        "write-off, 'line-1-item={resin},line-1-quantity=9', line-1-lot, kept by itself",
        "count, 'line-1-item={resin},line-1-quantity=9', line-1-lot, kept by itself",
        "count, 'line-0-item={soap},line-0-quantity=9,line-2-item={soap},line-2-quantity=8', line-2-item, twice",
        "count, 'line-1-item={new},line-1-quantity=9', line-1-cost, never received with a cost"
    })
    void what_is_refused_of_one_line_stands_at_its_row(String type, String lines, String field, String words) {
        Map<String, String> form = office.form("stock/new/" + type, "/stock/new/" + type);
        form.putAll(Map.of("supplier", "Suds & Co", "reason", "A test", "location", CrewAtWork.VAN));
        form.putAll(Map.of("from", CrewAtWork.VAN, "to", shed()));
        String said = lines.replace("{resin}", CrewAtWork.RESIN)
                .replace("{soap}", CrewAtWork.SOAP)
                .replace("{canister}", CrewAtWork.CANISTER)
                .replace("{new}", lines.contains("{new}") ? soap("P-FOUND") : "");
        for (String one : said.split(",")) {
            form.put(one.split("=")[0], one.split("=")[1]);
        }

        var refused = office.post("stock/new/" + type, form);

        assertEquals(words.equals("R-TWIN") ? 409 : 422, refused.statusCode(), text(refused));
        assertEquals(List.of("#" + field), page(refused).select(".errors a").eachAttr("href"), text(refused));
        assertEquals("true", page(refused).selectFirst("#" + field).attr("aria-invalid"));
        String error = page(refused).selectFirst("#" + field + "-error").text();
        assertTrue(error.replace('\u00a0', ' ').contains(words), error);
        if (field.endsWith("cost")) {
            form.put(field, "3.50");
            assertEquals(303, office.post("stock/new/" + type, form).statusCode(), "what it asks for can be entered");
        }
    }

    private static String shed() {
        String id = "01900000-0000-7000-8000-0000000001d5";
        CrewAtWork.shared()
                .office()
                .json("PUT", "api/stock/locations/" + id, "{\"name\":\"Shed of rows\",\"type\":\"STORE\"}");
        return id;
    }

    @Test
    void the_same_form_sent_again_is_a_retry() {
        Map<String, String> form = office.form("stock/locations/new", "/stock/locations");
        form.putAll(Map.of("name", "Twice-sent shed", "type", "STORE"));
        assertEquals(303, office.post("stock/locations", form).statusCode());
        assertEquals(303, office.post("stock/locations", form).statusCode());
        assertEquals(1, audited("location.save", form.get("id")));
        assertTrue(office.get("stock/locations/list.csv").body().contains("Twice-sent shed,Store room,,Yes"));
    }
}
