package eaveside.catalog;

import eaveside.customers.SurfaceType;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;

/** A founded company and the small language of the services' tests. */
final class CatalogFixture {
    static final UserId OWNER = UserId.next();
    static final TaxCode STANDARD = new TaxCode("STD");
    static final LocalDate BOOKS_FROM = LocalDate.of(2026, 1, 1);
    static final StockItemId SOAP = StockItemId.next();
    static final StockItemId PADS = StockItemId.next();

    private CatalogFixture() {}

    static void found(Bench bench) {
        bench.employ(OWNER.value());
        bench.get(FoundCompany.class)
                .found(new Company(
                        "Gutterby Exterior Care",
                        new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                        "office@example.com",
                        "555-0100",
                        "",
                        "USD",
                        "America/Los_Angeles",
                        Company.Measures.US,
                        BOOKS_FROM));
        SaveStockItem stock = bench.get(SaveStockItem.class);
        stock.save(StockItem.of(SOAP, "SOAP", "Soap", StockType.CONCENTRATE, Unit.US_FLUID_OUNCE), OWNER);
        stock.save(StockItem.of(PADS, "PADS", "Pads", StockType.PLAIN, Unit.PIECE), OWNER);
        bench.get(SetTax.class).set(standard("8.25", BOOKS_FROM), OWNER);
    }

    static TaxSetting standard(String rate, LocalDate from) {
        return new TaxSetting(STANDARD, TaxCategory.S, Percent.of(rate), from, "");
    }

    static ServiceLine line(String code) {
        return new ServiceLine(ServiceLineId.next(), code, "Line " + code, true, 0);
    }

    static ServiceItem panels(ServiceLineId line, String code) {
        return new ServiceItem(
                ServiceItemId.next(),
                line,
                code,
                "Panel cleaned",
                Unit.PIECE,
                StandardMinutes.of("2.5"),
                STANDARD,
                SurfaceType.ARRAY,
                "Live in daylight: touch no wiring.",
                List.of(
                        new StandardConsumable(SOAP, Quantity.of("0.35", Unit.US_FLUID_OUNCE)),
                        new StandardConsumable(PADS, Quantity.of("0.002", Unit.PIECE))),
                true,
                0);
    }

    static ServiceItem with(ServiceItem serviceItem, String name, Unit unit, List<StandardConsumable> consumables) {
        return new ServiceItem(
                serviceItem.id(),
                serviceItem.serviceLine(),
                serviceItem.code(),
                name,
                unit,
                serviceItem.minutesPerUnit(),
                serviceItem.taxCode(),
                serviceItem.surfaceType(),
                serviceItem.cautions(),
                consumables,
                serviceItem.active(),
                serviceItem.version());
    }
}
