package eaveside.inventory;

import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import java.time.LocalDate;

/** A lot as it came in. */
public record Lot(
        LotId id,
        StockItemId item,
        String label,
        DocumentId document,
        LocalDate receivedOn,
        Quantity received,
        Money cost) {}
