package eaveside.web.invoices;

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
