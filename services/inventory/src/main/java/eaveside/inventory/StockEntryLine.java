package eaveside.inventory;

import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.ledger.DocumentType;
import java.time.LocalDate;

/** An entry of the stock ledger with its document; in above zero, out below. */
public record StockEntryLine(
        DocumentId document,
        DocumentType type,
        long number,
        LocalDate postingDate,
        LocalDate serviceDate,
        String summary,
        int line,
        StockItemId item,
        String itemName,
        LotId lot,
        String lotLabel,
        LocationId location,
        String locationName,
        Quantity quantity,
        Money value) {}
