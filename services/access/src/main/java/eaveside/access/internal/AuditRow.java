package eaveside.access.internal;

import eaveside.access.AuditEvent;
import eaveside.access.AuditLine;
import eaveside.kernel.Ids;
import eaveside.kernel.PageKey;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A line of the audit log. */
@Entity
@Immutable
@Table(name = "audit_event")
public class AuditRow {
    @Id
    UUID id;

    Instant at;
    String action;

    @Enumerated(EnumType.STRING)
    AuditEvent.Outcome outcome;

    @Column(name = "user_id")
    @Nullable
    UserId userId;

    String subject;
    String detail;
    String address;

    AuditRow() {}

    public AuditRow(AuditEvent event, Instant at) {
        this.id = Ids.next();
        this.at = Moments.asKept(at);
        this.action = event.action();
        this.outcome = event.outcome();
        UserId by = event.by();
        this.userId = by;
        this.subject = event.subject();
        this.detail = event.detail();
        this.address = event.address();
    }

    String key() {
        return new PageKey<>(at, id).toString();
    }

    AuditLine toLine(@Nullable String byName) {
        return new AuditLine(at, userId, byName == null ? "" : byName, action, subject, detail, outcome, address);
    }
}
