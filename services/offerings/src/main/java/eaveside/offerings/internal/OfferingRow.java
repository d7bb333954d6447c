package eaveside.offerings.internal;

import eaveside.customers.SurfaceKind;
import eaveside.kernel.OfferingId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.offerings.Offering;
import eaveside.offerings.StandardMinutes;
import eaveside.offerings.TaxCode;
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

/** An offering with its standard consumables. */
@Entity
@Table(name = "offering")
public class OfferingRow {
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
    @Column(name = "surface_kind")
    @Nullable
    SurfaceKind surfaceKind;

    String cautions;

    @ElementCollection
    @CollectionTable(name = "offering_consumable", joinColumns = @JoinColumn(name = "offering_id"))
    @OrderColumn(name = "position")
    List<ConsumableRow> consumables = new ArrayList<>();

    boolean active;

    @Version
    int version;

    @Column(name = "changed_by")
    UUID changedBy;

    @Column(name = "changed_at")
    Instant changedAt;

    OfferingRow() {}

    public OfferingRow(Offering offering, UserId by, Instant at) {
        this.id = offering.id().value();
        this.serviceLineId = offering.serviceLine().value();
        this.unit = offering.unit().code();
        this.version = 1;
        write(offering, by, at);
    }

    public final void write(Offering offering, UserId by, Instant at) {
        this.code = offering.code();
        this.name = offering.name();
        this.minutesPerUnit = offering.minutesPerUnit().value();
        this.taxCode = offering.taxCode().value();
        this.surfaceKind = offering.surfaceKind();
        this.cautions = offering.cautions();
        List<ConsumableRow> rows =
                offering.consumables().stream().map(ConsumableRow::of).toList();
        if (!consumables.equals(rows)) {
            consumables.clear();
            consumables.addAll(rows);
        }
        this.active = offering.active();
        this.changedBy = by.value();
        this.changedAt = at;
    }

    public Offering toOffering() {
        return new Offering(
                new OfferingId(id),
                new ServiceLineId(serviceLineId),
                code,
                name,
                Unit.ofCode(unit),
                new StandardMinutes(minutesPerUnit),
                new TaxCode(taxCode),
                surfaceKind,
                cautions,
                consumables.stream().map(ConsumableRow::toConsumable).toList(),
                active,
                version);
    }
}
