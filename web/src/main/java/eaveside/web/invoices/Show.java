package eaveside.web.invoices;

import eaveside.invoicing.ReadInvoices;

/** Which invoices a list shows. */
public enum Show {
    ALL,
    OUTSTANDING,
    PAST_DUE,
    DRAFTS;

    /** Which issued invoices to search among. */
    ReadInvoices.Which which() {
        return switch (this) {
            case OUTSTANDING -> ReadInvoices.Which.OUTSTANDING;
            case PAST_DUE -> ReadInvoices.Which.PAST_DUE;
            case ALL, DRAFTS -> ReadInvoices.Which.ALL;
        };
    }
}
