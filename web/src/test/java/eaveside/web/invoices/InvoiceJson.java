package eaveside.web.invoices;

import eaveside.web.quotes.SiteToQuote;
import java.util.UUID;

/** What scripts send about invoices, in dollars. */
final class InvoiceJson {
    private InvoiceJson() {}

    static String id() {
        return UUID.randomUUID().toString();
    }

    static String money(String amount) {
        return "{\"amount\": \"%s\", \"currency\": \"USD\"}".formatted(amount);
    }

    static String quantity(String value, String unit) {
        return "{\"value\": \"%s\", \"unit\": \"%s\"}".formatted(value, unit);
    }

    /** A price for so many of the unit, less the discount on it. */
    static String price(String gross, String per, String unit, String discount) {
        return "{\"gross\": {\"amount\": \"%s\", \"currency\": \"USD\", \"per\": %s}, \"discount\": \"%s\"}"
                .formatted(gross, quantity(per, unit), discount);
    }

    /** Hours at 40.00 each on the solar line, at the standard rate of 8.25 %. */
    static String hours(String id, String quantity) {
        return """
            {"id": "%s", "serviceLine": "%s", "description": "Moss off the steps", "quantity": %s,
             "price": %s, "taxCode": "Q-STANDARD"}
            """.formatted(id, SiteToQuote.SOLAR_LINE, quantity(quantity, "HUR"), price("40.00", "1", "HUR", "0"));
    }

    /** An hour: 43.30 with its tax. */
    static String draft(String id, String customer) {
        return """
            {"id": "%s", "customer": "%s", "serviceDate": "%s", "lines": [%s]}
            """.formatted(id, customer, SiteToQuote.today(), hours(id(), "1"));
    }

    static String payment(String id, String customer, String amount, String method, String... invoiceAndAmount) {
        return """
            {"id": "%s", "customer": "%s", "amount": %s, "method": "%s", %s}
            """.formatted(
                        id,
                        customer,
                        money(amount),
                        method,
                        invoiceAndAmount.length == 0
                                ? "\"keepAsCredit\": true"
                                : "\"allocations\": [{\"invoice\": \"%s\", \"amount\": %s}]"
                                        .formatted(invoiceAndAmount[0], money(invoiceAndAmount[1])));
    }
}
