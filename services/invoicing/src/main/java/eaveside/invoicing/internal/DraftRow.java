package eaveside.invoicing.internal;

import eaveside.invoicing.Draft;
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

    /** Everyone who writes it holds the draft's turn ({@link Drafts#turn}), so it is counted by hand, once an edit. */
    int version;

    @Column(name = "customer_id", updatable = false)
    CustomerId customerId;

    @Column(name = "visit_id", updatable = false)
    @Nullable
    VisitId visitId;

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
    UserId madeBy;

    @Column(name = "made_at", updatable = false)
    Instant madeAt;

    @Column(updatable = false)
    String fingerprint;

    DraftRow() {}

    DraftRow(Draft content, @Nullable Billable visit, Money gross, UserId by, Instant at, Fingerprint fingerprint) {
        this.id = content.id().value();
        this.customerId = content.customer();
        this.visitId = visit == null ? null : visit.visit();
        this.visitVersion = visit == null ? null : visit.version();
        this.madeBy = by;
        this.madeAt = at;
        this.fingerprint = fingerprint.hex();
        write(content, gross);
    }

    final void write(Draft content, Money reckoned) {
        version++;
        serviceDate = content.serviceDate();
        reference = content.reference();
        note = content.note();
        prepaid = amount(content.prepaid());
        rounding = amount(content.rounding());
        gross = reckoned.amount();
    }

    private static BigDecimal amount(@Nullable Money money) {
        return money == null ? BigDecimal.ZERO : money.amount();
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

    public boolean hasFingerprint(Fingerprint other) {
        return fingerprint.equals(other.hex());
    }

    public CustomerId customer() {
        return customerId;
    }

    /** Of the visit when the draft was made of it; below any version where there is no visit. */
    int visitVersion() {
        return visitVersion == null ? -1 : visitVersion;
    }

    public @Nullable VisitId visit() {
        return visitId;
    }
}
