package eaveside.inventory.internal;

import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/** A consumable. */
@Entity
@Table(name = "stock_item")
public class StockItemRow {
    @Id
    UUID id;

    String code;
    String name;

    @Enumerated(EnumType.STRING)
    StockType type;

    @Column(name = "base_unit")
    String baseUnit;

    boolean alkaline;
    boolean active;

    @ElementCollection
    @CollectionTable(name = "pack", joinColumns = @JoinColumn(name = "item_id"))
    List<PackRow> packs = new ArrayList<>();

    @Version
    int version;

    StockItemRow() {}

    public StockItemRow(StockItem item) {
        this.id = item.id().value();
        take(item);
    }

    public void change(StockItem item) {
        take(item);
    }

    private void take(StockItem item) {
        this.code = item.code();
        this.name = item.name();
        this.type = item.type();
        this.baseUnit = item.baseUnit().code();
        this.alkaline = item.alkaline();
        this.active = item.active();
        Set<PackRow> wanted = PackRow.all(item);
        if (!Set.copyOf(packs).equals(wanted)) {
            packs.clear();
            packs.addAll(wanted);
        }
    }

    /** Whether nothing but the version would change. */
    public boolean says(StockItem item) {
        return isKept(item)
                && code.equals(item.code())
                && name.equals(item.name())
                && alkaline == item.alkaline()
                && active == item.active()
                && Set.copyOf(packs).equals(PackRow.all(item));
    }

    /** Whether it would be counted as it is now. */
    public boolean isKept(StockItem item) {
        return type == item.type() && baseUnit.equals(item.baseUnit().code());
    }

    public int version() {
        return version;
    }

    public StockItem toItem() {
        Unit unit = Unit.ofCode(baseUnit);
        return new StockItem(
                new StockItemId(id),
                code,
                name,
                type,
                unit,
                packs.stream().map(p -> p.toPack(unit)).toList(),
                alkaline,
                active,
                version);
    }
}
