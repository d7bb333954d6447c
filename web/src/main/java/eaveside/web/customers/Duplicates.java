package eaveside.web.customers;

import java.util.Locale;

/** What a script wants where a new customer may be here already. */
public enum Duplicates {
    REFUSE,
    ALLOW;

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
