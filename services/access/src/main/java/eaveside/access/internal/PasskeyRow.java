package eaveside.access.internal;

import eaveside.access.Passkey;
import eaveside.access.PasskeyId;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A passkey: its public half. */
@Entity
@Table(name = "passkey")
class PasskeyRow {
    @Id
    UUID id;

    @Column(name = "user_id", updatable = false)
    UserId userId;

    @Column(updatable = false)
    String label;

    @Column(updatable = false)
    String host;

    @Column(updatable = false)
    String origin;

    @Column(name = "credential_id", updatable = false)
    byte[] credentialId;

    @Column(name = "public_key", updatable = false)
    byte[] publicKey;

    @Column(name = "sign_count")
    long signCount;

    @Column(name = "added_at", updatable = false)
    Instant addedAt;

    @Column(name = "used_at")
    @Nullable
    Instant usedAt;

    PasskeyRow() {}

    Passkey toPasskey() {
        return new Passkey(new PasskeyId(id), label, addedAt, usedAt);
    }
}
