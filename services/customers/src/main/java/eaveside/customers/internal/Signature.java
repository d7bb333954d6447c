package eaveside.customers.internal;

import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.time.Instant;
import java.util.UUID;

/** Who saved a row last, and when. */
@Embeddable
public record Signature(
        @Column(name = "changed_by") UUID by,
        @Column(name = "changed_at") Instant at) {
    public static Signature of(UserId by, Instant at) {
        return new Signature(by.value(), at);
    }
}
