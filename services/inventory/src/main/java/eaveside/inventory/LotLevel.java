package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.time.LocalDate;

/**
 * A lot, and what one location holds of it.
 *
 * @param  label    batch or serial number; may be empty
 * @param  received as it came in, wherever
 * @param  quantity left in the location
 * @param  value    of what is left there
 */
public record LotLevel(
        LotId lot,
        StockItem item,
        String label,
        LocalDate receivedOn,
        Quantity received,
        Quantity quantity,
        Money value) {}
