package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.SentSheet;
import eaveside.visits.SheetToRecord;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A sheet that was sent and did not become its visit's, as it was sent. */
@Entity
@Immutable
@Table(name = "sent_sheet")
public class SentSheetRow {
    @Id
    UUID id;

    @Column(name = "visit_id")
    VisitId visitId;

    @Column(name = "sheet_id")
    @Nullable
    DocumentId sheetId;

    @Column(name = "sent_by")
    UserId sentBy;

    @Column(name = "sent_at")
    Instant sentAt;

    String refusal;

    boolean urgent;

    String fingerprint;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "sent_sheet_field", joinColumns = @JoinColumn(name = "sent_sheet_id"))
    @OrderColumn(name = "position")
    List<FieldPart> fields;

    /** A field of the form. */
    @Embeddable
    record FieldPart(String name, String value) {}

    SentSheetRow() {}

    /** @param  sheet the id that it would have been posted under; null where another sheet has it */
    SentSheetRow(SentSheetId id, SheetToRecord sent, @Nullable DocumentId sheet, Fingerprint fingerprint, Instant at) {
        this.id = id.value();
        this.visitId = sent.visit();
        this.sheetId = sheet;
        this.sentBy = sent.by();
        this.sentAt = at;
        this.refusal = sent.refusal();
        this.urgent = sent.urgent();
        this.fingerprint = fingerprint.hex();
        this.fields = sent.fields().stream()
                .map(field -> new FieldPart(field.name(), field.value()))
                .toList();
    }

    public SentSheetId id() {
        return new SentSheetId(id);
    }

    List<SentSheet.Field> fields() {
        return fields.stream()
                .map(part -> new SentSheet.Field(part.name(), part.value()))
                .toList();
    }
}
