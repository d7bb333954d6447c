package eaveside.access;

import eaveside.access.internal.TokenRow;
import eaveside.access.internal.Tokens;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Ends a bearer token for good. */
@Shared
public class RevokeToken {
    private final Tokens tokens;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public RevokeToken(Tokens tokens, RecordAudit audit, Clock clock) {
        this.tokens = tokens;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Refuses an unknown token; one that was revoked before stays so.
     *
     * @param  by null from the command line
     */
    @Transactional
    public void revoke(TokenId id, @Nullable UserId by) {
        TokenRow row = tokens.locked(id);
        if (row.revoke(clock.instant(), by)) {
            audit.done(AuditEvent.done("token.revoked", by, id.toString()).with(row.label()));
        }
    }
}
