package eaveside.access.internal;

import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A user's authenticator app. Its secret is kept as it is: codes are made from it, and whoever reads this table reads what it protects. */
@Entity
@Table(name = "authenticator_app")
class AppRow {
    @Id
    @Column(name = "user_id")
    UUID userId;

    String secret;

    @Column(name = "confirmed_at")
    @Nullable
    Instant confirmedAt;

    @Column(name = "last_step")
    long lastStep;

    @Column(name = "begun_at")
    Instant begunAt;

    /** Which session gave the password for it. */
    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "begun_in")
    @Nullable
    SessionRow begunIn;

    AppRow() {}

    AppRow(UserId user, String secret, Instant now, SessionRow session) {
        this.userId = user.value();
        begin(secret, now, session);
    }

    final void begin(String newSecret, Instant now, SessionRow session) {
        secret = newSecret;
        begunAt = now;
        begunIn = session;
    }
}
