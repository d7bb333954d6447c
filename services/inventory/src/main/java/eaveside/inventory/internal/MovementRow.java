package eaveside.inventory.internal;

import eaveside.inventory.StockEntryLine;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.ledger.DocumentType;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;

/** An entry of the stock ledger with the names that people read: a view, never written. */
@Entity
@Immutable
@Table(name = "stock_movement")
class MovementRow {
    @EmbeddedId
    StockEntryKey key;

    @Column(name = "document_type")
    @Enumerated(EnumType.STRING)
    DocumentType documentType;

    long number;

    @Column(name = "posting_date")
    LocalDate postingDate;

    @Column(name = "service_date")
    LocalDate serviceDate;

    String summary;

    @Column(name = "item_id")
    UUID itemId;

    @Column(name = "item_name")
    String itemName;

    @Column(name = "base_unit")
    String baseUnit;

    @Column(name = "lot_id")
    UUID lotId;

    @Column(name = "lot_label")
    String lotLabel;

    @Column(name = "location_id")
    UUID locationId;

    @Column(name = "location_name")
    String locationName;

    BigDecimal quantity;
    BigDecimal value;

    /** When the goods really moved; a reversal undoes the day of what it reverses. */
    @Column(name = "moved_on")
    LocalDate movedOn;

    MovementRow() {}

    StockEntryLine toLine(CurrencyUnit currency) {
        return new StockEntryLine(
                new DocumentId(key.documentId()),
                documentType,
                number,
                postingDate,
                serviceDate,
                summary,
                key.line(),
                new StockItemId(itemId),
                itemName,
                new LotId(lotId),
                lotLabel,
                new LocationId(locationId),
                locationName,
                Quantity.of(quantity, Unit.ofCode(baseUnit)),
                Money.of(currency, value.stripTrailingZeros()));
    }
}
