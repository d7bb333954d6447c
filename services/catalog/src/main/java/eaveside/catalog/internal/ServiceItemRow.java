package eaveside.catalog.internal;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCode;
import eaveside.customers.SurfaceType;
import eaveside.kernel.EditedRow;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A service with its standard consumables. */
@Entity
@Table(name = "service_item")
public class ServiceItemRow extends EditedRow<ServiceItem> {
    @Column(name = "id", insertable = false, updatable = false)
    ServiceItemId serviceItem;

    @Column(name = "service_line_id", updatable = false)
    ServiceLineId serviceLine;

    String code;
    String name;

    @Column(updatable = false)
    Unit unit;

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
    List<StandardConsumable> consumables = new ArrayList<>();

    boolean active;

    @Override
    protected ServiceItem stored() {
        return new ServiceItem(
                serviceItem,
                serviceLine,
                code,
                name,
                unit,
                new StandardMinutes(minutesPerUnit),
                new TaxCode(taxCode),
                surfaceType,
                cautions,
                List.copyOf(consumables),
                active,
                0);
    }

    @Override
    protected void store(ServiceItem content) {
        serviceItem = content.id();
        serviceLine = content.serviceLine();
        code = content.code();
        name = content.name();
        unit = content.unit();
        minutesPerUnit = content.minutesPerUnit().value();
        taxCode = content.taxCode().value();
        surfaceType = content.surfaceType();
        cautions = content.cautions();
        if (!consumables.equals(content.consumables())) {
            consumables.clear();
            consumables.addAll(content.consumables());
        }
        active = content.active();
    }
}
