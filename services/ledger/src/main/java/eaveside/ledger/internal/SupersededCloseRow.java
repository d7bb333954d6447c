package eaveside.ledger.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A month's close from the time when closes emptied expense accounts: its entries stand, but count in no figure. */
@Entity
@Immutable
@Table(name = "superseded_close")
class SupersededCloseRow {
    @Id
    @Column(name = "document_id")
    UUID documentId;

    SupersededCloseRow() {}
}
