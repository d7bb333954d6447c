package eaveside.web.invoices;

import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Refusal;
import eaveside.web.security.WebRefusal;
import java.util.Locale;

/** Which invoices a list shows. */
public enum Show {
    ALL,
    OUTSTANDING,
    OVERDUE,
    DRAFTS;

    String inAddress() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Which issued invoices to search among. */
    ReadInvoices.Which which() {
        return switch (this) {
            case OUTSTANDING -> ReadInvoices.Which.OUTSTANDING;
            case OVERDUE -> ReadInvoices.Which.OVERDUE;
            case ALL, DRAFTS -> ReadInvoices.Which.ALL;
        };
    }

    /** What the address says; all where it says nothing. */
    static Show of(String inAddress) {
        if (inAddress.isEmpty()) {
            return ALL;
        }
        for (Show show : values()) {
            if (show.inAddress().equals(inAddress)) {
                return show;
            }
        }
        throw unknown();
    }

    /** The same for what lists issued invoices alone. */
    static Show issued(String inAddress) {
        Show show = of(inAddress);
        if (show == DRAFTS) {
            throw unknown();
        }
        return show;
    }

    private static Refusal unknown() {
        return new WebRefusal.Within(
                Refusal.Type.MALFORMED, "web.unreadable", "show", "{field} must be one of all, outstanding, overdue");
    }
}
