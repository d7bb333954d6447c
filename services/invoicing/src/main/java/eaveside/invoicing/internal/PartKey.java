package eaveside.invoicing.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** A part of a draft or invoice, in its order. */
@Embeddable
record PartKey(
        @Column(name = "invoice_id") UUID invoiceId,
        @Column(name = "position") int position) {}
