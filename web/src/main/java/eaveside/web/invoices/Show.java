package eaveside.web.invoices;

import eaveside.invoicing.ReadInvoices;
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

    /** What the address says; everything where it says nothing known. */
    static Show of(String inAddress) {
        for (Show show : values()) {
            if (show.inAddress().equals(inAddress)) {
                return show;
            }
        }
        return ALL;
    }
}
