package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import java.util.List;
import org.joda.money.CurrencyUnit;

/**
 * What the draws took, lot by lot, and at which cost.
 *
 * @param  overruns what the books had estimated too low, and take back before the lines leave
 */
public record Drawn(CurrencyUnit currency, List<DrawnLine> lines, List<Overrun> overruns) {
    /**
     * Rated capacity exceeded: a canister whose reading shows that it works, although the books' estimate has used it up.
     * The estimate is corrected at no cost, so that over its life a canister costs what was paid for it.
     *
     * @param  quantity above zero, in the item's base unit
     */
    public record Overrun(StockItemId item, LotId lot, Quantity quantity) {
        public Overrun {
            Limits.taken("quantity", quantity);
        }
    }

    /**
     * Taken from one lot.
     *
     * @param  index    which of the draws asked for it, from 0
     * @param  quantity in the item's base unit, above zero
     * @param  cost     zero or more
     */
    public record DrawnLine(int index, Draw draw, LotId lot, Quantity quantity, Money cost) {
        public DrawnLine {
            Limits.taken("quantity", quantity);
            Limits.notNegative("cost", cost);
        }
    }

    public Drawn {
        lines = List.copyOf(lines);
        overruns = List.copyOf(overruns);
    }

    /** The cost of everything drawn. */
    public Money cost() {
        return Money.sum(currency, lines.stream().map(DrawnLine::cost).toList());
    }

    /** The cost of the draw at that index; zero where it took nothing. */
    public Money costOf(int index) {
        return Money.sum(
                currency,
                lines.stream()
                        .filter(l -> l.index() == index)
                        .map(DrawnLine::cost)
                        .toList());
    }
}
