package eaveside.access;

import eaveside.kernel.UserId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A token as a list shows it. */
public record Token(
        TokenId id,
        UserId user,
        String label,
        TokenScope scope,
        Instant issued,
        Instant expires,
        @Nullable Instant revoked) {
    /** Whether it opens anything at that moment, its user being active. */
    public boolean isInForce(Instant at) {
        return revoked == null && at.isBefore(expires);
    }
}
