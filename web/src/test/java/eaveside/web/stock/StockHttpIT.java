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
        assertEquals("/" + path + "?done=stock.saved", location(answer));
        return form.get("id");
    }

    private String soap(String code) {
        return entered(
                "stock/consumables",
                Map.of(
                        "code", code,
                        "name", "Page soap " + code,
                        "type", "CONCENTRATE",
                        "baseUnit", "US_FLUID_OUNCE",
                        "pack-0-name", "canister",
                        "pack-0-content", "1",
                        "pack-0-unit", "US_GALLON"));
    }

    private static long audited(String action, String subject) {
        return Long.parseLong(
                Visitor.value("select count(*) from audit_event where action = ? and subject = ?", action, subject));
    }

    @Test
    void from_a_location_to_a_mix_on_the_sheet_of_its_technician() {
        Visitor technician = Visitor.owner().hire("Driver of the Page van", "page.driver", "TECHNICIAN");
        String driver = Visitor.value("select id from app_user where username = ?", "page.driver");
        String van =
                entered("stock/locations", Map.of("name", "Page van", "type", "VAN", "technician-" + driver, "yes"));
        assertTrue(
                text(office.get("stock/locations")).contains("Page van Van Driver of the Page van In use"),
                text(office.get("stock/locations")));

        Map<String, String> consumable = office.form("stock/consumables/new", "/stock/consumables");
        consumable.putAll(Map.of(
                "code",
                "P-ONE",
                "name",
                "Page soap one",
                "type",
                "CONCENTRATE",
                "baseUnit",
                "US_FLUID_OUNCE",
                "alkaline",
                "yes",
                "pack-0-name",
                "canister",
                "pack-0-content",
                "1",
                "pack-0-unit",
                "US_GALLON",
                "reorderPoint-" + van,
                "64"));
        assertEquals(303, office.post("stock/consumables", consumable).statusCode());
        String item = consumable.get("id");
        String list = text(office.get("stock/consumables?q=PAGE+soap+one"));
        assertTrue(list.contains("Page soap one P-ONE Soap concentrate, alkaline fluid ounce canister: 128"), list);
        assertTrue(office.get("stock/consumables/list.csv?q=p-one").body().contains("P-ONE,Page soap one,CONCENTRATE"));
        assertTrue(text(office.get("stock?location=" + van)).contains("below the minimum"), "nothing there yet");

        Map<String, String> receipt = office.form("stock/new/receipt?location=" + van, "/stock/new/receipt");
        receipt.putAll(Map.of(
                "note", "Suds & Co", "line-0-item", item + "/canister", "line-0-quantity", "2", "line-0-cost", "64"));
        var received = office.post("stock/new/receipt", receipt);
        assertEquals(303, received.statusCode(), text(received));
        assertTrue(text(office.get("stock?location=" + van)).contains("256"), "two gallons in fluid ounces");

        entered(
                "stock/mixes",
                Map.of("name", "Page wash", "concentrate", item, "ratio", "31", "meaning", "ADDED_TO_WATER"));
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
        Map<String, String> consumable = office.form("stock/consumables/new", "/stock/consumables");
        consumable.putAll(Map.of(
                "name",
                "Half typed",
                "type",
                "RESIN",
                "baseUnit",
                "PIECE",
                "pack-0-name",
                "canister",
                "pack-0-content",
                "lots",
                "reorderPoint-" + CrewAtWork.VAN,
                "-3"));
        var refused = office.post("stock/consumables", consumable);
        assertEquals(422, refused.statusCode());
        for (String field : List.of("code", "baseUnit", "pack-0-content", "reorderPoint-" + CrewAtWork.VAN)) {
            assertEquals("true", page(refused).getElementById(field).attr("aria-invalid"), field);
            assertEquals(
                    1, page(refused).select(".errors a[href=#" + field + "]").size(), field);
        }
        assertEquals(consumable.get("name"), form(refused, "/stock/consumables").get("name"));
        assertEquals("lots", form(refused, "/stock/consumables").get("pack-0-content"));
        assertEquals("-3", form(refused, "/stock/consumables").get("reorderPoint-" + CrewAtWork.VAN));

        Map<String, String> mix = office.form("stock/mixes/new", "/stock/mixes");
        mix.putAll(Map.of("name", "Too strong", "ratio", "0.5", "meaning", "IN_SOLUTION"));
        var bad = office.post("stock/mixes", mix);
        assertEquals(422, bad.statusCode());
        assertEquals("true", page(bad).select("#ratio").attr("aria-invalid"));
        assertEquals("true", page(bad).select("#concentrate").attr("aria-invalid"));
        assertEquals("Too strong", page(bad).select("#name").val());

        Map<String, String> location = office.form("stock/locations/new", "/stock/locations");
        location.putAll(
                Map.of("name", "Shed with a driver", "type", "STORE", "technician-" + CrewAtWork.TECHNICIAN, "yes"));
        var shed = office.post("stock/locations", location);
        assertEquals(422, shed.statusCode());
        assertTrue(page(shed).select("#technicians .error").text().contains("only"), text(shed));
        location.put("type", "VAN");
        var taken = office.post("stock/locations", location);
        assertEquals(422, taken.statusCode());
        assertTrue(page(taken).select("#technicians .error").text().contains("Test van"), text(taken));
        assertTrue(
                page(taken)
                        .select("input[name=technician-" + CrewAtWork.TECHNICIAN + "]")
                        .hasAttr("checked"),
                "the tick stays");
    }

    @Test
    void of_two_who_change_a_consumable_the_second_sees_both() {
        String path = "stock/consumables/" + soap("P-RIVAL");
        Map<String, String> faster = office.form(path, "/stock/consumables");
        Map<String, String> slower = office.form(path, "/stock/consumables");
        faster.put("name", "Page soap renamed");
        assertEquals(303, office.post("stock/consumables", faster).statusCode());
        slower.put("name", "Page soap rebadged");
        slower.put("reorderPoint-" + CrewAtWork.VAN, "12");
        var overtaken = office.post("stock/consumables", slower);
        assertEquals(409, overtaken.statusCode());
        assertTrue(text(overtaken).contains("Name Page soap renamed Page soap rebadged"), text(overtaken));
        assertEquals("Page soap renamed", page(office.get(path)).select("#name").val(), "nothing is saved yet");
        assertEquals(
                "",
                page(office.get(path)).select("#reorderPoint-" + CrewAtWork.VAN).val(),
                "no part of it");
        Map<String, String> again = form(overtaken, "/stock/consumables");
        assertEquals(303, office.post("stock/consumables", again).statusCode());
        assertEquals(
                "Page soap rebadged", page(office.get(path)).select("#name").val());
        assertEquals(
                "12",
                page(office.get(path)).select("#reorderPoint-" + CrewAtWork.VAN).val());
    }

    @Test
    void a_reorder_point_set_by_somebody_else_is_not_undone() {
        String item = soap("P-LEAST");
        String path = "stock/consumables/" + item;
        String reorderPoint = "reorderPoint-" + CrewAtWork.VAN;
        Map<String, String> slow = office.form(path, "/stock/consumables");
        Map<String, String> quick = office.form(path, "/stock/consumables");
        quick.put(reorderPoint, "20");
        assertEquals(303, office.post("stock/consumables", quick).statusCode());
        assertEquals(1, audited("stock.reorderPoint", CrewAtWork.VAN + "/" + item));
        slow.put("alkaline", "yes");
        assertEquals(303, office.post("stock/consumables", slow).statusCode());
        assertEquals("20", page(office.get(path)).select("#" + reorderPoint).val());

        Map<String, String> pieces = office.form(path, "/stock/consumables");
        pieces.putAll(Map.of("type", "PLAIN", "baseUnit", "FOOT", "pack-0-name", "", "pack-0-content", ""));
        var fixed = office.post("stock/consumables", pieces);
        assertEquals(422, fixed.statusCode(), "twenty fluid ounces would become twenty feet");
        assertEquals("true", page(fixed).select("#baseUnit").attr("aria-invalid"));
        Map<String, String> emptied = office.form(path, "/stock/consumables");
        emptied.put(reorderPoint, "");
        assertEquals(303, office.post("stock/consumables", emptied).statusCode());
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
        assertTrue(text(overtaken).contains("In use Yes –"), text(overtaken));

        String item = soap("P-MIX");
        String mix = entered("stock/mixes", Map.of("name", "Page mix", "concentrate", item, "ratio", "4"));
        Map<String, String> late = office.form("stock/mixes/" + mix, "/stock/mixes");
        Map<String, String> early = new HashMap<>(late);
        early.put("ratio", "8");
        assertEquals(303, office.post("stock/mixes", early).statusCode());
        late.put("ratio", "16");
        var both = office.post("stock/mixes", late);
        assertEquals(409, both.statusCode());
        assertTrue(text(both).contains("One part to 8 16"), text(both));
        Map<String, String> twin = new HashMap<>(early);
        twin.putAll(Map.of("id", UUID.randomUUID().toString(), "version", ""));
        var taken = office.post("stock/mixes", twin);
        assertEquals(409, taken.statusCode());
        assertEquals("true", page(taken).select("#name").attr("aria-invalid"));
        assertEquals(2, audited("mix.save", "Page mix"));
        assertEquals(1, audited("location.save", "Page barn"));
    }

    @Test
    void a_ratio_is_said_in_words_while_it_is_typed() {
        String words = "stock/mixes/in-words?meaning=IN_SOLUTION&ratio=";
        assertEquals(
                "A gallon of the mix takes 16 fl oz of concentrate and 112 fl oz of water.",
                page(office.get(words + "8")).select("#in-words").text());
        assertEquals("", page(office.get(words + "0")).select("#in-words").text());
        assertEquals("", page(office.get(words + "some")).select("#in-words").text());
    }

    @Test
    void the_pages_are_the_offices_and_the_owners() {
        for (String path : List.of(
                "stock/consumables",
                "stock/consumables/new",
                "stock/consumables/list.csv",
                "stock/locations",
                "stock/locations/new",
                "stock/mixes",
                "stock/mixes/new",
                "stock/mixes/in-words")) {
            assertEquals(403, at.technician().get(path).statusCode(), path);
            assertEquals(200, Visitor.owner().get(path).statusCode(), path);
        }
        for (String path : List.of("stock/consumables", "stock/locations", "stock/mixes")) {
            assertEquals(403, at.technician().post(path, Map.of("name", "Mine")).statusCode(), path);
            assertEquals(404, office.get(path + "/" + SiteToQuote.CUSTOMER).statusCode(), path);
        }
        assertFalse(text(office.get("stock")).contains("To begin with stock"), "it has begun");
    }
}
