package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.ScopeDecision;
import eaveside.visits.SkipReason;
import eaveside.visits.VisitRefusal;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A scope change, and what is decided about it. */
@Entity
@Table(name = "scope_change")
public class ScopeChangeRow {
    @Id
    UUID id;

    @Column(name = "sheet_id", updatable = false)
    DocumentId sheetId;

    @Column(name = "visit_id", updatable = false)
    VisitId visitId;

    @Column(updatable = false)
    int position;

    @Column(name = "visit_line_id", updatable = false)
    VisitLineId visitLineId;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    ScopeChangeType type;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity", updatable = false))
    @AttributeOverride(name = "unit", column = @Column(name = "unit", updatable = false))
    Quantity quantity;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    @Nullable
    SkipReason reason;

    @Enumerated(EnumType.STRING)
    ScopeDecision decision;

    @Column(name = "decided_by")
    @Nullable
    UserId decidedBy;

    @Column(name = "decided_at")
    @Nullable
    Instant decidedAt;

    String note;

    @Version
    int version;

    ScopeChangeRow() {}

    ScopeChangeRow(VisitId visit, DocumentId sheet, int position, ScopeChanges.Found found) {
        this.id = ScopeChangeId.next().value();
        this.sheetId = sheet;
        this.visitId = visit;
        this.position = position;
        this.visitLineId = found.line();
        this.type = found.type();
        this.quantity = found.quantity();
        this.reason = found.reason();
        this.decision = ScopeDecision.OPEN;
        this.note = "";
        this.version = 1;
    }

    public ScopeChangeId id() {
        return new ScopeChangeId(id);
    }

    public VisitId visit() {
        return visitId;
    }

    public DocumentId sheet() {
        return sheetId;
    }

    public VisitLineId line() {
        return visitLineId;
    }

    public Quantity quantity() {
        return quantity;
    }

    public ScopeDecision decision() {
        return decision;
    }

    public boolean isOf(VisitLineId asked) {
        return visitLineId.equals(asked);
    }

    public boolean hasVersion(int asked) {
        return version == asked;
    }

    public boolean says(ScopeDecision asked, String why, UserId by) {
        return decision == asked && note.equals(why) && by.equals(decidedBy);
    }

    /** Refuses a decision that does not suit this type of scope change. */
    public void decide(ScopeDecision answer, String why, UserId by, Instant at) {
        if (answer == ScopeDecision.OPEN || !answer.suits(type)) {
            throw new VisitRefusal.DecisionNotPossible(answer, type);
        }
        decision = answer;
        note = why;
        decidedBy = by;
        decidedAt = at;
    }

    public ScopeChange toScopeChange() {
        return new ScopeChange(
                id(),
                visit(),
                sheet(),
                line(),
                type,
                quantity(),
                reason,
                decision,
                decidedBy,
                decidedAt,
                note,
                version);
    }
}
