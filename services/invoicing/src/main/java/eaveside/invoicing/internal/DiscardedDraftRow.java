package eaveside.invoicing.internal;

import eaveside.kernel.InvoiceId;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** The id of a draft that was discarded, so that discarding it again is known, and a late first sending does not bring it back. */
@Entity
@Immutable
@Table(name = "discarded_draft")
class DiscardedDraftRow {
    @Id
    UUID id;

    @Column(name = "discarded_by")
    UserId discardedBy;

    @Column(name = "discarded_at")
    Instant discardedAt;

    DiscardedDraftRow() {}

    DiscardedDraftRow(InvoiceId id, UserId by, Instant at) {
        this.id = id.value();
        this.discardedBy = by;
        this.discardedAt = at;
    }
}
