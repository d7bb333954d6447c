package eaveside.ledger.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** A line of a document. */
@Embeddable
record EntryKey(
        @Column(name = "document_id") UUID documentId,
        @Column(name = "line") int line) {}
