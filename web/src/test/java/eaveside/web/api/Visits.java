package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Visits with their job sheets, scope changes and closings. */
final class Visits {
    private static final String ALL = "api/visits";

    private Visits() {}

    private static String scheduling(String id, String panels) {
        return """
                {"id": "<%1$s>", "customer": "<customer>", "site": "<site>", "date": "2027-06-16", "crew": ["<technician>"],
                 "lines": [{"id": "<%1$s line>", "serviceItem": "<panel>", "surface": "<array>", "quantity": #%2$s H87#}],
                 "note": "Ring twice"}
                """.formatted(id, panels);
    }

    private static String sheet(String id, String visit) {
        return """
                {"id": "<%1$s>", "completedOn": "2027-06-16",
                 "lines": [{"line": "<%2$s line>", "done": #46 H87#,
                            "skips": [{"quantity": #2 H87#, "reason": "NO_ACCESS", "note": "Ladder too short"}]}],
                 "extras": [{"id": "<%2$s extra>", "serviceItem": "<skylight>", "surface": "<skylights>", "quantity": #4 H87#, "acceptedBy": "Ms. Quill"}],
                 "mixes": [{"mix": "<mix>", "volume": #2 GLL#}],
                 "brushes": [{"lot": "<brush lot>", "units": #46 H87#, "serviceLine": "<line>"}],
                 "readings": [{"tapWater": "250", "pureWater": "5", "volume": #40 GLL#, "canister": "<canister>"}],
                 "effort": {"onSiteMinutes": 120, "drivingMinutes": 40, "loadingMinutes": 20, "distance": #12 SMI#},
                 "findings": [{"id": "<%2$s finding>", "type": "RUST", "severity": "SOON", "surface": "<roof>", "note": "Rust at the ridge", "customerNotified": true}],
                 "note": "All dry"}
                """.formatted(id, visit);
    }

    private static String plainSheet(String id, String visit) {
        return """
                {"id": "<%s>", "completedOn": "2027-06-16", "lines": [{"line": "<%s line>", "done": #10 H87#}],
                 "effort": {"onSiteMinutes": 30, "drivingMinutes": 10, "loadingMinutes": 5, "distance": #4 SMI#}}
                """.formatted(id, visit);
    }

    static Map<String, String> visits(World world) {
        Area area = new Area(world, "visits", Caller.OFFICE);
        scheduling(area.part("scheduling"));
        rescheduling(area.part("rescheduling"));
        signing(area.part("sheet"));
        deciding(area.part("scope-changes"));
        closing(area.part("closing"));
        reversing(area.part("sheet-reversal"));
        returning(area.part("return"));
        area.part("reading");
        area.get("a visit", ALL + "/<visit>").expect(200);
        area.get("none", ALL + "/<unused visit>");
        area.get("scheduled", ALL).expect(200);
        area.get("completed, not billed", ALL + "?show=COMPLETED").expect(200);
        area.get("of today, found", ALL + "?show=TODAY&q=bakery").expect(200);
        area.get("nothing found", ALL + "?customer=<other customer>").expect(200);
        area.get("a word for show that means nothing", ALL + "?show=nonsense");
        area.get("a key that no page gave", ALL + "?after=nonsense");
        return area.parts();
    }

    private static void scheduling(Area area) {
        String visit = scheduling("visit", "48");
        area.post("a visit", ALL, visit).expect(201).again();
        area.post("the id is another's", ALL, visit.replace("twice", "once"));
        String quoted = """
                {"id": "<quoted visit>", "quote": "<quote>", "date": "2027-06-23", "crew": ["<technician>", "<other>"]}
                """;
        area.post("of an accepted quote", ALL, quoted).expect(201).again();
        String again = quoted.replace("<quoted visit>", "<unused visit>");
        area.post("a quote that is scheduled", ALL, again);
        area.post("a quote that is not accepted", ALL, again.replace("<quote>", "<declined quote>"));
        area.post("no such quote", ALL, again.replace("<quote>", "<unused quote>"));
        area.post("a return to where nothing was skipped", ALL, """
                {"id": "<unused visit>", "returnsTo": "<visit>", "date": "2027-06-16", "crew": ["<technician>"]}
                """);
        String unused = scheduling("unused visit", "48");
        area.post("no such customer", ALL, unused.replace("<customer>", "<unused customer>"));
        area.post("another customer's site", ALL, unused.replace("<site>", "<other site>"));
        area.post("no such service", ALL, unused.replace("<panel>", "<unused service>"));
        area.post("a surface that does not fit", ALL, unused.replace("<array>", "<roof>"));
        area.post("no such surface", ALL, unused.replace("<array>", "<unused surface>"));
        area.post("somebody not on the staff", ALL, unused.replace("<technician>", "<unused user>"));
        area.post("nobody goes", ALL, unused.replace("\"<technician>\"", ""));
        area.post("nothing of it", ALL, unused.replace("#48", "#0"));
        area.post("no lines", ALL, unused.replace("\"lines\"", "\"lanes\""));
        area.post("no date", ALL, unused.replace("\"date\"", "\"dote\""));
        area.post("not a date", ALL, unused.replace("2027-06-16", "soon"));
        area.post("a quantity as a number", ALL, unused.replace("#48 H87#", "48"));
    }

    private static void rescheduling(Area area) {
        area.post("a visit", ALL, scheduling("moved visit", "48")).expect(201);
        String path = ALL + "/<moved visit>/reschedule";
        String move = "{\"version\": 1, \"date\": \"2027-06-19\", \"crew\": [\"<other>\"], \"reason\": \"Rain\"}";
        area.post("a blank reason", path, move.replace("Rain", " "));
        area.post("somebody not on the staff", path, move.replace("<other>", "<unused user>"));
        area.post("no version", path, move.replace("\"version\"", "\"virsion\""));
        area.post("not a date", path, move.replace("2027-06-19", "soon"));
        area.post("no such visit", ALL + "/<unused visit>/reschedule", move);
        area.post("to another day and crew", path, move).expect(200).again();
        area.post("a stale version", path, move.replace("Rain", "Snow"));
        String cancel = "{\"version\": 2, \"reason\": \"The customer has sold the house\"}";
        String canceled = ALL + "/<moved visit>/cancel";
        area.post("no reason to cancel", canceled, "{\"version\": 2, \"reason\": \"\"}");
        area.post("a stale version is not canceled", canceled, cancel.replace("2", "1"));
        area.post("no such visit is canceled", ALL + "/<unused visit>/cancel", cancel);
        area.post("canceled", canceled, cancel).expect(200).again();
        area.post("a canceled visit is not rescheduled", path, move.replace("\"version\": 1", "\"version\": 3"));
    }

    private static void signing(Area area) {
        String path = ALL + "/<visit>/sheet";
        String sheet = sheet("sheet", "visit");
        area.as(Caller.OTHER_TECHNICIAN).put("another crew's", path, sheet);
        refused(area, "no such visit", ALL + "/<unused visit>/sheet", sheet);
        refused(area, "not all accounted for", path, sheet.replace("#46 H87#,\n", "#45 H87#,\n"));
        refused(area, "a line that is not the visit's", path, sheet.replace("<visit line>", "<unused line>"));
        refused(area, "nothing said of a line", path, sheet.replace("\"lines\"", "\"lanes\""));
        refused(area, "more than there is", path, sheet.replace("#2 GLL#", "#2000 GLL#"));
        refused(area, "no such mix", path, sheet.replace("<mix>", "<unused mix>"));
        refused(area, "no such canister", path, sheet.replace("<canister>", "<unused lot>"));
        refused(
                area,
                "another's location",
                path,
                sheet.replace("\"note\": \"All", "\"location\": \"<store>\", \"note\": \"All"));
        refused(area, "no such reason", path, sheet.replace("NO_ACCESS", "LAZY"));
        refused(area, "no such type of finding", path, sheet.replace("RUST", "TREASURE"));
        refused(area, "no such severity", path, sheet.replace("SOON", "NEVER"));
        refused(area, "minutes below zero", path, sheet.replace("120", "-1"));
        refused(area, "not a distance", path, sheet.replace("SMI", "HUR"));
        refused(area, "in the future", path, sheet.replace("2027-06-16", "2190-01-01"));
        refused(area, "not a number", path, sheet.replace("\"250\"", "\"hard\""));
        refused(area, "no effort", path, sheet.replace("\"effort\"", "\"efort\""));
        refused(area, "not a date", path, sheet.replace("2027-06-16", "today"));
        area.as(Caller.TECHNICIAN)
                .put("signed off, with a warning of alkaline soap", path, sheet)
                .expect(200)
                .again();
        area.as(Caller.TECHNICIAN).put("the id is another's", path, sheet.replace("All dry", "All wet"));
        area.as(Caller.TECHNICIAN).put("completed already", path, sheet("unused sheet", "visit"));
    }

    private static void refused(Area area, String title, String path, String sheet) {
        area.as(Caller.TECHNICIAN).put(title, path, sheet);
    }

    private static void deciding(Area area) {
        area.get("as they were found", ALL + "/<visit>").expect(200);
        boolean extraFirst = area.json()
                .getJsonArray("scopeChanges")
                .getJsonObject(0)
                .getString("type")
                .equals("EXTRA");
        area.naming("extra change", "/scopeChanges/" + (extraFirst ? 0 : 1) + "/id");
        area.naming("skipped change", "/scopeChanges/" + (extraFirst ? 1 : 0) + "/id");
        String path = ALL + "/<visit>/scope-changes/";
        area.post(
                "before they are decided it is not closed",
                ALL + "/<visit>/closing",
                "{\"id\": \"<unused closing>\", \"reason\": \"A gift\"}");
        String bill = "{\"version\": 1, \"decision\": \"BILL\", \"note\": \"As agreed\"}";
        area.post("billed", path + "<extra change>", bill).expect(200).again();
        String comeBack = "{\"version\": 1, \"decision\": \"RETURN_VISIT\"}";
        area.post("return for it", path + "<skipped change>", comeBack).expect(200);
        area.post("a stale version", path + "<extra change>", bill.replace("BILL", "NO_CHARGE"));
        area.post("what does not decide it", path + "<skipped change>", bill.replace("1", "2"));
        area.post("no such scope change", path + "<unused change>", bill);
        area.post("no such visit", ALL + "/<unused visit>/scope-changes/<extra change>", bill);
        area.post("no such decision", path + "<extra change>", bill.replace("BILL", "SHRUG"));
        area.post("no version", path + "<extra change>", "{\"decision\": \"BILL\"}");
    }

    private static void closing(Area area) {
        String path = ALL + "/<closed visit>/closing";
        area.post("a visit", ALL, scheduling("closed visit", "10")).expect(201);
        String closing = "{\"id\": \"<closing>\", \"reason\": \"A gift\"}";
        area.post("not completed yet", path, closing);
        area.as(Caller.TECHNICIAN)
                .put("signed off", ALL + "/<closed visit>/sheet", plainSheet("closed sheet", "closed visit"))
                .expect(200);
        area.post("a blank reason", path, closing.replace("A gift", " "));
        area.post("no reason", path, "{\"id\": \"<closing>\"}");
        area.post("no such visit", ALL + "/<unused visit>/closing", closing);
        area.post("closed", path, closing).expect(201).again();
        area.post("the id is another's", path, closing.replace("gift", "present"));
        area.post("closed already", path, closing.replace("<closing>", "<unused closing>"));
        String reversal = "{\"id\": \"<reopening>\", \"closing\": \"<closing>\", \"reason\": \"It was to be billed\"}";
        String undo = path + "/reversal";
        area.post("a blank reason", undo, reversal.replace("It was to be billed", " "));
        area.post("another closing", undo, reversal.replace("<closing>", "<unused closing>"));
        area.post("no such visit is reopened", ALL + "/<unused visit>/closing/reversal", reversal);
        area.post("reversed", undo, reversal).expect(201).again();
        area.post("the id is another's", undo, reversal.replace("billed", "given"));
        area.post("once only", undo, reversal.replace("<reopening>", "<unused reopening>"));
        area.post("closed for good", path, closing.replace("<closing>", "<last closing>"))
                .expect(201);
    }

    private static void reversing(Area area) {
        area.post("a visit", ALL, scheduling("wrong visit", "10")).expect(201);
        String path = ALL + "/<wrong visit>/sheet";
        String sheet = plainSheet("wrong sheet", "wrong visit").strip();
        String more = """
                , "items": [{"item": "<soap>", "quantity": #8 OZA#, "serviceLine": "<line>"}],
                 "count": {"document": "<sheet count>", "reason": "A canister more", "counted": [{"item": "<soap>", "basis": "DIFFERENCE", "quantity": #128 OZA#}]},
                 "surfaces": [{"surface": "<roof>", "extent": #1950 FTK#}],
                 "newSurfaces": [{"surface": "<found window>", "type": "WINDOW", "name": "Shop front", "extent": #3 H87#, "attributes": {"SCREENS": 1}}],
                 "findings": [{"id": "<wrong visit finding>", "type": "NEST", "severity": "NOTE"}]}
                """;
        area.as(Caller.TECHNICIAN)
                .put("signed off, with surfaces and a count", path, sheet.substring(0, sheet.length() - 1) + more)
                .expect(200)
                .again();
        String undo = path + "/<wrong sheet>/reversal";
        String reversal = "{\"id\": \"<sheet reversal>\", \"reason\": \"Wrong door\"}";
        String unused = reversal.replace("<sheet reversal>", "<unused reversal>");
        area.as(Caller.TECHNICIAN).post("not a technician's to reverse", undo, reversal);
        area.post("a blank reason", undo, unused.replace("Wrong door", " "));
        area.post("no reason", undo, "{\"id\": \"<unused reversal>\"}");
        area.post("no such sheet", path + "/<unused sheet>/reversal", unused);
        area.post("another visit's sheet", path + "/<sheet>/reversal", unused);
        area.post("not a stock document", "api/stock/documents/<wrong sheet>/reversal", unused);
        area.post("reversed", undo, reversal).expect(201).again();
        area.post("the id is another's", undo, reversal.replace("door", "house"));
        area.post("once only", undo, unused);
        area.get("the visit is scheduled again", ALL + "/<wrong visit>").expect(200);
        area.post("a closed visit's sheet", ALL + "/<closed visit>/sheet/<closed sheet>/reversal", unused);
    }

    private static void returning(Area area) {
        String visit = """
                {"id": "<return visit>", "returnsTo": "<visit>", "date": "2027-06-30", "crew": ["<technician>"], "note": "Bring the long ladder"}
                """;
        area.post("for what was skipped", ALL, visit).expect(201).again();
        String unused = visit.replace("<return visit>", "<unused visit>");
        area.post("a return that is scheduled", ALL, unused);
        area.post(
                "a decision that is scheduled",
                ALL + "/<visit>/scope-changes/<skipped change>",
                "{\"version\": 2, \"decision\": \"CANCEL\"}");
        area.post("to no visit", ALL, unused.replace("\"<visit>\"", "\"<no visit>\""));
    }
}
