package eaveside.visits.internal;

import eaveside.kernel.DifferenceId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.Difference;
import eaveside.visits.DifferenceDecision;
import eaveside.visits.DifferenceKind;
import eaveside.visits.SkipReason;
import eaveside.visits.VisitRefusal;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A difference between plan and sheet, and what is decided about it. */
@Entity
@Table(name = "scope_difference")
public class DifferenceRow {
    @Id
    UUID id;

    @Column(name = "sheet_id", updatable = false)
    UUID sheetId;

    @Column(name = "visit_id", updatable = false)
    UUID visitId;

    @Column(updatable = false)
    int position;

    @Column(name = "visit_line_id", updatable = false)
    UUID visitLineId;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    DifferenceKind kind;

    @Column(updatable = false)
    BigDecimal quantity;

    @Column(updatable = false)
    String unit;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    @Nullable
    SkipReason reason;

    @Enumerated(EnumType.STRING)
    DifferenceDecision decision;

    @Column(name = "decided_by")
    @Nullable
    UUID decidedBy;

    @Column(name = "decided_at")
    @Nullable
    Instant decidedAt;

    String note;

    @Version
    int version;

    DifferenceRow() {}

    DifferenceRow(VisitId visit, DocumentId sheet, int position, ScopeDifferences.Found found) {
        this.id = DifferenceId.next().value();
        this.sheetId = sheet.value();
        this.visitId = visit.value();
        this.position = position;
        this.visitLineId = found.line().value();
        this.kind = found.kind();
        this.quantity = found.quantity().value();
        this.unit = found.quantity().unit().code();
        this.reason = found.reason();
        this.decision = DifferenceDecision.OPEN;
        this.note = "";
    }

    public DifferenceId id() {
        return new DifferenceId(id);
    }

    public VisitId visit() {
        return new VisitId(visitId);
    }

    public DocumentId sheet() {
        return new DocumentId(sheetId);
    }

    public VisitLineId line() {
        return new VisitLineId(visitLineId);
    }

    public Quantity quantity() {
        return Quantity.of(quantity, Unit.ofCode(unit));
    }

    public DifferenceDecision decision() {
        return decision;
    }

    public boolean isOf(VisitLineId asked) {
        return visitLineId.equals(asked.value());
    }

    public boolean hasVersion(int asked) {
        return version == asked;
    }

    public boolean says(DifferenceDecision asked, String why, UserId by) {
        return decision == asked && note.equals(why) && by.value().equals(decidedBy);
    }

    /** Refuses a decision that does not answer this kind of difference. */
    public void decide(DifferenceDecision answer, String why, UserId by, Instant at) {
        if (answer == DifferenceDecision.OPEN || !answer.suits(kind)) {
            throw new VisitRefusal.DecisionNotPossible(answer, kind);
        }
        decision = answer;
        note = why;
        decidedBy = by.value();
        decidedAt = at;
    }

    public Difference toDifference() {
        return new Difference(
                id(),
                visit(),
                sheet(),
                line(),
                kind,
                quantity(),
                reason,
                decision,
                decidedBy == null ? null : new UserId(decidedBy),
                decidedAt,
                note,
                version);
    }
}
