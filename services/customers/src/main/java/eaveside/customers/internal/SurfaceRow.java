package eaveside.customers.internal;

import eaveside.customers.ManufacturerName;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.kernel.EditedRow;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapKeyColumn;
import jakarta.persistence.MapKeyEnumerated;
import jakarta.persistence.Table;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A surface with its attributes. */
@Entity
@Table(name = "surface")
public class SurfaceRow extends EditedRow<Surface> {
    @Column(name = "id", insertable = false, updatable = false)
    SurfaceId surface;

    @Column(name = "site_id", updatable = false)
    SiteId site;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    SurfaceType type;

    String name;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "extent"))
    Quantity extent;

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

    @Override
    protected void store(Surface content) {
        surface = content.id();
        site = content.site();
        type = content.type();
        name = content.name();
        extent = content.extent();
        rowCount = content.rows();
        ManufacturerName manufacturer = content.panelManufacturer();
        panelManufacturer = manufacturer == null ? null : manufacturer.value();
        attributes.keySet().retainAll(content.attributes().keySet());
        content.attributes().forEach((attribute, value) -> attributes.put(attribute, new AttributeRow(type, value)));
        active = content.active();
    }

    @Override
    protected Surface stored() {
        Map<SurfaceAttribute, Integer> values = new EnumMap<>(SurfaceAttribute.class);
        attributes.forEach((attribute, row) -> values.put(attribute, row.value()));
        return new Surface(
                surface,
                site,
                type,
                name,
                extent,
                rowCount,
                panelManufacturer == null ? null : new ManufacturerName(panelManufacturer),
                values,
                active,
                0);
    }
}
