package eaveside.access.internal;

import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
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

    AppRow() {}

    AppRow(UserId user, String secret) {
        this.userId = user.value();
        this.secret = secret;
    }
}
