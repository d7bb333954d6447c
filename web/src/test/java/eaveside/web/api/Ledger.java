package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** The books behind it all, what the service lines earned, and the audit log. */
final class Ledger {
    private Ledger() {}

    static Map<String, String> books(World world) {
        Area area = new Area(world, "books", Caller.OFFICE);
        accounts(area.part("accounts"));
        journals(area.part("journals"));
        documents(area.part("documents"));
        months(area.part("months"));
        area.part("trial-balance");
        String path = "api/books/trial-balance";
        area.get("of this month", path).expect(200);
        area.get("not a day", path + "?from=soon");
        area.get("days that run backwards", path + "?from=2027-06-16&to=2027-06-01");
        area.part("margins");
        area.as(Caller.OWNER).get("of this month", "api/margins").expect(200);
        area.as(Caller.OWNER).get("not a day", "api/margins?from=soon");
        area.as(Caller.OWNER).get("days that run backwards", "api/margins?from=2027-06-16&to=2027-06-01");
        return area.parts();
    }

    private static void accounts(Area area) {
        String path = "api/books/accounts";
        String account = "{\"code\": \"6791\", \"name\": \"Snap advertising\", \"type\": \"EXPENSE\"}";
        String unused = account.replace("6791", "6792");
        area.as(Caller.OWNER).post("an account", path, account).expect(201).again();
        area.as(Caller.OWNER).post("the code is another's", path, account.replace("advertising", "leaflets"));
        area.as(Caller.OWNER).post("a name that is taken", path, unused);
        area.as(Caller.OWNER).post("not a code", path, account.replace("6791", "ads"));
        area.as(Caller.OWNER).post("a blank name", path, unused.replace("Snap advertising", " "));
        area.as(Caller.OWNER).post("no such type", path, unused.replace("EXPENSE", "WISH"));
        area.as(Caller.OWNER).post("no type", path, "{\"code\": \"6792\", \"name\": \"Snap\"}");
        area.as(Caller.OWNER)
                .post("a liability", path, "{\"code\": \"2791\", \"name\": \"Snap loan\", \"type\": \"LIABILITY\"}")
                .expect(201);
        area.get("one", path + "/6791").expect(200);
        area.get("none", path + "/6792");
        area.get("all", path).expect(200);
    }

    private static void journals(Area area) {
        String path = "api/books/journals";
        String journal = """
                {"id": "<journal>", "type": "EXPENSE", "date": "2027-06-16", "summary": "Snap leaflets",
                 "lines": [{"account": "6791", "debit": $48.20$, "note": "Printing"}, {"account": "2791", "credit": $48.20$}]}
                """;
        area.post("an expense", path, journal).expect(201).again();
        area.post("the id is another's", path, journal.replace("leaflets", "posters"));
        area.post(
                        "a journal entry",
                        path,
                        journal.replace("<journal>", "<free journal>")
                                .replace("EXPENSE", "JOURNAL")
                                .replace("48.20", "7.00"))
                .expect(201);
        String unused = journal.replace("<journal>", "<unused journal>");
        area.post("out of balance", path, unused.replaceFirst("48.20", "48.21"));
        area.post("both sides", path, unused.replace("\"note\"", "\"credit\": $48.20$, \"note\""));
        area.post("an account that documents post to", path, unused.replace("6791", "1200"));
        area.post("no such account", path, unused.replace("6791", "9999"));
        area.post("not a code", path, unused.replace("6791", "ads"));
        area.post("nothing", path, unused.replace("48.20", "0"));
        area.post("one line", path, unused.replaceAll(", \\{\"account\": \"2791\".*}]", "]"));
        area.post("in the future", path, unused.replace("2027-06-16", "2190-01-01"));
        area.post("a blank summary", path, unused.replace("Snap leaflets", " "));
        area.post("not a number", path, unused.replaceFirst("48.20", "dear"));
        area.post("a part of a cent", path, unused.replace("48.20", "48.205"));
        area.post("another currency", path, World.spelled(unused).replace("USD", "EUR"));
        area.post("a trillion", path, unused.replace("48.20", "1000000000000"));
        area.post("a year of no calendar", path, unused.replace("2027-06-16", "-9999-01-01"));
        area.post("two currencies", path, World.spelled(unused).replaceFirst("USD", "EUR"));
        area.post("no such type", path, unused.replace("EXPENSE", "WISH"));
        area.post("no lines", path, unused.replace("\"lines\"", "\"lanes\""));
    }

    private static void documents(Area area) {
        area.get("an expense", "api/books/documents/<journal>").expect(200);
        area.get("a job sheet", "api/books/documents/<sheet>").expect(200);
        area.next("documents-invoice");
        area.get("an invoice", "api/books/documents/<visit invoice>").expect(200);
        area.next("documents-reversal");
        area.get("a payment that was reversed", "api/books/documents/<other payment>")
                .expect(200);
        area.get("none", "api/books/documents/<unused journal>");
        String path = "api/books/documents/<free journal>/reversal";
        String reversal = "{\"id\": \"<journal reversal>\", \"reason\": \"Entered twice\"}";
        String unused = reversal.replace("<journal reversal>", "<unused reversal>");
        area.post("a blank reason", path, unused.replace("Entered twice", " "));
        area.post("no reason", path, "{\"id\": \"<unused reversal>\"}");
        area.post("no such document", path.replace("<free journal>", "<unused journal>"), unused);
        area.post("not a journal", path.replace("<free journal>", "<visit invoice>"), unused);
        area.post("reversed in full", path, reversal).expect(201).again();
        area.post("the id is another's", path, reversal.replace("twice", "thrice"));
        area.post("once only", path, unused);
        area.get("the reversal", "api/books/documents/<journal reversal>").expect(200);
    }

    /** The company was founded this month: a month that can be closed is arranged first. */
    private static void months(Area area) {
        area.world().openBooksAMonthEarlier();
        String month = "api/books/months/2027-05";
        String close = "{\"id\": \"<close>\"}";
        String unused = close.replace("<close>", "<unused close>");
        area.get("before it is closed", month).expect(200);
        area.get("the one that runs", "api/books/months/2027-06").expect(200);
        area.get("not a month", "api/books/months/soon");
        area.as(Caller.OWNER).post("one that has not ended", "api/books/months/2027-06/close", unused);
        area.as(Caller.OWNER).post("no id", month + "/close", "{}");
        area.as(Caller.OWNER).post("not a month", "api/books/months/soon/close", unused);
        area.as(Caller.OWNER)
                .post("the oldest open one", month + "/close", close)
                .expect(201)
                .again();
        area.as(Caller.OWNER).post("closed already", month + "/close", unused);
        area.get("closed", month).expect(200);
    }

    static Map<String, String> audit(World world) {
        Area area = new Area(world, "audit", Caller.OWNER);
        area.part("log");
        String path = "api/audit-log";
        area.shortened()
                .get("the newest of the office", path + "?by=<office>&from=2027-06-16&to=2027-06-17")
                .expect(200);
        area.get("of one action", path + "?by=<office>&action=mix.save").expect(200);
        area.get("of what begins so", path + "?action=credit.").expect(200);
        area.shortened().get("refused", path + "?by=<office>&outcome=REFUSED").expect(200);
        area.get("none", path + "?to=1999-01-01").expect(200);
        area.get("of no such user", path + "?by=<unused user>");
        area.get("an id that is none", path + "?by=seven");
        area.get("not an action", path + "?action=Not%20An%20Action");
        area.get("no such outcome", path + "?outcome=MAYBE");
        area.get("not a day", path + "?from=soon");
        area.get("a key that no page gave", path + "?after=nonsense");
        return area.parts();
    }
}
