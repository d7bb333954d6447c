package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Customers with their contacts, sites and surfaces, one by one and from a file. */
final class Clients {
    private static final String CUSTOMERS = "api/customers";

    private Clients() {}

    static Map<String, String> customers(World world) {
        Area area = new Area(world, "customers", Caller.OFFICE);
        customer(area.part("saving"));
        contacts(area.part("contacts"));
        sites(area.part("sites"));
        surfaces(area.part("surfaces"));
        merging(area.part("merging"));
        area.part("reading");
        area.get("with all that belongs to it", CUSTOMERS + "/<customer>").expect(200);
        area.get("none", CUSTOMERS + "/<unused customer>");
        area.get("an id that is none", CUSTOMERS + "/seven");
        area.get("found by name", CUSTOMERS + "?q=Snap%20Bakery").expect(200);
        area.get("the inactive are not found", CUSTOMERS + "?q=Snap%20Gone").expect(200);
        area.get("unless all are asked for", CUSTOMERS + "?q=Snap%20Gone&all=true");
        area.get("a key that no page gave", CUSTOMERS + "?q=Snap&after=nonsense");
        imports(area.part("import"));
        return area.parts();
    }

    private static void customer(Area area) {
        String path = CUSTOMERS + "/<customer>";
        String customer = """
                {"name": "Snap Bakery", "type": "BUSINESS",
                 "address": {"street": "3 Millrace", "city": "Larkford", "region": "IL", "zipCode": "60999", "country": "US"},
                 "email": "desk@snapbakery.example.com", "phone": "555-0171", "preferredContact": "TEXT",
                 "paymentTermDays": 14, "note": "Back door", "version": 0}
                """;
        String changed = customer.replace("\"version\": 0", "\"version\": 1");
        area.put("a customer", path, customer).expect(200).again();
        area.put("edited", path, changed.replace("Back door", "Front door"))
                .expect(200)
                .again();
        area.put("a stale version", path, changed.replace("Back door", "Side door"));
        area.put(
                        "the least that a customer has",
                        CUSTOMERS + "/<other customer>",
                        "{\"name\": \"Snap Household\", \"type\": \"HOUSEHOLD\", \"address\": {\"country\": \"US\"}, \"paymentTermDays\": 30}")
                .expect(200);
        area.put(
                        "an inactive one",
                        CUSTOMERS + "/<gone customer>",
                        "{\"name\": \"Snap Gone\", \"type\": \"HOUSEHOLD\", \"address\": {\"country\": \"US\"}, \"paymentTermDays\": 0, \"active\": false}")
                .expect(200);
        String other = CUSTOMERS + "/<unused customer>";
        area.put("somebody who may be here already", other, customer);
        area.put("taken all the same", CUSTOMERS + "/<double customer>?duplicates=allow", customer)
                .expect(200);
        String unused = customer.replace("snapbakery", "snapnobody")
                .replace("0171", "0179")
                .replace("Snap Bakery", "Snap Nobody");
        area.put("a version of what is not there", other, unused.replace("\"version\": 0", "\"version\": 3"));
        area.put("a blank name", other, unused.replace("Snap Nobody", " "));
        area.put("not an email address", other, unused.replace("desk@snapnobody.example.com", "at the desk"));
        area.put("no such country", other, unused.replace("\"US\"", "\"XX\""));
        area.put("days below zero", other, unused.replace("14", "-1"));
        area.put("no such type", other, unused.replace("BUSINESS", "GUILD"));
        area.put("no address", other, unused.replace("\"address\"", "\"adress\""));
        area.put("days that are no number", other, unused.replace("14,", "\"soon\","));
        area.put("an id that is none", CUSTOMERS + "/seven", unused);
        area.put("no such word for duplicates", other + "?duplicates=maybe", unused);
    }

    private static void contacts(Area area) {
        String path = CUSTOMERS + "/<customer>/contacts/<contact>";
        String contact = """
                {"name": "Ms. Snapdragon", "role": "accounts", "email": "accounts@snapbakery.example.com", "phone": "555-0172", "version": 0}
                """;
        String changed = contact.replace("\"version\": 0", "\"version\": 1");
        String unused = path.replace("<contact>", "<unused contact>");
        area.put("a contact", path, contact).expect(200).again();
        area.put("edited", path, changed.replace("0172", "0173")).expect(200);
        area.put("a stale version", path, changed.replace("0172", "0174"));
        area.put("of no customer", unused.replace("<customer>", "<unused customer>"), contact);
        area.put("of another customer", path.replace("<customer>", "<other customer>"), changed);
        area.put("a version of what is not there", unused, changed);
        area.put("a blank name", unused, contact.replace("Ms. Snapdragon", ""));
        area.put("no name", unused, "{}");
    }

    private static void sites(Area area) {
        String path = CUSTOMERS + "/<customer>/sites/<site>";
        String site = """
                {"name": "Snap Bakehouse", "address": {"street": "3 Millrace", "city": "Larkford", "country": "US"},
                 "accessNotes": "Ring twice", "hazards": "Wet steps", "waterOnSite": true, "version": 0}
                """;
        String changed = site.replace("\"version\": 0", "\"version\": 1");
        String unused = path.replace("<site>", "<unused site>");
        area.put("a site", path, site).expect(200).again();
        area.put("edited", path, changed.replace("twice", "once")).expect(200);
        area.put("a stale version", path, changed.replace("twice", "thrice"));
        area.put("of no customer", unused.replace("<customer>", "<unused customer>"), site);
        area.put("of another customer", path.replace("<customer>", "<other customer>"), changed);
        area.put("a version of what is not there", unused, changed);
        area.put("a blank name", unused, site.replace("Snap Bakehouse", " "));
        area.put("no address", unused, "{\"name\": \"Snap Shed\"}");
        area.put(
                        "another customer's site",
                        CUSTOMERS + "/<other customer>/sites/<other site>",
                        site.replace("Snap Bakehouse", "Snap Home"))
                .expect(200);
    }

    private static void surfaces(Area area) {
        String path = CUSTOMERS + "/<customer>/sites/<site>/surfaces/<array>";
        String array = """
                {"type": "ARRAY", "name": "Snap south array", "extent": #48 H87#, "rows": 2, "panelManufacturer": "Snap / Panels",
                 "attributes": {"STORY": 2, "PITCH_DEGREES": 30}, "version": 0}
                """;
        String changed = array.replace("\"version\": 0", "\"version\": 1");
        area.put("an array", path, array).expect(200).again();
        area.put("edited", path, changed.replace("#48", "#50")).expect(200);
        area.put("a stale version", path, changed.replace("#48", "#52"));
        area.put(
                        "a roof",
                        path.replace("<array>", "<roof>"),
                        "{\"type\": \"ROOF\", \"name\": \"Snap roof\", \"extent\": #1900.5 FTK#}")
                .expect(200);
        area.put(
                        "skylights",
                        path.replace("<array>", "<skylights>"),
                        "{\"type\": \"SKYLIGHT\", \"name\": \"Snap skylights\", \"extent\": #6 H87#}")
                .expect(200);
        String other = path.replace("<array>", "<unused surface>");
        area.put("of another customer's site", other.replace("<customer>", "<other customer>"), array);
        area.put("of no site", other.replace("<site>", "<unused site>"), array);
        area.put("a version of what is not there", other, changed);
        area.put("no such manufacturer", other, array.replace("Snap / Panels", "Nobody's Panels"));
        area.put("a unit that does not fit", other, array.replace("H87", "FTK"));
        area.put("no such unit", other, array.replace("H87", "ZZ9"));
        area.put("not whole", other, array.replace("#48", "#48.5"));
        area.put("an attribute out of range", other, array.replace("30", "95"));
        area.put(
                "an attribute of another type",
                other,
                array.replace("PITCH_DEGREES", "SCREENS").replace("30", "1"));
        area.put("no such attribute", other, array.replace("STORY", "COLOR"));
        area.put("no such type", other, array.replace("ARRAY", "CHIMNEY"));
        area.put("not a number", other, array.replace("#48", "#many"));
        area.put("no extent", other, "{\"type\": \"ARRAY\", \"name\": \"Snap\"}");
    }

    private static void merging(Area area) {
        String path = CUSTOMERS + "/<double customer>/merge";
        area.post("into itself", path, "{\"into\": \"<double customer>\"}");
        area.post("into nobody", path, "{\"into\": \"<unused customer>\"}");
        area.post("nobody", CUSTOMERS + "/<unused customer>/merge", "{\"into\": \"<customer>\"}");
        area.post("not said into whom", path, "{}");
        area.post("merged", path, "{\"into\": \"<customer>\"}").expect(200).again();
        area.get("asked for by the id that is an alias", CUSTOMERS + "/<double customer>");
    }

    private static void imports(Area area) {
        StringBuilder many = new StringBuilder("customer,country,city,site,surface,surface_type,extent,unit\n");
        for (int i = 0; i <= 100; i++) {
            many.append(String.format("Snaplist %03d,US,Larkford,Home,Panes,window,%d,H87\n", i, i + 1));
        }
        String bad = "customer,country,extent\nSnap Bad,XX,\nSnap Worse,,many\n";
        String path = CUSTOMERS + "/import";
        area.csv("tried", path + "?dryRun=true", "customer,country\nSnap Tried,US\n")
                .expect(200);
        area.csv("bad rows, tried", path + "?dryRun=true", bad);
        area.csv("bad rows", path, bad);
        area.csv("nothing", path, "");
        area.csv("no column that it needs", path, "name\nSnap Nameless\n");
        area.csv("neither true nor false", path + "?dryRun=maybe", "customer,country\nSnap Tried,US\n");
        area.csv("somebody who may be here", path, "customer,country,phone\nSnap Twin,US,555-0171\n");
        area.post("not a CSV file", path, "{}");
        area.quiet().csv("a hundred and one customers", path, many.toString()).expect(200);
        area.quiet().csv("the same file again", path, many.toString()).expect(200);
        area.shortened().get("a page of them", CUSTOMERS + "?q=Snaplist").naming("next-page", "/next");
        area.get("the page after it", CUSTOMERS + "?q=Snaplist&after=<next-page>")
                .expect(200);
    }
}
