package eaveside.access.internal;

import eaveside.access.Session;
import eaveside.access.SessionId;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A browser that has signed in. */
@Entity
@Table(name = "user_session")
public class SessionRow {
    @Id
    UUID id;

    @Column(name = "user_id", updatable = false)
    UserId userId;

    @Column(updatable = false)
    String hash;

    int credentials;

    @Column(name = "began_at", updatable = false)
    Instant beganAt;

    @Column(name = "seen_at")
    Instant seenAt;

    @Column(name = "ended_at")
    @Nullable
    Instant endedAt;

    @Column(name = "second_at", updatable = false)
    @Nullable
    Instant secondAt;

    @Column(updatable = false)
    String address;

    @Column(updatable = false)
    String agent;

    SessionRow() {}

    SessionRow(
            SessionId id,
            UserId user,
            String hash,
            int credentials,
            boolean strong,
            Instant now,
            String address,
            String agent) {
        this.id = id.value();
        this.userId = user;
        this.hash = hash;
        this.credentials = credentials;
        this.beganAt = now;
        this.seenAt = now;
        this.secondAt = strong ? now : null;
        this.address = address;
        this.agent = agent;
    }

    /** Asked by a method, since a row that was not read yet has no fields. */
    boolean isThe(SessionId session) {
        return id.equals(session.value());
    }

    public boolean isOf(UserId user) {
        return userId.equals(user);
    }

    public String address() {
        return address;
    }

    Session toSession() {
        return new Session(new SessionId(id), userId, beganAt, seenAt, address, agent);
    }
}
