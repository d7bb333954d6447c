package eaveside.customers.internal;

import eaveside.customers.MakerName;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceKind;
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
    SurfaceKind kind;

    String name;
    BigDecimal extent;
    String unit;

    @Column(name = "row_count")
    int rowCount;

    @Column(name = "module_maker")
    @Nullable
    String moduleMaker;

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
        this.kind = surface.kind();
        this.version = 1;
        write(surface, signature);
    }

    @Override
    public final void write(Surface surface, Signature by) {
        this.name = surface.name();
        this.extent = surface.extent().value();
        this.unit = surface.extent().unit().code();
        this.rowCount = surface.rows();
        MakerName maker = surface.moduleMaker();
        this.moduleMaker = maker == null ? null : maker.value();
        this.attributes.keySet().retainAll(surface.attributes().keySet());
        surface.attributes().forEach((attribute, value) -> attributes.put(attribute, new AttributeRow(kind, value)));
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
                kind,
                name,
                Quantity.of(extent, Unit.ofCode(unit)),
                rowCount,
                moduleMaker == null ? null : new MakerName(moduleMaker),
                values,
                active,
                version);
    }
}
