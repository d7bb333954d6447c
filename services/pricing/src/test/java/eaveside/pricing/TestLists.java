package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.internal.PricingEngine;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A small price list, and the language of the engine's tests. */
final class TestLists {
    static final CurrencyUnit USD = CurrencyUnit.USD;
    static final ServiceLineId ARRAYS = ServiceLineId.next();
    static final ServiceLineId GLASS = ServiceLineId.next();
    static final ServiceLineId ROOFS = ServiceLineId.next();
    static final ServiceItemId PANELS = ServiceItemId.next();
    static final ServiceItemId SKYLIGHTS = ServiceItemId.next();
    static final ServiceItemId PANES = ServiceItemId.next();
    static final ServiceItemId ROOF = ServiceItemId.next();
    static final Map<ServiceItemId, ServiceLineId> LINES =
            Map.of(PANELS, ARRAYS, SKYLIGHTS, GLASS, PANES, GLASS, ROOF, ROOFS);

    private TestLists() {}

    /**
     * Panels 9.00, from 20 8.00, from 40 7.50; story 2 up 20 %, 3 up 50 %; soiling grade 3 up 1.25 each. Skylights 12.00.
     * Panes 4.00, from 20 3.50. Roof 0.35 a square foot, from 1,000 0.285. 5 % off where services share the visit.
     */
    static PriceList list(String visitMinimum, LineMinimum... minimums) {
        return new PriceList(
                "Spring",
                LocalDate.of(2026, 3, 1),
                usd(visitMinimum),
                Percent.of("5"),
                List.of(minimums),
                List.of(
                        new ServiceItemPrice(
                                PANELS,
                                List.of(each("0", "9.00"), each("20", "8.00"), each("40", "7.50")),
                                List.of(
                                        percent(SurfaceAttribute.STORY, 2, "20"),
                                        percent(SurfaceAttribute.STORY, 3, "50"),
                                        fixed(SurfaceAttribute.SOILING_GRADE, 3, "1.25"))),
                        new ServiceItemPrice(SKYLIGHTS, List.of(each("0", "12.00")), List.of()),
                        new ServiceItemPrice(PANES, List.of(each("0", "4.00"), each("20", "3.50")), List.of()),
                        new ServiceItemPrice(
                                ROOF,
                                List.of(step("0", "0.35", Unit.SQUARE_FOOT), step("1000", "0.285", Unit.SQUARE_FOOT)),
                                List.of())));
    }

    static QuantityStep each(String from, String price) {
        return step(from, price, Unit.PIECE);
    }

    static QuantityStep step(String from, String price, Unit unit) {
        return new QuantityStep(Quantity.of(from, unit), perOne(price, unit));
    }

    static UnitPrice perOne(String price, Unit unit) {
        return UnitPrice.perOne(USD, new BigDecimal(price), unit);
    }

    static Surcharge percent(SurfaceAttribute attribute, int atLeast, String percent) {
        return Surcharge.ofPrice(attribute, atLeast, Percent.of(percent));
    }

    static Surcharge fixed(SurfaceAttribute attribute, int atLeast, String amount) {
        return Surcharge.fixed(attribute, atLeast, perOne(amount, Unit.PIECE));
    }

    static WorkLine work(ServiceItemId serviceItem, String quantity) {
        return work(serviceItem, quantity, Map.of(), null, false);
    }

    static WorkLine work(ServiceItemId serviceItem, String quantity, Map<SurfaceAttribute, Integer> attributes) {
        return work(serviceItem, quantity, attributes, null, false);
    }

    static WorkLine quoted(ServiceItemId serviceItem, String quantity, String unitPrice) {
        return work(serviceItem, quantity, Map.of(), perOne(unitPrice, Unit.PIECE), false);
    }

    static WorkLine noCharge(ServiceItemId serviceItem, String quantity) {
        return work(serviceItem, quantity, Map.of(), null, true);
    }

    private static WorkLine work(
            ServiceItemId serviceItem,
            String quantity,
            Map<SurfaceAttribute, Integer> attributes,
            @Nullable UnitPrice fixed,
            boolean noCharge) {
        Unit unit = serviceItem.equals(ROOF) ? Unit.SQUARE_FOOT : Unit.PIECE;
        return new WorkLine(VisitLineId.next(), serviceItem, Quantity.of(quantity, unit), attributes, fixed, noCharge);
    }

    static PricedWork price(PriceList list, WorkLine... work) {
        return PricingEngine.price(list, List.of(work), LINES::get);
    }

    static Money usd(String amount) {
        return Money.of(USD, amount);
    }

    static LineMinimum minimum(ServiceLineId line, String amount) {
        return new LineMinimum(line, usd(amount));
    }
}
