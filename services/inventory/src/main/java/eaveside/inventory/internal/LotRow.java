package eaveside.inventory.internal;

import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockKind;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import jakarta.persistence.Column;
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
    UUID itemId;

    @Column(name = "item_kind", updatable = false)
    @Enumerated(EnumType.STRING)
    StockKind itemKind;

    @Column(updatable = false)
    String unit;

    @Column(name = "document_id", updatable = false)
    UUID documentId;

    @Column(updatable = false)
    String label;

    @Column(name = "received_on", updatable = false)
    LocalDate receivedOn;

    @Column(updatable = false)
    BigDecimal quantity;

    @Column(updatable = false)
    BigDecimal value;

    boolean withdrawn;

    LotRow() {}

    /**
     * @param document that brings it in
     * @param quantity above zero, in the item's base unit
     * @param value    of all of it
     */
    public LotRow(
            LotId id,
            StockItem item,
            DocumentId document,
            String label,
            LocalDate receivedOn,
            Quantity quantity,
            Money value) {
        this.id = id.value();
        this.itemId = item.id().value();
        this.itemKind = item.kind();
        this.unit = item.baseUnit().code();
        this.documentId = document.value();
        this.label = label;
        this.receivedOn = receivedOn;
        this.quantity = quantity.value();
        this.value = value.amount();
    }

    /** Whether it was brought in by a document that still stands. */
    public boolean stands() {
        return !withdrawn;
    }

    public StockItemId item() {
        return new StockItemId(itemId);
    }

    public ReadStock.Lot toLot(CurrencyUnit currency) {
        return new ReadStock.Lot(
                new LotId(id),
                item(),
                label,
                new DocumentId(documentId),
                receivedOn,
                Quantity.of(quantity, Unit.ofCode(unit)),
                Money.of(currency, value.stripTrailingZeros()));
    }

    /** What it cost as it came in. */
    public UnitPrice price(CurrencyUnit currency) {
        return new UnitPrice(currency, value.stripTrailingZeros(), Quantity.of(quantity, Unit.ofCode(unit)));
    }
}
