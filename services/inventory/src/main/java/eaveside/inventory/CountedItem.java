package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import org.jspecify.annotations.Nullable;

/**
 * One item counted, or one lot of it.
 *
 * @param  lot      null counts the item over all its lots in the location; canisters and brushes are counted by lot, but a
 *                 difference above zero without a lot enters a canister or brush that the books did not know
 * @param  quantity in the item's base unit or one like it
 * @param  cost     what all of the found goods are worth; null takes the newest unit cost of the item in the location, else
 *                 anywhere
 */
public record CountedItem(
        StockItemId item,
        @Nullable LotId lot,
        @Default("FOUND") CountBasis basis,
        Quantity quantity,
        @Nullable Money cost) {
    public CountedItem {
        Check check = new Check();
        check.value(
                () -> basis == CountBasis.FOUND
                        ? Limits.notNegative("quantity", quantity)
                        : Limits.bounded("quantity", quantity),
                quantity);
        if (cost != null) {
            check.value(() -> Limits.notNegative("cost", cost), cost);
        }
        check.done();
    }

    public static CountedItem found(StockItemId item, @Nullable LotId lot, Quantity quantity) {
        return new CountedItem(item, lot, CountBasis.FOUND, quantity, null);
    }

    public static CountedItem difference(StockItemId item, @Nullable LotId lot, Quantity difference) {
        return new CountedItem(item, lot, CountBasis.DIFFERENCE, difference, null);
    }

    public CountedItem worth(Money total) {
        return new CountedItem(item, lot, basis, quantity, total);
    }
}
