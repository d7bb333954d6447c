package eaveside.pricing;

import eaveside.kernel.Elements;
import eaveside.kernel.Id;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UnitPrice;
import java.util.List;

/**
 * Work with its prices, net of tax, in the order that it was asked in.
 *
 * @param  total of the lines that are billed
 * @param  noCharge value of the lines that are not billed
 */
public record PricedWork(List<Line> lines, Money total, Money noCharge) {
    public PricedWork {
        lines = List.copyOf(lines);
        if (!total.equals(sum(lines, false, total)) || !noCharge.equals(sum(lines, true, total))) {
            throw new PricingRefusal.Unexplained();
        }
    }

    /**
     * A priced line.
     *
     * @param  net before and after its share of what is missing to minimums
     */
    public record Line(
            Id key,
            ServiceItemId serviceItem,
            ServiceLineId serviceLine,
            Quantity quantity,
            UnitPrice unitPrice,
            Money netBeforeTopUp,
            Money topUp,
            Money net,
            boolean noCharge,
            Explanation explanation) {
        public Line {
            boolean explained = explanation.quantity().equals(quantity)
                    && explanation.unitPrice().equals(unitPrice)
                    && explanation.netBeforeTopUp().equals(netBeforeTopUp)
                    && explanation.topUp().equals(topUp)
                    && explanation.net().equals(net);
            if (!explained) {
                throw new PricingRefusal.Unexplained();
            }
        }

        public static Line of(WorkLine work, ServiceLineId serviceLine, Explanation explanation) {
            return new Line(
                    work.key(),
                    work.serviceItem(),
                    serviceLine,
                    work.quantity(),
                    explanation.unitPrice(),
                    explanation.netBeforeTopUp(),
                    explanation.topUp(),
                    explanation.net(),
                    work.noCharge(),
                    explanation);
        }
    }

    /** From its lines, of which there is at least one. */
    public static PricedWork of(List<Line> lines) {
        Money zero = Money.zero(lines.getFirst().net().currency());
        return new PricedWork(lines, sum(lines, false, zero), sum(lines, true, zero));
    }

    /** These prices, of work that is asked for; refuses a line, and a total, that the books cannot hold. */
    public PricedWork held() {
        Elements.each("lines", lines, (line, i) -> line.netBeforeTopUp().held("quantity"));
        total.plus(noCharge).held("lines");
        return this;
    }

    /** What was added to reach minimums. */
    public Money topUp() {
        return Money.sum(total.currency(), lines.stream().map(Line::topUp).toList());
    }

    private static Money sum(List<Line> lines, boolean noCharge, Money like) {
        return Money.sum(
                like.currency(),
                lines.stream()
                        .filter(l -> l.noCharge() == noCharge)
                        .map(Line::net)
                        .toList());
    }
}
