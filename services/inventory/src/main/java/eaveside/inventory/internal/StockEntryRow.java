package eaveside.inventory.internal;

import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.ledger.Posted;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;

/** One entry of the stock ledger. */
@Entity
@Immutable
@Table(name = "stock_entry")
class StockEntryRow {
    @EmbeddedId
    StockEntryKey key;

    @Column(name = "posting_date")
    LocalDate postingDate;

    @Column(name = "item_id")
    StockItemId itemId;

    @Column(name = "lot_id")
    LotId lotId;

    @Column(name = "location_id")
    LocationId locationId;

    BigDecimal quantity;
    BigDecimal value;

    StockEntryRow() {}

    StockEntryRow(Posted document, int line, Movement movement) {
        this.key = new StockEntryKey(document.id().value(), line);
        this.postingDate = document.postingDate();
        this.itemId = movement.item();
        this.lotId = movement.lot();
        this.locationId = movement.location();
        this.quantity = movement.quantity().value();
        this.value = movement.value().amount();
    }

    Movement toMovement(Unit unit, CurrencyUnit currency) {
        return new Movement(
                itemId, lotId, locationId, Quantity.of(quantity, unit), Money.of(currency, value.stripTrailingZeros()));
    }
}
