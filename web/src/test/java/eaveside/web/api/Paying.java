package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Payments, refunds and unapplied credit. */
final class Paying {
    private static final String PAYMENTS = "api/payments";
    private static final String INVOICES = Billing.INVOICES;

    private Paying() {}

    static Map<String, String> payments(World world) {
        Area area = new Area(world, "payments", Caller.OFFICE);
        recording(area.part("recording"));
        applying(area.part("credit"));
        refunding(area.part("refunds"));
        reversing(area.part("reversal"));
        area.part("reading");
        area.get("a payment", PAYMENTS + "/<payment>").expect(200);
        area.get("none", PAYMENTS + "/<unused payment>");
        area.get("a customer's", PAYMENTS + "?customer=<other customer>").expect(200);
        area.get("no such customer's", PAYMENTS + "?customer=<unused customer>");
        area.get("everyone's", PAYMENTS).expect(200);
        area.get("a key that no page gave", PAYMENTS + "?after=nonsense");
        area.get("the open invoice", INVOICES + "/<open invoice>").expect(200);
        return area.parts();
    }

    private static void recording(Area area) {
        Billing.issued(area, "paid invoice", "other customer");
        Billing.issued(area, "open invoice", "other customer");
        String payment = """
                {"id": "<payment>", "customer": "<other customer>", "amount": $75.00$, "method": "BANK_TRANSFER", "reference": "Snap 1044",
                 "allocations": [{"invoice": "<paid invoice>", "amount": $43.30$}]}
                """;
        area.post("with more than it pays", PAYMENTS, payment).expect(201).again();
        area.post("the id is another's", PAYMENTS, payment.replace("BANK_TRANSFER", "CASH"));
        area.next("recording-refused");
        String kept = """
                {"id": "<other payment>", "customer": "<other customer>", "amount": $10.00$, "method": "CASH", "keepAsCredit": true}
                """;
        area.post("kept as credit", PAYMENTS, kept).expect(201);
        area.post(
                "pays nothing, and does not say so",
                PAYMENTS,
                kept.replace("<other payment>", "<unused payment>").replace("true", "false"));
        String unused = payment.replace("<payment>", "<unused payment>").replace("<paid invoice>", "<open invoice>");
        area.post("no such customer", PAYMENTS, unused.replace("<other customer>", "<unused customer>"));
        area.post("no such invoice", PAYMENTS, unused.replace("<open invoice>", "<unused invoice>"));
        area.post("another customer's invoice", PAYMENTS, unused.replace("<open invoice>", "<invoice>"));
        area.post("more than is due", PAYMENTS, unused.replace("43.30", "43.31"));
        area.post("more than was paid", PAYMENTS, unused.replace("75.00", "40.00"));
        area.post(
                "one invoice twice",
                PAYMENTS,
                unused.replace("$43.30$}", "$1.00$}, {\"invoice\": \"<open invoice>\", \"amount\": $1.00$}"));
        area.post("nothing", PAYMENTS, unused.replace("75.00", "0"));
        area.post("below zero", PAYMENTS, unused.replace("75.00", "-75"));
        area.post("in the future", PAYMENTS, unused.replace("\"method\"", "\"date\": \"2190-01-01\", \"method\""));
        area.post("no such method", PAYMENTS, unused.replace("BANK_TRANSFER", "SHELLS"));
        area.post("not a number", PAYMENTS, unused.replace("75.00", "much"));
        area.post("another currency", PAYMENTS, World.spelled(unused).replaceFirst("USD", "EUR"));
        area.post(
                "a trillion",
                PAYMENTS,
                kept.replace("<other payment>", "<unused payment>").replace("10.00", "1000000000000"));
        area.post("no amount", PAYMENTS, unused.replace("\"amount\": $75.00$", "\"amunt\": $75.00$"));
        area.post("not a date", PAYMENTS, unused.replace("\"method\"", "\"date\": \"soon\", \"method\""));
    }

    private static void applying(Area area) {
        String path = INVOICES + "/<open invoice>/apply";
        String apply = "{\"id\": \"<application>\", \"amount\": $20.00$}";
        String unusedApply = apply.replace("<application>", "<unused application>");
        area.post("more than the customer has", path, unusedApply.replace("20.00", "42.00"));
        area.post("more than is due", path, unusedApply.replace("20.00", "43.31"));
        area.post("nothing", path, unusedApply.replace("20.00", "0"));
        area.post("not a number", path, unusedApply.replace("20.00", "some"));
        area.post("no amount", path, "{\"id\": \"<unused application>\"}");
        area.post("no such invoice", INVOICES + "/<unused invoice>/apply", unusedApply);
        area.post("applied", path, apply).expect(201).again();
        area.post("the id is another's", path, apply.replace("20.00", "19.00"));

        String undo = INVOICES + "/<open invoice>/applications/<application>/reversal";
        String unapply = "{\"id\": \"<unapplication>\", \"reason\": \"Another invoice was meant\"}";
        String unused = unapply.replace("<unapplication>", "<unused unapplication>");
        area.post("a blank reason", undo, unused.replace("Another invoice was meant", " "));
        area.post("no reason", undo, "{\"id\": \"<unused unapplication>\"}");
        area.post("no such application", undo.replace("<application>", "<unused application>"), unused);
        area.post("another invoice's", undo.replace("<open invoice>", "<paid invoice>"), unused);
        area.post("unapplied", undo, unapply).expect(201).again();
        area.post("the id is another's", undo, unapply.replace("Another", "No"));
        area.post("once only", undo, unused);
    }

    private static void refunding(Area area) {
        String path = PAYMENTS + "/refunds";
        String refund = """
                {"id": "<refund>", "customer": "<other customer>", "amount": $12.50$, "method": "CHECK", "reference": "Snap back"}
                """;
        area.post("credit", path, refund).expect(201).again();
        area.post("the id is another's", path, refund.replace("12.50", "12.51"));
        String unused = refund.replace("<refund>", "<unused refund>");
        area.post("more than the customer has", path, unused.replace("12.50", "1000"));
        area.post("nothing", path, unused.replace("12.50", "0"));
        area.post("no such customer", path, unused.replace("<other customer>", "<unused customer>"));
        area.post("no such method", path, unused.replace("CHECK", "SHELLS"));
        area.post("no method", path, unused.replace("\"method\"", "\"methud\""));
    }

    private static void reversing(Area area) {
        String path = PAYMENTS + "/<payment>/reversal";
        String reversal = "{\"id\": \"<payment reversal>\", \"reason\": \"Bounced\"}";
        String unused = reversal.replace("<payment reversal>", "<unused reversal>");
        area.post("a payment whose credit is used", path, unused);
        String other = PAYMENTS + "/<other payment>/reversal";
        area.post("a blank reason", other, unused.replace("Bounced", " "));
        area.post("no reason", other, "{\"id\": \"<unused reversal>\"}");
        area.post("no such payment", PAYMENTS + "/<unused payment>/reversal", unused);
        area.post("in full", other, reversal).expect(201).again();
        area.post("the id is another's", other, reversal.replace("Bounced", "Lost"));
        area.post("once only", other, unused);
        area.get("the payment now", PAYMENTS + "/<other payment>").expect(200);
    }
}
