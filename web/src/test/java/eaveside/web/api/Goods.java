package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Items, mixes and locations of stock. */
final class Goods {
    private static final String ITEMS = "api/stock/items/";
    private static final String LOCATIONS = "api/stock/locations/";
    private static final String MIXES = "api/stock/mixes/";

    private Goods() {}

    static Map<String, String> stock(World world) {
        Area area = new Area(world, "stock", Caller.OFFICE);
        items(area.part("items"));
        locations(area.part("locations"));
        reorderPoints(area.part("reorder-points"));
        mixes(area.part("mixes"));
        return area.parts();
    }

    private static void items(Area area) {
        String soap = """
                {"code": "SNAP-SOAP", "name": "Snap soap", "type": "CONCENTRATE", "baseUnit": "OZA", "alkaline": true,
                 "packs": [{"name": "canister", "content": #1 GLL#}], "version": 0}
                """;
        String edited = soap.replace("\"version\": 0", "\"version\": 1");
        area.put("a concentrate", ITEMS + "<soap>", soap).expect(200).again();
        area.put("edited", ITEMS + "<soap>", edited.replace("Snap soap", "Snap roof soap"))
                .expect(200)
                .again();
        area.put("a stale version", ITEMS + "<soap>", edited.replace("Snap soap", "Snap gutter soap"));
        area.put(
                        "a resin",
                        ITEMS + "<resin>",
                        "{\"code\": \"SNAP-RESIN\", \"name\": \"Snap resin\", \"type\": \"RESIN\", \"baseUnit\": \"GRN\"}")
                .expect(200);
        area.put(
                        "a brush",
                        ITEMS + "<brush>",
                        "{\"code\": \"SNAP-BRUSH\", \"name\": \"Snap brush\", \"type\": \"BRUSH\", \"baseUnit\": \"H87\"}")
                .expect(200);
        area.put(
                        "something plain",
                        ITEMS + "<rubber>",
                        "{\"code\": \"SNAP-RUBBER\", \"name\": \"Snap rubber\", \"type\": \"PLAIN\", \"baseUnit\": \"FOT\"}")
                .expect(200);
        String unused = soap.replace("SNAP-SOAP", "SNAP-UNUSED");
        String other = ITEMS + "<unused item>";
        area.put("a code that is taken", other, soap);
        area.put("a version of what is not there", other, unused.replace(": 0", ": 3"));
        area.put("a unit that does not fit", other, unused.replace("OZA", "FTK"));
        area.put("no such unit", other, unused.replace("OZA", "ZZ9"));
        area.put("no such type", other, unused.replace("CONCENTRATE", "JUICE"));
        area.put("a pack in another unit", other, unused.replace("GLL", "FOT"));
        area.put("a blank name", other, unused.replace("Snap soap", " "));
        area.put("a pack without content", other, unused.replace("\"content\"", "\"contents\""));
        area.put("no code", other, unused.replace("\"code\"", "\"cade\""));
        area.get("one", ITEMS + "<soap>").expect(200);
        area.get("none", other);
        area.get("found", "api/stock/items?q=snap-r").expect(200);
        area.get("a key that no page gave", "api/stock/items?after=nonsense");
    }

    private static void locations(Area area) {
        String store = "{\"name\": \"Snap store\", \"type\": \"STORE\", \"version\": 0}";
        area.put("a store room", LOCATIONS + "<store>", store).expect(200).again();
        String van = "{\"name\": \"Snap van\", \"type\": \"VAN\", \"technicians\": [\"<technician>\"]}";
        area.put("a van", LOCATIONS + "<van>", van).expect(200);
        String edited = store.replace(": 0", ": 1");
        area.put("edited", LOCATIONS + "<store>", edited.replace("store", "store room"))
                .expect(200);
        area.put("a stale version", LOCATIONS + "<store>", edited.replace("store", "shed"));
        String other = LOCATIONS + "<unused location>";
        area.put("a name that is taken", other, van.replace(", \"technicians\": [\"<technician>\"]", ""));
        String unused = van.replace("Snap van", "Snap unused");
        area.put("somebody who has a van", other, unused);
        area.put("no such technician", other, unused.replace("<technician>", "<unused user>"));
        area.put("technicians of a store room", other, unused.replace("VAN", "STORE"));
        area.put("a version of what is not there", other, store.replace(": 0", ": 3"));
        area.put("no such type", other, store.replace("STORE", "TENT"));
        area.put("a blank name", other, store.replace("Snap store", ""));
        area.put("no name", other, "{\"type\": \"STORE\"}");
        area.get("one", LOCATIONS + "<van>").expect(200);
        area.get("none", other);
        area.get("all", "api/stock/locations").expect(200);
        area.get("what an empty one holds", LOCATIONS + "<store>/levels").expect(200);
        area.get("what none holds", other + "/levels");
    }

    private static void reorderPoints(Area area) {
        String path = LOCATIONS + "<van>/reorder-points/<soap>";
        String gallon = "{\"quantity\": #1 GLL#}";
        area.put("a reorder point", path, gallon).expect(200).again();
        area.put("below zero", path, gallon.replace("1", "-1"));
        area.put("a unit that does not fit", path, gallon.replace("GLL", "FOT"));
        area.put("no such unit", path, gallon.replace("GLL", "ZZ9"));
        area.put("no unit", path, "{\"quantity\": {\"value\": \"1\"}}");
        area.put("no such location", path.replace("<van>", "<unused location>"), gallon);
        area.put("no such item", path.replace("<soap>", "<unused item>"), gallon);
    }

    private static void mixes(Area area) {
        String mix = """
                {"name": "Snap wash", "concentrate": "<soap>", "ratio": {"parts": "31", "meaning": "ADDED_TO_WATER"}, "version": 0}
                """;
        String edited = mix.replace(": 0", ": 1");
        String other = MIXES + "<unused mix>";
        area.put("a mix", MIXES + "<mix>", mix).expect(200).again();
        area.put("edited", MIXES + "<mix>", edited.replace("Snap wash", "Snap roof wash"))
                .expect(200);
        area.put("a stale version", MIXES + "<mix>", edited.replace("31", "40"));
        area.put("a name that is taken", other, mix.replace("Snap wash", "Snap roof wash"));
        area.put("a version of what is not there", other, edited);
        area.put("a ratio that cannot be", other, mix.replace("31", "0.5").replace("ADDED_TO_WATER", "IN_SOLUTION"));
        area.put("not a concentrate", other, mix.replace("<soap>", "<resin>"));
        area.put("no such concentrate", other, mix.replace("<soap>", "<unused item>"));
        area.put("no such meaning", other, mix.replace("ADDED_TO_WATER", "IN_SOUP"));
        area.put("not a number", other, mix.replace("31", "strong"));
        area.put("no ratio", other, "{\"name\": \"Snap none\", \"concentrate\": \"<soap>\"}");
        area.get("one", MIXES + "<mix>").expect(200);
        area.get("none", other);
        area.get("all", "api/stock/mixes").expect(200);
    }
}
