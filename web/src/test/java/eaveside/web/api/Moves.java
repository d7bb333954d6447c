package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** The documents that move stock. */
final class Moves {
    private static final String PORTION = """
            {"id": "<%s>", "location": "<store>", "reason": "%s", "lines": [{"item": "<soap>", "quantity": #%s OZA#}]}
            """;

    private Moves() {}

    static Map<String, String> movements(World world) {
        Area area = new Area(world, "stock", Caller.OFFICE);
        receipts(area.part("receipts"));
        transfers(area.part("transfers"));
        counts(area.part("counts"));
        writeOffs(area.part("write-offs"));
        reversals(area.part("reversals"));
        area.part("levels");
        area.get("in the store room", "api/stock/locations/<store>/levels").expect(200);
        area.get("in the van", "api/stock/locations/<van>/levels").expect(200);
        return area.parts();
    }

    private static void receipts(Area area) {
        String path = "api/stock/receipts";
        String receipt = """
                {"id": "<receipt>", "date": "2027-06-16", "location": "<store>", "supplier": "Snap Suds & Co", "deliveryNote": "DN 2208",
                 "lines": [{"item": "<soap>", "lot": "<soap lot>", "pack": "canister", "quantity": #5 H87#, "cost": $160.00$},
                           {"item": "<resin>", "lot": "<canister>", "quantity": #10000 GRN#, "cost": $180.00$, "label": "SNAP-1"},
                           {"item": "<brush>", "lot": "<brush lot>", "quantity": #5000 H87#, "cost": $60.00$, "label": "SNAP-2"}]}
                """;
        area.post("goods come in", path, receipt).expect(201).again();
        area.post("the id is another's", path, receipt.replace("160.00", "161.00"));
        String unused = """
                {"id": "<unused receipt>", "location": "<store>", "supplier": "Snap Suds & Co",
                 "lines": [{"item": "<soap>", "lot": "<unused lot>", "quantity": #5 OZA#, "cost": $1.60$}]}
                """;
        area.post("a lot that is there", path, unused.replace("<unused lot>", "<soap lot>"));
        area.post("no such location", path, unused.replace("<store>", "<unused location>"));
        area.post("no such item", path, unused.replace("<soap>", "<unused item>"));
        area.post("no such pack", path, unused.replace("\"lot\"", "\"pack\": \"barrel\", \"lot\""));
        area.post("a unit that does not fit", path, unused.replace("OZA", "FOT"));
        area.post("nothing of it", path, unused.replace("#5", "#0"));
        area.post("a cost below zero", path, unused.replace("1.60", "-1.60"));
        area.post("another currency", path, World.spelled(unused).replace("USD", "EUR"));
        area.post("in the future", path, unused.replace("\"location\"", "\"date\": \"2190-01-01\", \"location\""));
        area.post("no lines", path, unused.replaceAll("\\[.*]", "[]"));
        area.post("a blank supplier", path, unused.replace("Snap Suds & Co", " "));
        area.post("not a number", path, unused.replace("1.60", "dear"));
        area.post("an amount without its currency", path, unused.replace("$1.60$", "1.60"));
        area.post("no cost", path, unused.replace("\"cost\"", "\"cist\""));
        area.post("no lines at all", path, unused.replace("\"lines\"", "\"lanes\""));
    }

    private static void transfers(Area area) {
        String path = "api/stock/transfers";
        String transfer = """
                {"id": "<transfer>", "from": "<store>", "to": "<van>", "note": "For the week",
                 "lines": [{"item": "<soap>", "quantity": #320 OZA#}]}
                """;
        area.post("goods move", path, transfer).expect(201).again();
        area.post("the id is another's", path, transfer.replace("320", "321"));
        area.post("whole lots", path, """
                {"id": "<lots transfer>", "from": "<store>", "to": "<van>",
                 "lines": [{"item": "<resin>", "lot": "<canister>"}, {"item": "<brush>", "lot": "<brush lot>"}]}
                """).expect(201);
        String unused = transfer.replace("<transfer>", "<unused transfer>");
        area.post("more than there is", path, unused.replace("320", "99999"));
        area.post("where it is already", path, unused.replace("<van>", "<store>"));
        area.post("no such location", path, unused.replace("<van>", "<unused location>"));
        area.post("no such item", path, unused.replace("<soap>", "<unused item>"));
        area.post("to nowhere", path, unused.replace("\"to\"", "\"ti\""));
    }

    private static void counts(Area area) {
        String path = "api/stock/counts";
        String count = PORTION.formatted("count", "End of the month", "316");
        area.post("less than in the books", path, count).expect(201).again();
        area.post("the id is another's", path, count.replace("316", "315"));
        String unused = count.replace("<count>", "<unused count>");
        area.post("below zero", path, unused.replace("316", "-1"));
        area.post("of unknown cost", path, unused.replace("<soap>", "<rubber>").replace("OZA", "FOT"));
        area.post(
                "a cost in another currency, where nothing is found",
                path,
                World.spelled(unused.replace("316", "1"))
                        .replaceFirst(
                                "(\"quantity\": \\{[^}]*})",
                                "$1, \"cost\": {\"amount\": \"1\", \"currency\": \"EUR\"}"));
        area.post("no such location", path, unused.replace("<store>", "<unused location>"));
        area.post("no such item", path, unused.replace("<soap>", "<unused item>"));
        area.post("a blank reason", path, unused.replace("End of the month", " "));
        area.post("not a number", path, unused.replace("316", "some"));
        area.post("no quantity", path, unused.replace("\"quantity\"", "\"quantities\""));
    }

    private static void writeOffs(Area area) {
        String path = "api/stock/write-offs";
        String writeOff = PORTION.formatted("write-off", "Frozen", "16");
        area.post("goods are written off", path, writeOff).expect(201).again();
        area.post("the id is another's", path, writeOff.replace("16", "17"));
        String unused = writeOff.replace("<write-off>", "<unused write-off>");
        area.post("more than there is", path, unused.replace("16", "99999"));
        area.post("none is there", path, unused.replace("<soap>", "<rubber>").replace("OZA", "FOT"));
        area.post("no such location", path, unused.replace("<store>", "<unused location>"));
        area.post("no such item", path, unused.replace("<soap>", "<unused item>"));
        area.post("a blank reason", path, unused.replace("Frozen", " "));
        area.post("not a number", path, unused.replace("16", "some"));
        area.post("no location", path, unused.replace("\"location\"", "\"locution\""));
    }

    private static void reversals(Area area) {
        String path = "api/stock/documents/<write-off>/reversal";
        String reversal = "{\"id\": \"<write-off reversal>\", \"reason\": \"It thawed\"}";
        String unused = reversal.replace("<write-off reversal>", "<unused reversal>");
        area.post("a blank reason", path, unused.replace("It thawed", " "));
        area.post("no reason", path, "{\"id\": \"<unused reversal>\"}");
        area.post("in full", path, reversal).expect(201).again();
        area.post("the id is another's", path, reversal.replace("It thawed", "It did not"));
        area.post("once only", path, unused);
        area.post("goods that have moved on", path.replace("<write-off>", "<receipt>"), unused);
        area.post("no such document", path.replace("<write-off>", "<unused write-off>"), unused);
    }
}
