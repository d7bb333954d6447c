package eaveside.inventory.internal;

import eaveside.kernel.StockItemId;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import org.hibernate.annotations.Immutable;

/** What a location holds of a lot. The database keeps it: each stock entry moves it, so the two never part. */
@Entity
@Immutable
@Table(name = "lot_stock")
class LotStockRow {
    @EmbeddedId
    LotStockKey key;

    @Column(name = "item_id")
    StockItemId itemId;

    BigDecimal quantity;
    BigDecimal value;

    LotStockRow() {}
}
