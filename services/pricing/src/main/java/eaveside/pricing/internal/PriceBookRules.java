package eaveside.pricing.internal;

import eaveside.catalog.Catalog;
import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.ServiceItem;
import eaveside.customers.SurfaceType;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.PriceList;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import jakarta.inject.Inject;

/** What a price list must agree with outside itself: the books' currency and what the company sells. */
@Shared
public class PriceBookRules {
    private final Catalog catalog;
    private final Books books;

    @Inject
    public PriceBookRules(Catalog catalog, Books books) {
        this.catalog = catalog;
        this.books = books;
    }

    public void check(PriceList list) {
        if (!list.currency().equals(books.currency())) {
            throw new KernelRefusal.Unfit("visitMinimum", "{field} must be in " + books.currency());
        }
        Elements.each("lineMinimums", list.lineMinimums(), (minimum, i) -> catalog.line(minimum.serviceLine()));
        Elements.each("prices", list.prices(), (price, i) -> check(price, catalog.serviceItem(price.serviceItem())));
    }

    private static void check(ServiceItemPrice price, ServiceItem serviceItem) {
        if (!price.base().unit().isLike(serviceItem.unit())) {
            throw new CatalogRefusal.ServiceItemDoesNotFit(
                    serviceItem.name(),
                    "is counted in " + serviceItem.unit().code() + ", so it has no price per "
                            + price.base().unit().code(),
                    "steps[0].price");
        }
        SurfaceType type = serviceItem.surfaceType();
        for (Surcharge surcharge : price.surcharges()) {
            if (type == null || !surcharge.attribute().appliesTo(type)) {
                throw new CatalogRefusal.ServiceItemDoesNotFit(
                        serviceItem.name(),
                        "is done on surfaces that have no " + surcharge.attribute()
                                + ", so it has no surcharge for it");
            }
        }
    }
}
