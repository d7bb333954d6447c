package eaveside.customers.internal;

import eaveside.customers.SurfaceCount;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** An extent that a surface was given. */
@Entity
@Immutable
@Table(name = "surface_count")
public class SurfaceCountRow {
    @EmbeddedId
    SurfaceCountKey key;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "from_extent"))
    @AttributeOverride(name = "unit", column = @Column(name = "from_unit"))
    @Nullable
    Quantity from;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "to_extent"))
    @AttributeOverride(name = "unit", column = @Column(name = "to_unit"))
    Quantity to;

    @Column(name = "visit_id")
    @Nullable
    VisitId visit;

    @Column(name = "counted_by")
    UserId countedBy;

    @Column(name = "counted_at")
    Instant countedAt;

    SurfaceCountRow() {}

    SurfaceCountRow(SurfaceCount count, int entry) {
        this.key = new SurfaceCountKey(count.surface().value(), entry);
        this.from = count.from();
        this.to = count.to();
        this.visit = count.visit();
        this.countedBy = count.by();
        this.countedAt = count.at();
    }

    public SurfaceCount toCount() {
        return new SurfaceCount(new SurfaceId(key.surfaceId()), from, to, visit, countedBy, countedAt);
    }
}
