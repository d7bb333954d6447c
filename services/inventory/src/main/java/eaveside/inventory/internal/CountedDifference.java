package eaveside.inventory.internal;

import eaveside.inventory.StockItem;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Entry;
import eaveside.ledger.Posted;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One movement that a count makes.
 *
 * @param  index      which of the count's lines it comes from, from 0
 * @param  bringsALot whether the found goods become a lot of their own
 */
public record CountedDifference(int index, StockItem item, Movement movement, boolean bringsALot) {
    public List<Entry> money() {
        return movement.quantity().isPositive()
                ? StockLedger.money(AccountRole.INVENTORY, AccountRole.COUNT_DIFFERENCES, movement.value(), item.name())
                : StockLedger.money(
                        AccountRole.COUNT_DIFFERENCES,
                        AccountRole.INVENTORY,
                        movement.value().negated(),
                        item.name());
    }

    public Optional<NewLot> newLot(Posted count, LocalDate date) {
        return bringsALot
                ? Optional.of(new NewLot(
                        movement.lot(),
                        item,
                        "Count " + count.number() + "/" + (index + 1),
                        date,
                        movement.quantity(),
                        movement.value()))
                : Optional.empty();
    }
}
