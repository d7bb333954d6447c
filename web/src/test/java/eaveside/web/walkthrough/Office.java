package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.SelectOption;
import eaveside.web.testing.Server;
import java.time.LocalDate;

/** The office: quotes, books, bills and follows up. */
final class Office extends Person {
    Office(BrowserContext context, Server server) {
        super(context, server, "linus");
    }

    /** Finds the customer by typing a part of the name, and answers the id. */
    String opens(String customer) {
        go("customers");
        page.fill("#q", customer.substring(customer.indexOf(' ') + 1));
        follow("#found a:has-text(\"" + customer + "\")");
        return shown();
    }

    /** Makes a quote for the whole home, marks it sent and accepted, and answers its id. */
    String quotes(String customer) {
        go("quotes/new?customer=" + customer);
        follow("main a:has-text(\"Home\")");
        for (String work : new String[] {
            "Solar panel, washed and rinsed", "Skylight, outside", "Window pane, outside", "Roof, soft wash"
        }) {
            page.locator("#lines label.check:has-text(\"" + work + "\") input").check();
        }
        page.locator("#prices:not(:has-text(\"No work is selected\"))").waitFor();
        look("quote-form");
        follow("main form .actions button:has-text(\"Save\")");
        String quote = shown();
        follow("form[action$=\"/send\"] button");
        unfold("details:has(#acceptedBy)");
        page.fill("#acceptedBy", "Mr. Moss, by phone");
        follow("form[action$=\"/accept\"] button");
        return quote;
    }

    /** Books the accepted quote for tomorrow, the preset day, and answers the visit. */
    String books(String quote, String technician) {
        go("quotes/" + quote);
        follow("a[href=\"/visits/new?quote=" + quote + "\"]");
        page.locator("label.check:has-text(\"" + technician + "\") input").check();
        look("scheduling");
        follow("main form[action=\"/visits/new\"] .actions button");
        return shown();
    }

    void moves(String visit, LocalDate to, String reason) {
        go("visits/" + visit);
        unfold("details:has(form[action$=\"/reschedule\"])");
        page.locator("form[action$=\"/reschedule\"] [name=date]").fill(to.toString());
        page.locator("form[action$=\"/reschedule\"] [name=reason]").fill(reason);
        follow("form[action$=\"/reschedule\"] button");
    }

    /** Books work at the site without a quote, and answers the visit. */
    String schedulesWithoutQuote(String customer) {
        go("visits/new?customer=" + customer);
        follow("main a:has-text(\"Home\")");
        Locator serviceItem =
                page.locator("main tr.row select[name$=serviceItem]").first();
        serviceItem.selectOption(new SelectOption().setIndex(1));
        page.locator("label.check:has-text(\"Bram\") input").check();
        look("scheduling-without-quote");
        follow("main form[action=\"/visits/new\"] .actions button");
        return shown();
    }

    void cancels(String visit, String reason) {
        go("visits/" + visit);
        unfold("details:has(form[action$=\"/cancel\"])");
        page.fill("#cancel-reason", reason);
        follow("form[action$=\"/cancel\"] button");
    }

    void reversesTheSheetOf(String visit, String reason) {
        go("visits/" + visit);
        unfold("details:has(form[action$=\"/sheet/reverse\"])");
        page.locator("form[action$=\"/sheet/reverse\"] [name=reason]").fill(reason);
        follow("form[action$=\"/sheet/reverse\"] button");
    }

    void decides(String scopeChange, String decision) {
        follow("section.scope-change:has-text(\"" + scopeChange + "\") button[value=" + decision + "]");
    }

    /** Makes the draft of a visit whose differences are decided, issues it, and answers the invoice. */
    String bills(String visit) {
        go("visits/" + visit);
        follow("form[action^=\"/invoices/from-visit\"] button");
        look("invoice-draft");
        String invoice = shown();
        follow("a[href$=\"/issue\"]");
        look("invoice-issue");
        follow("form[action$=\"/issue\"] button");
        return invoice;
    }

    void credits(String invoice, String reason) {
        go("invoices/" + invoice + "/credit");
        page.fill("#reason", reason);
        look("invoice-credit");
        follow("form[action$=\"/credit\"] button");
    }

    /** Records a payment for the invoice and answers it; the amount preset is all that is open. */
    String recordsPayment(String invoice, String amount) {
        go("invoices/" + invoice);
        follow("a[href^=\"/payments/new\"]");
        if (!amount.isEmpty()) {
            page.fill("#amount", amount);
            page.locator("table input.figure").first().fill(amount);
        }
        page.locator("#method").selectOption(new SelectOption().setIndex(1));
        look("payment-form");
        follow("form[action=\"/payments\"] button:not([formaction])");
        go("invoices/" + invoice);
        follow("main td a[href^=\"/payments/\"] >> nth=-1");
        return shown();
    }

    void reversesPayment(String payment, String reason) {
        go("payments/" + payment);
        unfold("details:has(form[action$=\"/reverse\"])");
        page.fill("#reason", reason);
        follow("form[action$=\"/reverse\"] button");
    }

    /** Opens the finding of the visit by its type, and answers it. */
    String opensFinding(String visit, String type) {
        go("visits/" + visit);
        follow("main a[href^=\"/findings/\"]:has-text(\"" + type + "\")");
        return shown();
    }

    void sendsNotice(String finding) {
        String notice = paper("findings/" + finding + "/notice.pdf", "notice.pdf");
        assertTrue(notice.contains("Odalys Fennimore"), notice);
        page.fill("#sentTo", "odalys.fennimore@example.com");
        follow("form[action$=\"/notice\"] button");
    }

    /** Notes the upsell and makes the quote from it, and answers the quote. */
    String upsells(String finding, String what) {
        page.locator("form[action$=\"/upsell\"] [name=note]").fill(what);
        follow("form[action$=\"/upsell\"] button");
        follow("form[action$=\"/upsell\"] a[href^=\"/quotes/new\"]");
        page.locator("#lines label.check:has-text(\"Window pane, outside\") input")
                .check();
        follow("main form .actions button:has-text(\"Save\")");
        String quote = shown();
        go("findings/" + finding);
        return quote;
    }

    void refers(String trade, String to) {
        page.fill("#trade", trade);
        page.fill("#referredTo", to);
        follow("form[action$=\"/referral\"] button");
    }

    void closes(String reason) {
        page.fill("#reason", reason);
        follow("form[action$=\"/close\"] button");
    }
}
