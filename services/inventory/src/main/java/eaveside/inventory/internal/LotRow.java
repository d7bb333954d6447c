package eaveside.inventory.internal;

import eaveside.inventory.Lot;
import eaveside.inventory.StockType;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.Posted;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.joda.money.CurrencyUnit;

/** One delivery of an item as it came in; what is left of it stands in {@link LotStockRow}. */
@Entity
@Table(name = "lot")
public class LotRow {
    @Id
    UUID id;

    @Column(name = "item_id", updatable = false)
    StockItemId itemId;

    @Column(name = "item_type", updatable = false)
    @Enumerated(EnumType.STRING)
    StockType itemType;

    @Column(name = "document_id", updatable = false)
    DocumentId documentId;

    @Column(updatable = false)
    String label;

    @Column(name = "received_on", updatable = false)
    LocalDate receivedOn;

    @Column(name = "posting_date", updatable = false)
    LocalDate postingDate;

    /** The entry of its document that brought it in. */
    @Column(updatable = false)
    int line;

    /** Given by the database: lots of one day are older or younger by it, never by the id that a client made. */
    @Column(insertable = false, updatable = false)
    long arrival;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity", updatable = false))
    @AttributeOverride(name = "unit", column = @Column(name = "unit", updatable = false))
    Quantity quantity;

    @Column(updatable = false)
    BigDecimal value;

    boolean withdrawn;

    LotRow() {}

    /**
     * @param  document that brought it in
     * @param  line     the entry of the document that did
     */
    LotRow(NewLot lot, Posted document, int line) {
        this.id = lot.id().value();
        this.itemId = lot.item().id();
        this.itemType = lot.item().type();
        this.documentId = document.id();
        this.label = lot.label();
        this.receivedOn = lot.receivedOn();
        this.postingDate = document.postingDate();
        this.line = line;
        this.quantity = lot.quantity();
        this.value = lot.value().amount();
    }

    /** Whether it was brought in by a document that still stands. */
    public boolean stands() {
        return !withdrawn;
    }

    public StockItemId item() {
        return itemId;
    }

    public Lot toLot(CurrencyUnit currency) {
        return new Lot(
                new LotId(id),
                item(),
                label,
                documentId,
                receivedOn,
                quantity,
                Money.of(currency, value.stripTrailingZeros()));
    }

    /** What it cost as it came in. */
    public UnitPrice price(CurrencyUnit currency) {
        return new UnitPrice(currency, value.stripTrailingZeros(), quantity);
    }
}
