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
import java.util.UUID;
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
    UUID itemId;

    @Column(name = "lot_id")
    UUID lotId;

    @Column(name = "location_id")
    UUID locationId;

    BigDecimal quantity;
    BigDecimal value;

    StockEntryRow() {}

    StockEntryRow(Posted document, int line, Movement movement) {
        this.key = new StockEntryKey(document.id().value(), line);
        this.postingDate = document.postingDate();
        this.itemId = movement.item().value();
        this.lotId = movement.lot().value();
        this.locationId = movement.location().value();
        this.quantity = movement.quantity().value();
        this.value = movement.value().amount();
    }

    Movement toMovement(Unit unit, CurrencyUnit currency) {
        return new Movement(
                new StockItemId(itemId),
                new LotId(lotId),
                new LocationId(locationId),
                Quantity.of(quantity, unit),
                Money.of(currency, value.stripTrailingZeros()));
    }
}
