package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** What is sold, at which prices, and the quotes. */
final class Sold {
    private static final String LINES = "api/service-lines/";
    private static final String QUOTES = "api/quotes";

    private Sold() {}

    static Map<String, String> services(World world) {
        Area area = new Area(world, "services", Caller.OFFICE);
        area.part("lines");
        String line = "{\"code\": \"SNAP-SOLAR\", \"name\": \"Snap solar\", \"version\": 0}";
        String edited = line.replace(": 0", ": 1");
        String unusedLine = LINES + "<unused line>";
        area.put("a service line", LINES + "<line>", line).expect(200).again();
        area.put("another", LINES + "<other line>", "{\"code\": \"SNAP-GLASS\", \"name\": \"Snap glass\"}")
                .expect(200);
        area.put("edited", LINES + "<line>", edited.replace("Snap solar", "Snap solar arrays"))
                .expect(200);
        area.put("a stale version", LINES + "<line>", edited.replace("Snap solar", "Snap sun"));
        area.put("a code that is taken", unusedLine, line);
        area.put("not a code", unusedLine, line.replace("SNAP-SOLAR", "snap solar"));
        area.put("a version of what is not there", unusedLine, edited);
        area.put("no name", unusedLine, "{\"code\": \"SNAP-NONE\"}");
        area.get("one", LINES + "<line>").expect(200);
        area.get("none", unusedLine);
        area.get("all", "api/service-lines").expect(200);

        area.part("services");
        String path = "api/services/<panel>";
        String panel = """
                {"serviceLine": "<line>", "code": "SNAP-PANEL", "name": "Snap wash panels", "unit": "H87", "minutesPerUnit": "1.5",
                 "taxCode": "SNAP-TAX", "surfaceType": "ARRAY", "cautions": "Live in daylight",
                 "consumables": [{"item": "<soap>", "perUnit": #0.1 OZA#}], "version": 0}
                """;
        String changed = panel.replace("\"version\": 0", "\"version\": 1");
        area.put("a service", path, panel).expect(200).again();
        area.put("edited", path, changed.replace("\"1.5\"", "\"2\"")).expect(200);
        area.put("a stale version", path, changed.replace("\"1.5\"", "\"3\""));
        area.put(
                        "the least that a service has",
                        "api/services/<skylight>",
                        "{\"serviceLine\": \"<other line>\", \"code\": \"SNAP-SKYLIGHT\", \"name\": \"Snap clean skylights\","
                                + " \"unit\": \"H87\", \"minutesPerUnit\": \"8\", \"taxCode\": \"SNAP-TAX\"}")
                .expect(200);
        String other = "api/services/<unused service>";
        String unused = panel.replace("SNAP-PANEL", "SNAP-UNUSED");
        area.put("a code that is taken", other, panel);
        area.put("a version of what is not there", other, unused.replace("\"version\": 0", "\"version\": 4"));
        area.put("no such service line", other, unused.replace("<line>", "<unused line>"));
        area.put("no such tax code", other, unused.replace("SNAP-TAX", "SNAP-NO-TAX"));
        area.put("a unit that does not fit", other, unused.replace("\"unit\": \"H87\"", "\"unit\": \"FTK\""));
        area.put("no such unit", other, unused.replace("\"unit\": \"H87\"", "\"unit\": \"ZZ9\""));
        area.put("minutes below zero", other, unused.replace("\"1.5\"", "\"-1\""));
        area.put("not a number", other, unused.replace("\"1.5\"", "\"long\""));
        area.put("no such type of surface", other, unused.replace("ARRAY", "CHIMNEY"));
        area.put("no such item", other, unused.replace("<soap>", "<unused item>"));
        area.put("no unit", other, unused.replace("\"unit\": \"H87\"", "\"onit\": \"H87\""));
        area.get("one", path).expect(200);
        area.get("none", other);
        area.get("all", "api/services").expect(200);
        return area.parts();
    }

    static Map<String, String> prices(World world) {
        Area area = new Area(world, "prices", Caller.OWNER);
        String path = "api/price-books/<book>";
        String book = """
                {"list": {"name": "Snap prices", "from": "2027-06-16", "visitMinimum": $150.00$, "sharedReduction": "5",
                  "lineMinimums": [{"serviceLine": "<line>", "amount": $100.00$}],
                  "prices": [
                    {"serviceItem": "<panel>", "steps": [{"price": $7.50 per 1 H87$}, {"from": #40 H87#, "price": $6.50 per 1 H87$}],
                     "surcharges": [{"attribute": "STORY", "atLeast": 2, "percent": "20"},
                                    {"attribute": "PITCH_DEGREES", "atLeast": 45, "amount": $0.25 per 1 H87$}]},
                    {"serviceItem": "<skylight>", "steps": [{"price": $18.00 per 1 H87$}]}]},
                 "version": 0}
                """;
        String changed = book.replace("\"version\": 0", "\"version\": 1");
        String other = "api/price-books/<unused book>";
        area.part("writing");
        area.put("a draft", path, book).expect(200).again();
        area.put("changed", path, changed.replace("150.00", "120.50")).expect(200);
        area.put("a stale version", path, changed.replace("150.00", "130.00"));
        area.next("writing-refused");
        area.put("a version of what is not there", other, changed);
        area.put("another currency", other, World.spelled(book).replace("USD", "EUR"));
        area.put("a minimum below zero", other, book.replace("150.00", "-1"));
        area.put(
                "a minimum below zero, and no reduction said",
                other,
                book.replace("150.00", "-1").replace(" \"sharedReduction\": \"5\",", ""));
        area.put("more than all off", other, book.replace("\"5\"", "\"101\""));
        area.put("no such service", other, book.replace("<panel>", "<unused service>"));
        area.put("no such service line", other, book.replace("<line>", "<unused line>"));
        area.put("a unit that does not fit", other, book.replace("18.00 per 1 H87", "18.00 per 1 FTK"));
        area.put("a step that costs more", other, book.replace("6.50", "9.99"));
        area.put("no such attribute", other, book.replace("STORY", "COLOR"));
        area.put("an attribute out of range", other, book.replace("45", "95"));
        area.put("neither a share nor an amount", other, book.replace(", \"percent\": \"20\"", ""));
        area.put("not a number", other, book.replace("7.50", "dear"));
        area.put("not a date", other, book.replace("2027-06-16", "soon"));
        area.put("no name", other, book.replace("\"name\"", "\"label\""));
        area.put("a draft without prices", "api/price-books/<empty book>", """
                {"list": {"name": "Snap empty", "from": "2028-01-01", "visitMinimum": $0.00$, "sharedReduction": "0"}}
                """).expect(200);

        area.part("publishing");
        area.post("a stale version", path + "/publish", "{\"version\": 1}");
        area.post("no prices yet", "api/price-books/<empty book>/publish", "{\"version\": 1}");
        area.post("no version", path + "/publish", "{}");
        area.post("no such book", other + "/publish", "{\"version\": 1}");
        area.post("into force", path + "/publish", "{\"version\": 2}")
                .expect(200)
                .again();
        area.post("published already", path + "/publish", "{\"version\": 3}");
        area.put("sent again, the first answer", path, book);
        area.put("a published book never changes", path, book.replace("7.50", "7.60"));

        area.part("reading");
        area.as(Caller.OFFICE).get("a published book", path).expect(200);
        area.get("a draft", "api/price-books/<empty book>").expect(200);
        area.get("none", other);
        area.as(Caller.OFFICE).get("all", "api/price-books").expect(200);
        area.get("a key that no page gave", "api/price-books?after=nonsense");
        area.as(Caller.OFFICE).get("in force today", "api/price-books/in-force").expect(200);
        area.get("none was in force", "api/price-books/in-force?date=1999-01-01");
        area.get("not a date", "api/price-books/in-force?date=soon");
        calculation(area.part("calculation"));
        return area.parts();
    }

    private static void calculation(Area area) {
        String path = "api/prices/calculation";
        String asked = """
                {"date": "2027-06-16",
                 "lines": [{"serviceItem": "<panel>", "quantity": #48 H87#, "surface": "<array>"},
                           {"serviceItem": "<skylight>", "quantity": #2 H87#, "attributes": {"STORY": 1}}]}
                """;
        area.as(Caller.OFFICE).post("on a day", path, asked).expect(200).again();
        area.post(
                        "from a named book, below its minimum",
                        path,
                        asked.replace("\"date\": \"2027-06-16\"", "\"book\": \"<book>\"")
                                .replace("48", "3"))
                .expect(200);
        area.post("from a draft", path, asked.replace("\"date\": \"2027-06-16\"", "\"book\": \"<empty book>\""));
        area.post("from no book", path, asked.replace("\"date\": \"2027-06-16\"", "\"book\": \"<unused book>\""));
        area.post("none was in force", path, asked.replace("2027-06-16", "1999-01-01"));
        area.post("no lines", path, "{\"lines\": []}");
        area.post("nothing of it", path, asked.replace("48", "0"));
        area.post("no such service", path, asked.replace("<panel>", "<unused service>"));
        area.post("no such surface", path, asked.replace("<array>", "<unused surface>"));
        area.post("no such attribute", path, asked.replace("STORY", "COLOR"));
        area.post("no such unit", path, asked.replace("#48 H87", "#48 ZZ9"));
        area.post("a unit that does not fit", path, asked.replace("#48 H87", "#48 FTK"));
        area.post("not a date", path, asked.replace("2027-06-16", "soon"));
        area.post("not a number", path, asked.replace("48", "many"));
    }

    static Map<String, String> quotes(World world) {
        Area area = new Area(world, "quotes", Caller.OFFICE);
        String path = QUOTES + "/<quote>";
        String scope = """
                {"validUntil": "2027-07-16", "note": "Mornings only", "travel": {"drivingMinutes": 40, "distance": #12.5 SMI#},
                  "lines": [{"id": "<quote line>", "serviceItem": "<panel>", "surface": "<array>", "quantity": #48 H87#},
                            {"id": "<other quote line>", "serviceItem": "<skylight>", "surface": "<skylights>", "quantity": #2 H87#}]}
                """.strip();
        String quote =
                "{\"id\": \"<quote>\", \"customer\": \"<customer>\", \"site\": \"<site>\", \"scope\": " + scope + "}";
        area.part("making");
        area.post("a quote", QUOTES, quote).expect(201).again();
        area.post("the id is another's", QUOTES, quote.replace("Mornings", "Evenings"));
        String unused = quote.replace("<quote", "<unused quote").replace("<other quote", "<unused other quote");
        area.post("no such customer", QUOTES, unused.replace("<customer>", "<unused customer>"));
        area.post("another customer's site", QUOTES, unused.replace("<site>", "<other site>"));
        area.post("no such service", QUOTES, unused.replace("<panel>", "<unused service>"));
        area.post("no such surface", QUOTES, unused.replace("<array>", "<unused surface>"));
        area.post("a surface that does not fit", QUOTES, unused.replace("<array>", "<roof>"));
        area.post("a validity that has ended", QUOTES, unused.replace("2027-07-16", "2027-06-15"));
        area.post("nothing of it", QUOTES, unused.replace("#48", "#0"));
        area.post("one line id twice", QUOTES, unused.replace("<unused other quote line>", "<unused quote line>"));
        area.post("no such finding", QUOTES, unused.replace("\"scope\"", "\"cameFrom\": \"<no finding>\", \"scope\""));
        area.post("no lines", QUOTES, unused.replace("\"lines\"", "\"lanes\""));
        area.post("no scope", QUOTES, unused.replace("\"scope\"", "\"scupe\""));
        area.post("not a date", QUOTES, unused.replace("2027-07-16", "soon"));
        area.post("not a number", QUOTES, unused.replace("#48", "#many"));

        area.part("deciding");
        String revised = "{\"version\": 1, \"scope\": " + scope.replace("#48", "#50") + "}";
        area.put("revised", path, revised).expect(200).again();
        area.put("a stale version", path, revised.replace("#50", "#51"));
        area.put("no version", path, revised.replace("\"version\"", "\"virsion\""));
        area.put("no such quote", QUOTES + "/<unused quote>", revised);
        area.post("a stale version is not sent", path + "/send", "{\"version\": 1}");
        area.post("no version", path + "/send", "{}");
        area.post("no such quote is sent", QUOTES + "/<unused quote>/send", "{\"version\": 1}");
        area.post("sent", path + "/send", "{\"version\": 2}").expect(200).again();
        area.next("accepting");
        area.post(
                "a stale version is not accepted", path + "/accept", "{\"version\": 2, \"acceptedBy\": \"Ms. Reed\"}");
        area.post("no such quote is accepted", QUOTES + "/<unused quote>/accept", "{\"version\": 1}");
        area.post("accepted", path + "/accept", "{\"version\": 3, \"acceptedBy\": \"Ms. Reed, by phone\"}")
                .expect(200)
                .again();
        area.put("an accepted quote never changes", path, revised.replace("\"version\": 1", "\"version\": 4"));
        area.post("nor is it declined", path + "/decline", "{\"version\": 4, \"reason\": \"Too dear\"}");

        area.part("declining");
        area.post(
                        "another quote",
                        QUOTES,
                        quote.replace("<quote", "<declined quote")
                                .replace("<other quote", "<declined other quote")
                                .replace("Mornings", "Afternoons"))
                .expect(201);
        String decline = "{\"version\": 1, \"reason\": \"Too dear\"}";
        String declined = QUOTES + "/<declined quote>/decline";
        area.post("a stale version", declined, decline.replace("1", "7"));
        area.post("no reason", declined, "{\"version\": 1}");
        area.post("a blank reason", declined, decline.replace("Too dear", " "));
        area.post("declined", declined, decline).expect(200).again();
        area.post("no such quote", QUOTES + "/<unused quote>/decline", decline);

        area.part("reading");
        area.get("for the office", path).expect(200);
        area.as(Caller.OWNER).get("for the owner", path).expect(200);
        area.get("none", QUOTES + "/<unused quote>");
        area.get("a customer's", QUOTES + "?customer=<customer>").expect(200);
        area.get("of one status", QUOTES + "?status=DECLINED").expect(200);
        area.get("found", QUOTES + "?q=bakery&status=ACCEPTED").expect(200);
        area.get("no such status", QUOTES + "?status=LOST");
        area.get("a key that no page gave", QUOTES + "?after=nonsense");
        return area.parts();
    }
}
