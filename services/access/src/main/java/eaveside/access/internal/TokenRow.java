package eaveside.access.internal;

import eaveside.access.NewToken;
import eaveside.access.Token;
import eaveside.access.TokenId;
import eaveside.access.TokenScope;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A bearer token: its hash, whom it acts as, and until when. */
@Entity
@Table(name = "api_token")
public class TokenRow {
    @Id
    UUID id;

    @Column(name = "user_id", updatable = false)
    UserId userId;

    @Column(updatable = false)
    String label;

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    TokenScope scope;

    @Column(updatable = false)
    String hash;

    @Column(name = "issued_at", updatable = false)
    Instant issuedAt;

    @Column(name = "expires_at", updatable = false)
    Instant expiresAt;

    @Column(name = "revoked_at")
    @Nullable
    Instant revokedAt;

    @Column(name = "revoked_by")
    @Nullable
    UserId revokedBy;

    TokenRow() {}

    public UserId user() {
        return userId;
    }

    public TokenScope scope() {
        return scope;
    }

    public String label() {
        return label;
    }

    /** Whether it was made by this very request. */
    public boolean says(NewToken asked) {
        return userId.equals(asked.user())
                && label.equals(asked.label())
                && scope == asked.scope()
                && Duration.between(issuedAt, expiresAt).equals(Duration.ofDays(asked.days()));
    }

    /** Whether it was in force until now. */
    public boolean revoke(Instant at, @Nullable UserId by) {
        if (revokedAt != null) {
            return false;
        }
        this.revokedAt = at;
        this.revokedBy = by;
        return true;
    }

    public Token toToken() {
        return new Token(new TokenId(id), userId, label, scope, issuedAt, expiresAt, revokedAt);
    }
}
