package eaveside.invoicing;

import eaveside.catalog.TaxCategory;
import eaveside.kernel.Default;
import eaveside.kernel.Percent;

/**
 * A tax category (UNCL 5305) with its rate: what an invoice's tax is broken down by. Only the standard category has a
 * rate, above zero and at most 100 % (EN 16931 BR-S-5, BR-Z-5, BR-E-5, BR-AE-5, BR-G-5, BR-IC-5, BR-O-5).
 */
public record TaxRate(TaxCategory category, @Default("0") Percent rate) {
    private static final Percent ALL = Percent.of("100");

    public TaxRate {
        boolean standard = category == TaxCategory.S;
        if (standard != (rate.value().signum() > 0) || rate.value().signum() < 0 || rate.compareTo(ALL) > 0) {
            throw new InvoiceRefusal.RateNotOfCategory(category.name(), rate.toString());
        }
    }

    public static TaxRate standard(String rate) {
        return new TaxRate(TaxCategory.S, Percent.of(rate));
    }

    /** A category without tax. */
    public static TaxRate none(TaxCategory category) {
        return new TaxRate(category, Percent.of("0"));
    }

    /** Such as {@code S 8.25 %}. */
    @Override
    public String toString() {
        return category + " " + rate;
    }
}
