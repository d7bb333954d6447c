package eaveside.customers.internal;

import eaveside.customers.ReadSurfaces.SurfaceCount;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** An extent that a surface was given. */
@Entity
@Immutable
@Table(name = "surface_count")
public class SurfaceCountRow {
    @EmbeddedId
    SurfaceCountKey key;

    @Column(name = "from_extent")
    @Nullable
    BigDecimal fromExtent;

    @Column(name = "from_unit")
    @Nullable
    String fromUnit;

    @Column(name = "to_extent")
    BigDecimal toExtent;

    @Column(name = "to_unit")
    String toUnit;

    @Column(name = "visit_id")
    @Nullable
    UUID visitId;

    @Column(name = "counted_by")
    UUID countedBy;

    @Column(name = "counted_at")
    Instant countedAt;

    SurfaceCountRow() {}

    public SurfaceCountRow(
            SurfaceId surface, int entry, @Nullable Quantity from, Quantity to, @Nullable VisitId visit, Signature by) {
        this.key = new SurfaceCountKey(surface.value(), entry);
        this.fromExtent = from == null ? null : from.value();
        this.fromUnit = from == null ? null : from.unit().code();
        this.toExtent = to.value();
        this.toUnit = to.unit().code();
        this.visitId = visit == null ? null : visit.value();
        this.countedBy = by.by();
        this.countedAt = by.at();
    }

    public SurfaceCount toCount() {
        return new SurfaceCount(
                new SurfaceId(key.surfaceId()),
                fromExtent == null || fromUnit == null ? null : Quantity.of(fromExtent, Unit.ofCode(fromUnit)),
                Quantity.of(toExtent, Unit.ofCode(toUnit)),
                visitId == null ? null : new VisitId(visitId),
                new UserId(countedBy),
                countedAt);
    }
}
