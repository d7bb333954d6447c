package eaveside.invoicing.internal;

import eaveside.invoicing.DraftContent;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.BillableVisit.Billable;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** An invoice that is still being written. */
@Entity
@Table(name = "invoice_draft")
public class DraftRow {
    @Id
    UUID id;

    @Version
    int version;

    @Column(name = "customer_id", updatable = false)
    UUID customerId;

    @Column(name = "visit_id", updatable = false)
    @Nullable
    UUID visitId;

    @Column(name = "visit_version", updatable = false)
    @Nullable
    Integer visitVersion;

    @Column(name = "service_date")
    LocalDate serviceDate;

    String reference;
    String note;
    BigDecimal prepaid;
    BigDecimal rounding;
    BigDecimal gross;

    @Column(name = "made_by", updatable = false)
    UUID madeBy;

    @Column(name = "made_at", updatable = false)
    Instant madeAt;

    @Column(updatable = false)
    String fingerprint;

    DraftRow() {}

    DraftRow(
            InvoiceId id,
            CustomerId customer,
            @Nullable Billable visit,
            DraftContent content,
            Money gross,
            UserId by,
            Instant at,
            Fingerprint fingerprint) {
        this.id = id.value();
        this.customerId = customer.value();
        this.visitId = visit == null ? null : visit.visit().value();
        this.visitVersion = visit == null ? null : visit.version();
        this.madeBy = by.value();
        this.madeAt = at;
        this.fingerprint = fingerprint.hex();
        write(content, gross);
    }

    final void write(DraftContent content, Money reckoned) {
        serviceDate = content.serviceDate();
        reference = content.reference();
        note = content.note();
        prepaid = content.prepaid().amount();
        rounding = content.rounding().amount();
        gross = reckoned.amount();
    }

    public InvoiceId id() {
        return new InvoiceId(id);
    }

    public int version() {
        return version;
    }

    public LocalDate serviceDate() {
        return serviceDate;
    }

    public Money gross(CurrencyUnit currency) {
        return Money.of(currency, gross.stripTrailingZeros());
    }

    boolean hasFingerprint(Fingerprint other) {
        return fingerprint.equals(other.hex());
    }

    public CustomerId customer() {
        return new CustomerId(customerId);
    }

    /** Of the visit when the draft was made of it; below any version where there is no visit. */
    int visitVersion() {
        return visitVersion == null ? -1 : visitVersion;
    }

    public @Nullable VisitId visit() {
        return visitId == null ? null : new VisitId(visitId);
    }
}
