package eaveside.ledger.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.UserId;
import eaveside.ledger.DocumentHead;
import eaveside.ledger.DocumentType;
import eaveside.ledger.DocumentView;
import eaveside.ledger.EntryLine;
import eaveside.ledger.NewDocument;
import eaveside.ledger.Posted;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A posted document of either ledger. */
@Entity
@Immutable
@Table(name = "document")
public class DocumentRow {
    @Id
    UUID id;

    @Enumerated(EnumType.STRING)
    DocumentType type;

    long number;

    @Column(name = "posting_date")
    LocalDate postingDate;

    @Column(name = "service_date")
    LocalDate serviceDate;

    @Nullable
    DocumentId reverses;

    String summary;

    @Column(name = "posted_by")
    UserId postedBy;

    @Column(name = "posted_at")
    Instant postedAt;

    String fingerprint;

    DocumentRow() {}

    public DocumentRow(NewDocument document, long number, LocalDate postingDate, Instant at) {
        this.id = document.id().value();
        this.type = document.type();
        this.number = number;
        this.postingDate = postingDate;
        this.serviceDate = document.serviceDate();
        DocumentId reversed = document.reverses();
        this.reverses = reversed;
        this.summary = document.summary();
        this.postedBy = document.by();
        this.postedAt = at;
        this.fingerprint = document.fingerprint().hex();
    }

    public DocumentId id() {
        return new DocumentId(id);
    }

    public boolean hasFingerprint(Fingerprint other) {
        return fingerprint.equals(other.hex());
    }

    public boolean isReversal() {
        return reverses != null;
    }

    public boolean isType(DocumentType... types) {
        return Arrays.asList(types).contains(type);
    }

    /** Such as "job sheet 12", for messages. */
    public String label() {
        return type.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + number;
    }

    public Posted toPosted() {
        return new Posted(new DocumentId(id), type, number, postingDate);
    }

    public DocumentHead toHead(@Nullable DocumentId reversedBy) {
        return new DocumentHead(toPosted(), serviceDate, summary, postedBy, postedAt, reversedBy);
    }

    public DocumentView toView(@Nullable DocumentId reversedBy, List<EntryLine> entries) {
        return new DocumentView(
                new DocumentId(id),
                type,
                number,
                postingDate,
                serviceDate,
                summary,
                postedBy,
                postedAt,
                reverses,
                reversedBy,
                entries);
    }
}
