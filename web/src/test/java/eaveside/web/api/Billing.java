package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Invoices: previews, drafts, issued ones and their credit memos. */
final class Billing {
    static final String INVOICES = "api/invoices";

    private static final String EDIT = "\"version\": 1";

    private Billing() {}

    private static String draft(String id, String hours) {
        return """
                {"id": "<%1$s>", "version": 0, "customer": "<customer>", "serviceDate": "2027-06-16", "reference": "Snap order",
                 "note": "Thank you",
                 "lines": [{"id": "<%1$s line>", "serviceLine": "<line>", "description": "Moss off the steps", "quantity": #%2$s HUR#,
                            "price": {"gross": $40.00 per 1 HUR$, "discount": "2.5"},
                            "adjustments": [{"type": "ALLOWANCE", "amount": $5.00$, "reason": "Loyal"}, {"type": "CHARGE", "amount": $1.25$, "reason": "Bags"}],
                            "taxCode": "SNAP-TAX"}],
                 "adjustments": [{"type": "ALLOWANCE", "amount": $10.00$, "reason": "Spring", "taxCode": "SNAP-TAX"},
                                 {"type": "CHARGE", "amount": $20.00$, "reason": "Parking", "taxCode": "SNAP-EXEMPT"}]}
                """.formatted(id, hours);
    }

    /** An issued invoice of 43.30: an hour at 40.00 with its tax of 8.25 %. */
    static void issued(Area area, String id, String customer) {
        area.post("a draft to issue", INVOICES, """
                {"id": "<%1$s>", "customer": "<%2$s>", "serviceDate": "2027-06-16",
                 "lines": [{"id": "<%1$s line>", "serviceLine": "<line>", "description": "Moss off the steps", "quantity": #1 HUR#,
                            "price": {"gross": $40.00 per 1 HUR$}, "taxCode": "SNAP-TAX"}]}
                """.formatted(id, customer)).expect(201);
        area.post("issued", INVOICES + "/<" + id + ">/issue", "{\"version\": 1}")
                .expect(200);
    }

    static Map<String, String> invoices(World world) {
        Area area = new Area(world, "invoices", Caller.OFFICE);
        preview(area.part("preview"));
        drafts(area.part("drafts"));
        editing(area.part("editing"));
        issuing(area.part("issuing"));
        ofVisits(area.part("of-a-visit"));
        crediting(area.part("crediting"));
        area.part("reading");
        area.get("found by name", INVOICES + "?q=Snap%20Bakery").expect(200);
        area.get("outstanding", INVOICES + "?show=OUTSTANDING").expect(200);
        area.get("a customer's past due", INVOICES + "?show=PAST_DUE&customer=<customer>")
                .expect(200);
        area.get("no such customer's", INVOICES + "?customer=<unused customer>");
        area.get("a word for show that means nothing", INVOICES + "?show=nonsense");
        area.get("a key that no page gave", INVOICES + "?after=nonsense");
        area.get("aging", INVOICES + "/aging").expect(200);
        return area.parts();
    }

    private static void preview(Area area) {
        String path = INVOICES + "/preview";
        String preview = World.spelled("""
                {"currency": "EUR", "prepaid": $10.00$, "rounding": $0.01$,
                 "lines": [{"quantity": #3 HUR#, "price": {"gross": $40.005 per 1 HUR$, "discount": "1"},
                            "adjustments": [{"type": "ALLOWANCE", "amount": $5.00$, "reason": "Loyal"}, {"type": "CHARGE", "amount": $2.00$, "reason": "Bags"}],
                            "tax": {"category": "S", "rate": "19"}},
                           {"quantity": #1 C62#, "price": {"gross": $12.50 per 1 C62$}, "tax": {"category": "Z"}}],
                 "adjustments": [{"type": "ALLOWANCE", "amount": $1.00$, "reason": "Spring", "tax": {"category": "S", "rate": "19"}},
                                 {"type": "CHARGE", "amount": $4.00$, "reason": "Parking", "tax": {"category": "E"}}]}
                """).replace("USD", "EUR");
        area.post("totals", path, preview).expect(200).again();
        area.post("no lines", path, "{\"currency\": \"USD\", \"lines\": []}");
        area.post("a price below zero", path, preview.replace("40.005", "-40"));
        area.post("an allowance below zero", path, preview.replace("\"5.00\"", "\"-5.00\""));
        area.post("a rate that its category does not have", path, preview.replace("\"Z\"", "\"Z\", \"rate\": \"5\""));
        area.post("no such category", path, preview.replace("\"Z\"", "\"Q\""));
        area.post("no such unit", path, preview.replace("HUR", "ZZ9"));
        area.post(
                "no such currency",
                path,
                preview.replace("\"currency\": \"EUR\", \"prepaid", "\"currency\": \"XXQ\", \"prepaid"));
        area.post(
                "two currencies",
                path,
                preview.replace("\"currency\": \"EUR\", \"prepaid", "\"currency\": \"USD\", \"prepaid"));
        area.post("no quantity", path, preview.replace("\"quantity\"", "\"quontity\""));
        area.post("not a number", path, preview.replace("40.005", "dear"));
        area.post("a comma", path, preview.replace("12.50", "12,50"));
    }

    private static void drafts(Area area) {
        area.post("a draft", INVOICES, draft("invoice", "3")).expect(201).again();
        area.post("the id is another's", INVOICES, draft("invoice", "4"));
        String unused = draft("unused invoice", "3");
        area.post("no such customer", INVOICES, unused.replace("<customer>", "<unused customer>"));
        area.post("no such tax code", INVOICES, unused.replaceFirst("SNAP-TAX", "SNAP-NO-TAX"));
        area.post("no such service line", INVOICES, unused.replace("\"<line>\"", "\"<no line>\""));
        area.post("a blank description", INVOICES, unused.replace("Moss off the steps", " "));
        area.post("before the books", INVOICES, unused.replace("2027-06-16", "1999-01-01"));
        area.post("before its tax", INVOICES, unused.replace("2027-06-16", "2019-01-01"));
        area.post("prepaid below zero", INVOICES, unused.replace("\"reference\"", "\"prepaid\": $-1$, \"reference\""));
        area.post("another currency", INVOICES, World.spelled(unused).replaceFirst("USD", "EUR"));
        area.next("drafts-refused");
        area.post("no lines", INVOICES, """
                {"id": "<unused invoice>", "customer": "<customer>", "serviceDate": "2027-06-16", "lines": []}
                """);
        area.post("no customer", INVOICES, unused.replace("\"customer\"", "\"custamer\""));
        area.post("not a date", INVOICES, unused.replace("2027-06-16", "soon"));
        area.post("not a number", INVOICES, unused.replace("#3", "#many"));
        area.post("a comma", INVOICES, unused.replace("40.00", "40,00"));
        area.post("no such unit", INVOICES, unused.replace("HUR", "ZZ9"));
        area.get("the draft", INVOICES + "/<invoice>").expect(200);
        area.get("none", INVOICES + "/<unused invoice>");
    }

    private static void editing(Area area) {
        String path = INVOICES + "/<invoice>";
        String edit = draft("invoice", "2").replace("\"version\": 0", EDIT);
        area.put("edited", path, edit).expect(200).again();
        area.put("a stale version", path, edit.replace("#2 HUR", "#5 HUR"));
        area.put(
                "no such draft",
                INVOICES + "/<unused invoice>",
                draft("unused invoice", "2").replace("\"version\": 0", EDIT));
        area.put("another id than in the address", INVOICES + "/<unused invoice>", edit);
        area.post("a draft to discard", INVOICES, draft("discarded invoice", "1"))
                .expect(201);
        String discarded = INVOICES + "/<discarded invoice>";
        area.delete("a stale version is not discarded", discarded + "?version=7");
        area.delete("no version", discarded);
        area.delete("not a version", discarded + "?version=last");
        area.delete("no such draft is discarded", INVOICES + "/<unused invoice>?version=1");
        area.delete("discarded", discarded + "?version=1").expect(204).again();
    }

    private static void issuing(Area area) {
        String path = INVOICES + "/<invoice>/issue";
        area.post("a stale version", path, "{\"version\": 1}");
        area.post("no version", path, "{}");
        area.post("not a date", path, "{\"version\": 2, \"date\": \"soon\"}");
        area.post("in the future", path, "{\"version\": 2, \"date\": \"2190-01-01\"}");
        area.post("no such word for credit", path, "{\"version\": 2, \"credit\": \"PERHAPS\"}");
        area.post("no such draft", INVOICES + "/<unused invoice>/issue", "{\"version\": 1}");
        area.post("issued", path, "{\"version\": 2}").expect(200).again();
        area.post("issued already", path, "{\"version\": 3}");
        area.put(
                "an issued invoice is not edited",
                INVOICES + "/<invoice>",
                draft("invoice", "9").replace("\"version\": 0", "\"version\": 2"));
        area.delete("nor discarded", INVOICES + "/<invoice>?version=2");
        area.get("the invoice", INVOICES + "/<invoice>").expect(200);
    }

    private static void ofVisits(Area area) {
        String path = INVOICES + "/from-visit/";
        String bill = "{\"id\": \"<visit invoice>\"}";
        String unused = "{\"id\": \"<unused invoice>\"}";
        area.post("a draft", path + "<visit>", bill).expect(201).again();
        area.post("on a draft already", path + "<visit>", unused);
        area.post("not completed", path + "<wrong visit>", unused);
        area.post("closed", path + "<closed visit>", unused);
        area.post("no such visit", path + "<unused visit>", unused);
        area.post("issued", INVOICES + "/<visit invoice>/issue", "{\"version\": 1}")
                .expect(200)
                .again();
        area.get("the visit now", "api/visits/<visit>").expect(200);
    }

    private static void crediting(Area area) {
        issued(area, "credited invoice", "customer");
        String path = INVOICES + "/<credited invoice>/credit";
        String credit = "{\"id\": \"<credit memo>\", \"reason\": \"Not done\"}";
        String unused = credit.replace("<credit memo>", "<unused credit memo>");
        area.post("a blank reason", path, unused.replace("Not done", " "));
        area.post("no reason", path, "{\"id\": \"<unused credit memo>\"}");
        area.post("not a date", path, unused.replace("\"reason\"", "\"date\": \"soon\", \"reason\""));
        area.post("before the invoice", path, unused.replace("\"reason\"", "\"date\": \"1999-01-01\", \"reason\""));
        area.post("no such invoice", INVOICES + "/<unused invoice>/credit", unused);
        area.post("in full", path, credit).expect(201).again();
        area.post("the id is another's", path, credit.replace("done", "ours"));
        area.post("once only", path, unused);
        area.get("the invoice now", INVOICES + "/<credited invoice>").expect(200);
    }
}
