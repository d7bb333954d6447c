package eaveside.visits.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PageKey;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.ScopeChange;
import eaveside.visits.SoapWarning;
import eaveside.visits.Visit;
import eaveside.visits.VisitChange;
import eaveside.visits.VisitEdit;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitState;
import eaveside.visits.VisitStatus;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.annotations.BatchSize;
import org.jspecify.annotations.Nullable;

/**
 * A visit: planned, then done (on the one sheet that it stands on) or canceled; what was done is then billed or closed
 * without billing. Reversing its sheet, invoice or closing takes it one step back.
 */
@Entity
@Table(name = "visit")
public class VisitRow {
    /**
     * How far the work may lie from the day planned. Rain, a free day and a sheet that nobody moved fit in; a slip of the
     * month or the year does not. Work that was really done further away has its visit moved first, which keeps why.
     */
    private static final int DAYS_FROM_PLAN = 14;

    @Id
    UUID id;

    @Column(name = "customer_id", updatable = false)
    CustomerId customerId;

    @Column(name = "site_id", updatable = false)
    SiteId siteId;

    @Column(name = "quote_id", updatable = false)
    @Nullable
    QuoteId quoteId;

    @Column(name = "price_book_id", updatable = false)
    @Nullable
    PriceBookId priceBookId;

    @Column(name = "returns_to", updatable = false)
    @Nullable
    VisitId returnsTo;

    @Column(name = "scheduled_for")
    LocalDate scheduledFor;

    @Enumerated(EnumType.STRING)
    VisitStatus status;

    String note;

    @Column(name = "scheduled_by", updatable = false)
    UserId scheduledBy;

    @Column(name = "scheduled_at", updatable = false)
    Instant scheduledAt;

    @Column(updatable = false)
    String fingerprint;

    @Column(name = "sheet_id")
    @Nullable
    DocumentId sheetId;

    @Column(name = "completed_on")
    @Nullable
    LocalDate completedOn;

    /** What the work on the sheet comes to; null where no price book says so, and before there is a sheet. */
    @Column(name = "value_to_bill")
    @Nullable
    BigDecimal valueToBill;

    @Column(name = "closing_id")
    @Nullable
    DocumentId closingId;

    @Column(name = "invoice_id")
    @Nullable
    InvoiceId invoiceId;

    @Version
    int version;

    @BatchSize(size = 50)
    @ElementCollection
    @CollectionTable(name = "visit_crew", joinColumns = @JoinColumn(name = "visit_id"))
    @Column(name = "user_id")
    Set<UUID> crew;

    @ElementCollection
    @CollectionTable(name = "visit_change", joinColumns = @JoinColumn(name = "visit_id"))
    @OrderColumn(name = "position")
    List<ChangeRow> changes;

    VisitRow() {}

    public VisitRow(NewVisit visit, Fingerprint fingerprint, Instant at) {
        this.id = visit.id().value();
        this.customerId = visit.customer();
        this.siteId = visit.site();
        this.quoteId = visit.quote();
        this.priceBookId = visit.priceBook();
        this.returnsTo = visit.returnsTo();
        this.scheduledFor = visit.date();
        this.status = VisitStatus.SCHEDULED;
        this.version = 1;
        this.note = visit.note();
        this.scheduledBy = visit.by();
        this.scheduledAt = at;
        this.fingerprint = fingerprint.hex();
        this.crew = values(visit.crew());
        this.changes = new ArrayList<>();
    }

    public VisitId id() {
        return new VisitId(id);
    }

    public CustomerId customer() {
        return customerId;
    }

    public SiteId site() {
        return siteId;
    }

    public @Nullable QuoteId quote() {
        return quoteId;
    }

    public @Nullable PriceBookId priceBook() {
        return priceBookId;
    }

    public LocalDate scheduledFor() {
        return scheduledFor;
    }

    /** The visit whose skipped work this one does. */
    public @Nullable VisitId returnsTo() {
        return returnsTo;
    }

    /** The day of the work, or the day it is planned for. */
    public LocalDate day() {
        return completedOn == null ? scheduledFor : completedOn;
    }

    public int version() {
        return version;
    }

    public List<UserId> crew() {
        return crew.stream().sorted().map(UserId::new).toList();
    }

    public boolean hasInCrew(UserId user) {
        return crew.contains(user.value());
    }

    public boolean hasSheet() {
        return sheetId != null;
    }

    /**
     * The sheet that the visit stands on; refuses a visit without one.
     *
     * @param  fields where the visit was named, if it was
     */
    public DocumentId sheet(String... fields) {
        if (sheetId == null) {
            throw new VisitRefusal.WrongStatus(status, VisitStatus.COMPLETED, fields);
        }
        return sheetId;
    }

    /**
     * Whether that is something else than before.
     *
     * @param  worth before tax; null where it is not known
     */
    public boolean becomesWorth(@Nullable BigDecimal worth) {
        boolean same = valueToBill == null || worth == null ? valueToBill == worth : valueToBill.compareTo(worth) == 0;
        if (!same) {
            valueToBill = worth;
        }
        return !same;
    }

    public boolean isBilledBy(InvoiceId invoice) {
        return invoice.equals(invoiceId);
    }

    /** The document that closed the visit without an invoice; refuses a visit that is not closed. */
    public DocumentId closing() {
        if (closingId == null) {
            throw new VisitRefusal.WrongStatus(status, VisitStatus.CLOSED_NOT_BILLED);
        }
        return closingId;
    }

    public void requireStatus(VisitStatus needed) {
        if (status != needed) {
            throw new VisitRefusal.WrongStatus(status, needed);
        }
    }

    /** Refuses a day of the work that is far from the day planned. */
    public void requireNear(LocalDate day) {
        if (Math.abs(ChronoUnit.DAYS.between(scheduledFor, day)) > DAYS_FROM_PLAN) {
            throw new VisitRefusal.DayFarFromPlan(day, scheduledFor, DAYS_FROM_PLAN);
        }
    }

    /** Refuses a document that the visit does not stand on. */
    public void requireStandsOn(DocumentId sheet) {
        if (!sheet.equals(sheetId)) {
            throw new VisitRefusal.NotInForce();
        }
    }

    /** Refuses an edit of a version that another user has changed, with what both say. */
    public void requireVersion(VisitEdit edit) {
        if (version != edit.version()) {
            throw new KernelRefusal.Stale(
                    edit.what(), edit, new VisitState(id(), version, status, scheduledFor, crew()));
        }
    }

    public void requireSame(Fingerprint other) {
        if (!fingerprint.equals(other.hex())) {
            throw new KernelRefusal.IdTaken("visit", id, "of " + scheduledFor);
        }
    }

    /** Whether the last change to the visit said exactly this. */
    public boolean lastChangeSays(VisitChange.Type type, LocalDate to, List<UserId> newCrew, String reason, UserId by) {
        return !changes.isEmpty() && changes.getLast().says(type, to, reason, by) && crew.equals(values(newCrew));
    }

    public void reschedule(LocalDate to, List<UserId> newCrew, String reason, UserId by, Instant at) {
        requireStatus(VisitStatus.SCHEDULED);
        changes.add(new ChangeRow(VisitChange.Type.RESCHEDULED, scheduledFor, to, reason, by, at));
        scheduledFor = to;
        crew.retainAll(values(newCrew));
        crew.addAll(values(newCrew));
    }

    public void cancel(String reason, UserId by, Instant at) {
        requireStatus(VisitStatus.SCHEDULED);
        changes.add(new ChangeRow(VisitChange.Type.CANCELED, scheduledFor, scheduledFor, reason, by, at));
        status = VisitStatus.CANCELED;
    }

    /**
     * Signed off: the visit stands on this sheet from now on.
     *
     * @param  worth what its work comes to; null where no price book says so
     */
    public void done(DocumentId sheet, LocalDate on, @Nullable BigDecimal worth) {
        requireStatus(VisitStatus.SCHEDULED);
        requireNear(on);
        status = VisitStatus.COMPLETED;
        sheetId = sheet;
        completedOn = on;
        valueToBill = worth;
    }

    /** The sheet was reversed: the work waits to be entered again. */
    public void reopen() {
        requireStatus(VisitStatus.COMPLETED);
        status = VisitStatus.SCHEDULED;
        sheetId = null;
        valueToBill = null;
        completedOn = null;
    }

    public void billed(InvoiceId invoice) {
        requireStatus(VisitStatus.COMPLETED);
        status = VisitStatus.BILLED;
        invoiceId = invoice;
    }

    public void takeBackBilling() {
        requireStatus(VisitStatus.BILLED);
        status = VisitStatus.COMPLETED;
        invoiceId = null;
    }

    public void closed(DocumentId closing) {
        requireStatus(VisitStatus.COMPLETED);
        status = VisitStatus.CLOSED_NOT_BILLED;
        closingId = closing;
    }

    public void closingReversed() {
        requireStatus(VisitStatus.CLOSED_NOT_BILLED);
        status = VisitStatus.COMPLETED;
        closingId = null;
    }

    /** Where the visit stands in a list sorted by the day scheduled for. */
    public PageKey<LocalDate> scheduledKey() {
        return new PageKey<>(scheduledFor, id);
    }

    /** Where it stands in a list sorted by the day of the work. */
    public PageKey<LocalDate> key() {
        return new PageKey<>(day(), id);
    }

    public Visit toVisit(List<Visit.Line> lines, List<SoapWarning> warnings, List<ScopeChange> scopeChanges) {
        return new Visit(
                id(),
                customer(),
                site(),
                quote(),
                priceBook(),
                returnsTo(),
                scheduledFor,
                crew(),
                status,
                note,
                sheetId,
                completedOn,
                closingId,
                invoiceId,
                version,
                lines,
                changes.stream().map(ChangeRow::toChange).toList(),
                warnings,
                scopeChanges);
    }

    public Visit.Summary toSummary() {
        return new Visit.Summary(id(), customer(), site(), scheduledFor, completedOn, crew(), status);
    }

    private static Set<UUID> values(List<UserId> users) {
        return users.stream().map(UserId::value).collect(Collectors.toCollection(HashSet::new));
    }
}
