package eaveside.visits.internal;

import eaveside.kernel.UserId;
import eaveside.visits.Acknowledgment;
import eaveside.visits.SentSheet;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** That the office has read a sent sheet. */
@Entity
@Immutable
@Table(name = "sent_sheet_read")
public class SentSheetReadRow {
    @Id
    @Column(name = "sent_sheet_id")
    UUID sentSheetId;

    String note;

    @Column(name = "read_by")
    UserId readBy;

    @Column(name = "read_at")
    Instant readAt;

    SentSheetReadRow() {}

    public SentSheetReadRow(Acknowledgment acknowledged, Instant at) {
        this.sentSheetId = acknowledged.sheet().value();
        this.note = acknowledged.note();
        this.readBy = acknowledged.by();
        this.readAt = at;
    }

    SentSheet.Reading toReading() {
        return new SentSheet.Reading(readBy, readAt, note);
    }
}
