package eaveside.inventory;

import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.StockItemId;
import eaveside.ledger.DocumentType;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which entries to show; absent parts do not filter, nor do empty types. */
public record StockEntryFilter(
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        List<DocumentType> types,
        @Nullable StockItemId item,
        @Nullable LotId lot,
        @Nullable LocationId location,
        @Nullable DocumentId document) {
    public static final StockEntryFilter ALL = new StockEntryFilter(null, null, List.of(), null, null, null, null);

    public StockEntryFilter {
        types = List.copyOf(types);
    }

    public static StockEntryFilter of(DocumentId document) {
        return new StockEntryFilter(null, null, List.of(), null, null, null, document);
    }

    public static StockEntryFilter of(@Nullable StockItemId item, @Nullable LocationId location) {
        return new StockEntryFilter(null, null, List.of(), item, null, location, null);
    }
}
