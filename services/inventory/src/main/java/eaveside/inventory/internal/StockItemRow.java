package eaveside.inventory.internal;

import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.EditedRow;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** An item of the stock. */
@Entity
@Table(name = "stock_item")
public class StockItemRow extends EditedRow<StockItem> {
    @Column(name = "id", insertable = false, updatable = false)
    StockItemId item;

    String code;
    String name;

    @Enumerated(EnumType.STRING)
    StockType type;

    @Column(name = "base_unit")
    Unit baseUnit;

    boolean alkaline;
    boolean active;

    @ElementCollection
    @CollectionTable(name = "pack", joinColumns = @JoinColumn(name = "item_id"))
    List<PackRow> packs = new ArrayList<>();

    @Override
    protected void store(StockItem content) {
        item = content.id();
        code = content.code();
        name = content.name();
        type = content.type();
        baseUnit = content.baseUnit();
        alkaline = content.alkaline();
        active = content.active();
        Set<PackRow> wanted = PackRow.all(content);
        if (!Set.copyOf(packs).equals(wanted)) {
            packs.clear();
            packs.addAll(wanted);
        }
    }

    @Override
    protected StockItem stored() {
        return new StockItem(
                item,
                code,
                name,
                type,
                baseUnit,
                packs.stream().map(p -> p.toPack(baseUnit)).toList(),
                alkaline,
                active,
                0);
    }
}
