package eaveside.inventory.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** A line of a document in the stock ledger. */
@Embeddable
record StockEntryKey(
        @Column(name = "document_id") UUID documentId,
        @Column(name = "line") int line) {}
