package eaveside.findings.internal;

import eaveside.findings.FindingRefusal;
import eaveside.findings.FindingType;
import eaveside.findings.FindingView;
import eaveside.findings.FindingView.Status;
import eaveside.findings.NewFinding;
import eaveside.findings.Photo;
import eaveside.findings.Severity;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A finding; only its closing and withdrawal are ever written after it was opened. */
@Entity
@Table(name = "finding")
public class FindingRow {
    @Id
    UUID id;

    @Column(name = "type_code", updatable = false)
    String findingTypeCode;

    @Column(name = "severity_code", updatable = false)
    String severityCode;

    @Column(name = "visit_id", updatable = false)
    VisitId visitId;

    @Column(name = "customer_id", updatable = false)
    CustomerId customerId;

    @Column(name = "site_id", updatable = false)
    SiteId siteId;

    @Column(name = "surface_id", updatable = false)
    @Nullable
    SurfaceId surfaceId;

    @Column(updatable = false)
    String note;

    @Column(name = "customer_notified", updatable = false)
    boolean customerNotified;

    @Column(name = "opened_by", updatable = false)
    UserId openedBy;

    @Column(name = "opened_at", updatable = false)
    Instant openedAt;

    @Column(updatable = false)
    String fingerprint;

    @Column(name = "closed_at")
    @Nullable
    Instant closedAt;

    @Column(name = "withdrawn_at")
    @Nullable
    Instant withdrawnAt;

    @Column(name = "withdrawn_by")
    @Nullable
    UserId withdrawnBy;

    FindingRow() {}

    public FindingRow(NewFinding finding, Fingerprint fingerprint, Instant at) {
        this.id = finding.id().value();
        this.findingTypeCode = finding.type().value();
        this.severityCode = finding.severity().value();
        this.visitId = finding.visit();
        this.customerId = finding.customer();
        this.siteId = finding.site();
        this.surfaceId = finding.surface();
        this.note = finding.note();
        this.customerNotified = finding.customerNotified();
        this.openedBy = finding.by();
        this.openedAt = at;
        this.fingerprint = fingerprint.hex();
    }

    public FindingId id() {
        return new FindingId(id);
    }

    public String findingTypeCode() {
        return findingTypeCode;
    }

    public String severityCode() {
        return severityCode;
    }

    /** Refuses other content under this id, and the content of a withdrawn finding, which needs an id of its own. */
    public void requireSame(Fingerprint other) {
        if (!fingerprint.equals(other.hex())) {
            throw new KernelRefusal.IdTaken("finding", id, "of other content");
        }
        if (withdrawnAt != null) {
            throw new FindingRefusal.Withdrawn(id.toString());
        }
    }

    public void requireOpen() {
        if (withdrawnAt != null) {
            throw new FindingRefusal.Withdrawn(id.toString());
        }
        if (closedAt != null) {
            throw new FindingRefusal.AlreadyClosed(id.toString());
        }
    }

    public void close(Instant at) {
        this.closedAt = at;
    }

    public void withdraw(UserId by, Instant at) {
        this.withdrawnBy = by;
        this.withdrawnAt = at;
    }

    public FindingView toView(
            FindingType type, Severity severity, List<Photo> photos, List<FindingView.Action> actions) {
        return new FindingView(
                new FindingId(id),
                type,
                severity,
                status(),
                visitId,
                customerId,
                siteId,
                surfaceId,
                note,
                customerNotified,
                openedBy,
                openedAt,
                photos,
                actions);
    }

    Status status() {
        return withdrawnAt != null ? Status.WITHDRAWN : closedAt != null ? Status.CLOSED : Status.OPEN;
    }
}
