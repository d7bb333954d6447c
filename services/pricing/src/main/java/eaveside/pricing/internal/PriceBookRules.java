package eaveside.pricing.internal;

import eaveside.customers.SurfaceKind;
import eaveside.ledger.Books;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.OfferingPrice;
import eaveside.pricing.PriceList;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.Surcharge;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;

/** What a price list must agree with outside itself: the books' currency and what the company sells. */
@Dependent
public class PriceBookRules {
    private final Catalogue catalogue;
    private final Books books;

    @Inject
    public PriceBookRules(Catalogue catalogue, Books books) {
        this.catalogue = catalogue;
        this.books = books;
    }

    public void check(PriceList list) {
        if (!list.currency().equals(books.currency())) {
            throw new PricingRefusal.BadPriceList("visitMinimum", "The books are kept in " + books.currency());
        }
        for (LineMinimum minimum : list.lineMinimums()) {
            catalogue.line(minimum.serviceLine());
        }
        for (OfferingPrice price : list.prices()) {
            check(price, catalogue.offering(price.offering()));
        }
    }

    private static void check(OfferingPrice price, Offering offering) {
        if (!price.base().unit().isLike(offering.unit())) {
            throw new PricingRefusal.OfferingDoesNotFit(
                    offering.name(),
                    "is counted in " + offering.unit().code() + ", so it has no price per "
                            + price.base().unit().code());
        }
        SurfaceKind kind = offering.surfaceKind();
        for (Surcharge surcharge : price.surcharges()) {
            if (kind == null || !surcharge.attribute().appliesTo(kind)) {
                throw new PricingRefusal.OfferingDoesNotFit(
                        offering.name(),
                        "is done on surfaces that have no " + surcharge.attribute()
                                + ", so it has no surcharge for it");
            }
        }
    }
}
