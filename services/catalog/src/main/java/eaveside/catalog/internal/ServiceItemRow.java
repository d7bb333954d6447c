package eaveside.catalog.internal;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCode;
import eaveside.customers.SurfaceType;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A service with its standard consumables. */
@Entity
@Table(name = "serviceItem")
public class ServiceItemRow {
    @Id
    UUID id;

    @Column(name = "service_line_id", updatable = false)
    UUID serviceLineId;

    String code;
    String name;

    @Column(updatable = false)
    String unit;

    @Column(name = "minutes_per_unit")
    BigDecimal minutesPerUnit;

    @Column(name = "tax_code")
    String taxCode;

    @Enumerated(EnumType.STRING)
    @Column(name = "surface_type")
    @Nullable
    SurfaceType surfaceType;

    String cautions;

    @ElementCollection
    @CollectionTable(name = "service_item_consumable", joinColumns = @JoinColumn(name = "service_item_id"))
    @OrderColumn(name = "position")
    List<ConsumableRow> consumables = new ArrayList<>();

    boolean active;

    @Version
    int version;

    @Column(name = "changed_by")
    UUID changedBy;

    @Column(name = "changed_at")
    Instant changedAt;

    ServiceItemRow() {}

    public ServiceItemRow(ServiceItem serviceItem, UserId by, Instant at) {
        this.id = serviceItem.id().value();
        this.serviceLineId = serviceItem.serviceLine().value();
        this.unit = serviceItem.unit().code();
        this.version = 1;
        write(serviceItem, by, at);
    }

    public final void write(ServiceItem serviceItem, UserId by, Instant at) {
        this.code = serviceItem.code();
        this.name = serviceItem.name();
        this.minutesPerUnit = serviceItem.minutesPerUnit().value();
        this.taxCode = serviceItem.taxCode().value();
        this.surfaceType = serviceItem.surfaceType();
        this.cautions = serviceItem.cautions();
        List<ConsumableRow> rows =
                serviceItem.consumables().stream().map(ConsumableRow::of).toList();
        if (!consumables.equals(rows)) {
            consumables.clear();
            consumables.addAll(rows);
        }
        this.active = serviceItem.active();
        this.changedBy = by.value();
        this.changedAt = at;
    }

    public ServiceItem toServiceItem() {
        return new ServiceItem(
                new ServiceItemId(id),
                new ServiceLineId(serviceLineId),
                code,
                name,
                Unit.ofCode(unit),
                new StandardMinutes(minutesPerUnit),
                new TaxCode(taxCode),
                surfaceType,
                cautions,
                consumables.stream().map(ConsumableRow::toConsumable).toList(),
                active,
                version);
    }
}
