package eaveside.invoicing.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** What a document settles of an invoice, or takes back of it. */
@Entity
@Immutable
@Table(name = "settlement")
public class SettlementRow {
    @EmbeddedId
    Key key;

    BigDecimal amount;

    SettlementRow() {}

    public SettlementRow(DocumentId document, InvoiceId invoice, Money amount) {
        this.key = new Key(document.value(), invoice.value());
        this.amount = amount.amount();
    }

    public DocumentId document() {
        return new DocumentId(key.documentId());
    }

    public InvoiceId invoice() {
        return new InvoiceId(key.invoiceId());
    }

    public BigDecimal amount() {
        return amount;
    }

    /** A document and an invoice. */
    @Embeddable
    record Key(
            @Column(name = "document_id") UUID documentId,
            @Column(name = "invoice_id") UUID invoiceId) {}
}
