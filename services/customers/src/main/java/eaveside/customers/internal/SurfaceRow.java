package eaveside.customers.internal;

import eaveside.customers.ManufacturerName;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapKeyColumn;
import jakarta.persistence.MapKeyEnumerated;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A surface with its attributes. */
@Entity
@Table(name = "surface")
public class SurfaceRow implements EditableRow<Surface> {
    @Id
    UUID id;

    @Column(name = "site_id", updatable = false)
    UUID siteId;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    SurfaceType type;

    String name;
    BigDecimal extent;
    String unit;

    @Column(name = "row_count")
    int rowCount;

    @Column(name = "panel_manufacturer")
    @Nullable
    String panelManufacturer;

    @ElementCollection
    @CollectionTable(name = "surface_attribute", joinColumns = @JoinColumn(name = "surface_id"))
    @MapKeyColumn(name = "attribute")
    @MapKeyEnumerated(EnumType.STRING)
    Map<SurfaceAttribute, AttributeRow> attributes = new HashMap<>();

    boolean active;

    @Version
    int version;

    @Embedded
    Signature signature;

    SurfaceRow() {}

    public SurfaceRow(Surface surface, Signature signature) {
        this.id = surface.id().value();
        this.siteId = surface.siteId().value();
        this.type = surface.type();
        this.version = 1;
        write(surface, signature);
    }

    @Override
    public final void write(Surface surface, Signature by) {
        this.name = surface.name();
        this.extent = surface.extent().value();
        this.unit = surface.extent().unit().code();
        this.rowCount = surface.rows();
        ManufacturerName manufacturer = surface.panelManufacturer();
        this.panelManufacturer = manufacturer == null ? null : manufacturer.value();
        this.attributes.keySet().retainAll(surface.attributes().keySet());
        surface.attributes().forEach((attribute, value) -> attributes.put(attribute, new AttributeRow(type, value)));
        this.active = surface.active();
        this.signature = by;
    }

    @Override
    public Surface content() {
        Map<SurfaceAttribute, Integer> values = new EnumMap<>(SurfaceAttribute.class);
        attributes.forEach((attribute, row) -> values.put(attribute, row.value()));
        return new Surface(
                new SurfaceId(id),
                new SiteId(siteId),
                type,
                name,
                Quantity.of(extent, Unit.ofCode(unit)),
                rowCount,
                panelManufacturer == null ? null : new ManufacturerName(panelManufacturer),
                values,
                active,
                version);
    }
}
