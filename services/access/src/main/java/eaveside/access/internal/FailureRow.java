package eaveside.access.internal;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Duration;
import java.time.Instant;

/** The failures of a username or an address, and until when the next attempt has to wait. */
@Entity
@Table(name = "sign_in_failure")
class FailureRow {
    /** After so long without a failure the earlier ones no longer count. */
    static final Duration REMEMBERED = Duration.ofHours(24);

    @EmbeddedId
    FailureKey key;

    int failures;

    @Column(name = "last_at")
    Instant lastAt;

    @Column(name = "wait_until")
    Instant waitUntil;

    FailureRow() {}

    Instant waitUntil() {
        return waitUntil;
    }

    /** Counts an attempt as failed before its password is even looked at. */
    void count(Instant now) {
        if (lastAt.plus(REMEMBERED).isBefore(now)) {
            failures = 0;
        }
        failures++;
        lastAt = now;
        waitUntil = now.plus(key.type().waitAfter(failures));
    }

    /** The attempt was no failure after all; earlier ones stay counted. */
    void takeBack(Instant now) {
        failures = Math.max(0, failures - 1);
        waitUntil = now;
    }
}
