package eaveside.inventory.internal;

import eaveside.inventory.StockEntryLine;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.ledger.DocumentType;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
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
    StockItemId itemId;

    @Column(name = "item_name")
    String itemName;

    @Column(name = "lot_id")
    LotId lotId;

    @Column(name = "lot_label")
    String lotLabel;

    @Column(name = "location_id")
    LocationId locationId;

    @Column(name = "location_name")
    String locationName;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    @AttributeOverride(name = "unit", column = @Column(name = "base_unit"))
    Quantity quantity;

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
                itemId,
                itemName,
                lotId,
                lotLabel,
                locationId,
                locationName,
                quantity,
                Money.of(currency, value.stripTrailingZeros()));
    }
}
