package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.util.List;
import org.joda.money.CurrencyUnit;

/** What the draws took, lot by lot, and at which cost. */
public record Drawn(CurrencyUnit currency, List<DrawnLine> lines) {
    /**
     * Taken from one lot.
     *
     * @param index    which of the draws asked for it, from 0
     * @param quantity in the item's base unit, above zero
     * @param cost     zero or more
     */
    public record DrawnLine(int index, Draw draw, LotId lot, Quantity quantity, Money cost) {
        public DrawnLine {
            Limits.positive("quantity", quantity);
            Limits.notNegative("cost", cost);
        }
    }

    public Drawn {
        lines = List.copyOf(lines);
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
