package eaveside.inventory.internal;

import eaveside.inventory.StockItem;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.time.LocalDate;

/**
 * A lot that a document is about to bring in.
 *
 * @param  quantity above zero, in the item's base unit
 * @param  value    of all of it
 */
public record NewLot(LotId id, StockItem item, String label, LocalDate receivedOn, Quantity quantity, Money value) {}
