package eaveside.demo;

import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.SetTax;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.costing.CostRates;
import eaveside.costing.SetCostRates;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceList;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.SavePriceBook;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The owner's part: what is sold, how it is taxed, what it costs to do, and what it costs the customer. */
@Dependent
class Selling {
    static final TaxCode TAXED = new TaxCode("LOCAL");
    private static final TaxCode UNTAXED = new TaxCode("UNTAXED");

    private final SetTax setTax;
    private final SetCostRates setCostRates;
    private final SaveServiceLine saveServiceLine;
    private final SaveServiceItem saveServiceItem;
    private final SavePriceBook savePriceBook;
    private final PublishPriceBook publishPriceBook;

    @Inject
    Selling(
            SetTax setTax,
            SetCostRates setCostRates,
            SaveServiceLine saveServiceLine,
            SaveServiceItem saveServiceItem,
            SavePriceBook savePriceBook,
            PublishPriceBook publishPriceBook) {
        this.setTax = setTax;
        this.setCostRates = setCostRates;
        this.saveServiceLine = saveServiceLine;
        this.saveServiceItem = saveServiceItem;
        this.savePriceBook = savePriceBook;
        this.publishPriceBook = publishPriceBook;
    }

    /** Taxability is invented like everything here; a real owner confirms it locally. */
    void setTaxes(LocalDate from, UserId by) {
        setTax.set(new TaxSetting(TAXED, TaxCategory.S, Percent.of("6.35"), from, ""), by);
        setTax.set(
                new TaxSetting(
                        UNTAXED, TaxCategory.O, Percent.of("0"), from, "Outside the scope of the local sales tax"),
                by);
    }

    void setRates(LocalDate from, String hour, String mile, String overhead, UserId by) {
        setCostRates.set(
                new CostRates(
                        from,
                        Dollars.of(hour),
                        UnitPrice.perOne(Dollars.USD, new BigDecimal(mile), Unit.MILE),
                        Dollars.of(overhead)),
                by);
    }

    Range offer(Map<Goods, StockItemId> goods, UserId by) {
        Map<Line, ServiceLineId> lines = new EnumMap<>(Line.class);
        for (Line line : Line.values()) {
            ServiceLineId id = ServiceLineId.next();
            saveServiceLine.save(new ServiceLine(id, line.name(), line.title, true, 0), by);
            lines.put(line, id);
        }
        Map<Work, ServiceItemId> serviceItems = new EnumMap<>(Work.class);
        for (Work work : Work.values()) {
            ServiceItemId id = ServiceItemId.next();
            saveServiceItem.save(serviceItem(id, work, Objects.requireNonNull(lines.get(work.line)), goods), by);
            serviceItems.put(work, id);
        }
        return new Range(lines, serviceItems);
    }

    private static ServiceItem serviceItem(
            ServiceItemId id, Work work, ServiceLineId line, Map<Goods, StockItemId> goods) {
        List<StandardConsumable> consumables = new EnumMap<>(work.consumables())
                .entrySet().stream()
                        .map(e -> new StandardConsumable(
                                Objects.requireNonNull(goods.get(e.getKey())),
                                Quantity.of(e.getValue(), e.getKey().unit)))
                        .toList();
        return new ServiceItem(
                id,
                line,
                work.code,
                work.title,
                work.unit,
                StandardMinutes.of(work.minutes),
                work.line == Line.ARRAYS ? UNTAXED : TAXED,
                work.type,
                work.cautions(),
                consumables,
                true,
                0);
    }

    /** @param  level of all prices against the first list, in per cent; rounded to five cents */
    PriceBookDraft draftPrices(String name, LocalDate from, int level, Range range, UserId by) {
        return savePriceBook.save(
                new PriceBookDraft(
                        PriceBookId.next(),
                        new PriceList(
                                name,
                                from,
                                Dollars.of("150.00"),
                                Percent.of("5"),
                                Arrays.stream(Line.values())
                                        .map(line -> new LineMinimum(range.id(line), Dollars.whole(line.minimum)))
                                        .toList(),
                                Arrays.stream(Work.values())
                                        .map(work -> price(work, level, range))
                                        .toList()),
                        0),
                by);
    }

    void publishPrices(PriceBookDraft draft, UserId by) {
        publishPriceBook.publish(new PublishPriceBook.Publish(draft.id(), draft.version(), by));
    }

    private static ServiceItemPrice price(Work work, int level, Range range) {
        Quantity base = Quantity.of(work.perUnits(), work.unit);
        List<QuantityStep> steps = work.steps().stream()
                .map(step -> new QuantityStep(
                        Quantity.of(step.from(), work.unit),
                        new UnitPrice(Dollars.USD, atLevel(step.cents(), level), base)))
                .toList();
        return new ServiceItemPrice(range.id(work), steps, surcharges(work, base));
    }

    private static BigDecimal atLevel(int cents, int level) {
        return BigDecimal.valueOf((long) cents * level)
                .divide(BigDecimal.valueOf(500), 0, RoundingMode.HALF_UP)
                .multiply(BigDecimal.valueOf(5))
                .movePointLeft(2);
    }

    private static List<Surcharge> surcharges(Work work, Quantity base) {
        List<Surcharge> surcharges = new ArrayList<>();
        percent(work, SurfaceAttribute.STORY, 3, "15", surcharges);
        percent(work, SurfaceAttribute.STORY, 4, "30", surcharges);
        percent(work, SurfaceAttribute.PITCH_DEGREES, 35, "20", surcharges);
        percent(work, SurfaceAttribute.SOILING_GRADE, 3, "25", surcharges);
        percent(work, SurfaceAttribute.YEARS_SINCE_CLEAN, 3, "10", surcharges);
        percent(work, SurfaceAttribute.ROW_ACCESS, 2, "15", surcharges);
        percent(work, SurfaceAttribute.DIVIDED_PANES, 1, "30", surcharges);
        percent(work, SurfaceAttribute.GROWTH_GRADE, 3, "25", surcharges);
        percent(work, SurfaceAttribute.FRAGILE_COVERING, 1, "35", surcharges);
        if (work.line == Line.WINDOWS) {
            surcharges.add(Surcharge.fixed(
                    SurfaceAttribute.HARD_WATER, 2, new UnitPrice(Dollars.USD, new BigDecimal("1.50"), base)));
        }
        return surcharges;
    }

    private static void percent(
            Work work, SurfaceAttribute attribute, int atLeast, String percent, List<Surcharge> surcharges) {
        if (work.type != null && attribute.appliesTo(work.type)) {
            surcharges.add(Surcharge.ofPrice(attribute, atLeast, Percent.of(percent)));
        }
    }
}
