package eaveside.pricing.internal;

import eaveside.kernel.Decision;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.Explanation;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.PriceReason;
import eaveside.pricing.PricedWork;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import eaveside.pricing.WorkLine;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.function.Function;

/**
 * Prices the work of one visit from one price list; knows neither database nor container. In this order: the book's
 * price at the step that the service's quantity on the whole visit reaches; surcharges on it; the reduction for a
 * shared visit; quantity × unit price, rounded once; what is missing to the minimum of each service line, then to that
 * of the visit, each spread over the lines by their net so far, cents by largest remainder.
 */
@Decision
public final class PricingEngine {
    private final PriceList list;
    private final Function<ServiceItemId, ServiceLineId> serviceLines;
    private final Map<ServiceItemId, Quantity> onVisit = new HashMap<>();
    private final int services;

    private PricingEngine(PriceList list, List<WorkLine> work, Function<ServiceItemId, ServiceLineId> serviceLines) {
        this.list = list;
        this.serviceLines = serviceLines;
        for (WorkLine line : work) {
            onVisit.merge(line.serviceItem(), line.quantity(), (sum, more) -> sum.plus(more.in(sum.unit())));
        }
        this.services = (int) work.stream()
                .map(line -> serviceLines.apply(line.serviceItem()))
                .distinct()
                .count();
    }

    /**
     * Refuses no work at all, and a service that is neither in the list nor comes with a fixed price.
     *
     * @param  serviceLines the service line of a service
     */
    public static PricedWork price(
            PriceList list, List<WorkLine> work, Function<ServiceItemId, ServiceLineId> serviceLines) {
        if (work.isEmpty()) {
            throw new KernelRefusal.NoRows("lines");
        }
        return new PricingEngine(list, work, serviceLines).priced(work);
    }

    private PricedWork priced(List<WorkLine> work) {
        List<Pending> lines = new ArrayList<>();
        Elements.each("lines", work, (line, i) -> lines.add(unitPriced(line)));
        List<Pending> billed = lines.stream().filter(p -> !p.work.noCharge()).toList();
        Map<ServiceLineId, List<Pending>> byLine = new LinkedHashMap<>();
        billed.forEach(p ->
                byLine.computeIfAbsent(p.serviceLine, line -> new ArrayList<>()).add(p));
        byLine.forEach((serviceLine, of) -> {
            Optional<LineMinimum> minimum = list.minimumOf(serviceLine);
            minimum.ifPresent(m -> topUp(of, m.amount(), PriceReason.ToLineMinimum::new));
        });
        topUp(billed, list.visitMinimum(), PriceReason.ToVisitMinimum::new);
        return PricedWork.of(lines.stream().map(Pending::toLine).toList());
    }

    private Pending unitPriced(WorkLine work) {
        List<PriceReason> reasons = new ArrayList<>();
        UnitPrice fixed = work.fixedUnitPrice();
        if (fixed != null) {
            reasons.add(new PriceReason.AsQuoted(fixed));
        } else {
            fromBook(work, reasons);
        }
        return new Pending(work, serviceLines.apply(work.serviceItem()), reasons);
    }

    private void fromBook(WorkLine work, List<PriceReason> reasons) {
        ServiceItemPrice price = list.priceOf(work.serviceItem())
                .orElseThrow(
                        () -> new PricingRefusal.NotInBook(work.serviceItem().toString(), list.name()));
        Quantity reached = onVisit.getOrDefault(work.serviceItem(), work.quantity());
        QuantityStep step = price.stepAt(reached);
        reasons.add(new PriceReason.FromBook(step.from(), reached, step.price()));
        UnitPrice unitPrice = step.price();
        for (Surcharge surcharge : reachedBy(work, price)) {
            PriceReason.Surcharged reason = surcharged(surcharge, work, step.price());
            reasons.add(reason);
            unitPrice = UnitAmounts.plus(unitPrice, reason.added());
        }
        if (services > 1 && !list.sharedReduction().isZero()) {
            UnitPrice off = UnitAmounts.share(unitPrice, list.sharedReduction());
            reasons.add(new PriceReason.SharedVisit(services, list.sharedReduction(), off));
        }
    }

    /** Of each attribute, the surcharge with the highest threshold that the surface reaches. */
    private static List<Surcharge> reachedBy(WorkLine work, ServiceItemPrice price) {
        Map<Object, Surcharge> highest = new LinkedHashMap<>();
        for (Surcharge surcharge : price.surcharges()) {
            Integer value = work.attributes().get(surcharge.attribute());
            if (value != null && value >= surcharge.atLeast()) {
                highest.merge(
                        surcharge.attribute(),
                        surcharge,
                        BinaryOperator.maxBy(Comparator.comparingInt(Surcharge::atLeast)));
            }
        }
        return List.copyOf(highest.values());
    }

    private static PriceReason.Surcharged surcharged(Surcharge surcharge, WorkLine work, UnitPrice bookPrice) {
        int value = work.attributes().getOrDefault(surcharge.attribute(), surcharge.atLeast());
        return new PriceReason.Surcharged(
                surcharge.attribute(), value, surcharge.atLeast(), surcharge.percent(), surcharge.addedTo(bookPrice));
    }

    private static void topUp(List<Pending> lines, Money minimum, ToReason reason) {
        if (lines.isEmpty()) {
            return;
        }
        List<Money> nets = lines.stream().map(Pending::net).toList();
        Money missing = minimum.minus(Money.sum(minimum.currency(), nets));
        if (!missing.isPositive()) {
            return;
        }
        List<Money> shares = missing.split(nets.stream().map(Money::amount).toList());
        for (int i = 0; i < shares.size(); i++) {
            if (!shares.get(i).isZero()) {
                lines.get(i).reasons.add(reason.of(minimum, shares.get(i)));
            }
        }
    }

    private interface ToReason {
        PriceReason of(Money minimum, Money share);
    }

    /** A line whose reasons are still being collected. */
    private record Pending(WorkLine work, ServiceLineId serviceLine, List<PriceReason> reasons) {
        Money net() {
            return explanation().net();
        }

        Explanation explanation() {
            return new Explanation(work.quantity(), reasons);
        }

        PricedWork.Line toLine() {
            return PricedWork.Line.of(work, serviceLine, explanation());
        }
    }
}
