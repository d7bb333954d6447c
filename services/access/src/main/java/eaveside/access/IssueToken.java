package eaveside.access;

import eaveside.access.internal.TokenRow;
import eaveside.access.internal.Tokens;
import eaveside.access.internal.Users;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Gives a script a bearer token that acts as a user, until it expires or is revoked. */
@Shared
public class IssueToken {
    private final Users users;
    private final Tokens tokens;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public IssueToken(Users users, Tokens tokens, RecordAudit audit, Clock clock) {
        this.users = users;
        this.tokens = tokens;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The token itself, to be shown once: only its SHA-256 is kept.
     *
     * @param  secret goes into the header {@code Authorization: Bearer …}
     */
    public record Issued(TokenId id, String secret, Instant expires) {
        /** Never the secret. */
        @Override
        public String toString() {
            return "token " + id + " until " + expires;
        }
    }

    /**
     * Refuses a deactivated user. A retry cannot show the token again and is refused with
     * {@link AccessRefusal.AlreadyShown}.
     */
    @Transactional
    public Issued issue(NewToken asked) {
        User user = users.locked(asked.user()).toUser();
        if (!user.active()) {
            throw new KernelRefusal.NotActive("user", user.username(), "user");
        }
        Instant now = clock.instant();
        Instant expires = now.plus(Duration.ofDays(asked.days()));
        String secret = Tokens.newSecret();
        if (!tokens.insertIfFree(asked, secret, now, expires)) {
            TokenRow before = tokens.required(asked.id());
            throw before.says(asked)
                    ? new AccessRefusal.AlreadyShown(asked.id())
                    : new KernelRefusal.IdTaken("token", asked.id(), before.label());
        }
        audit.done(AuditEvent.done("token.issued", asked.by(), user.username())
                .with(asked.label() + ", " + asked.scope() + ", until " + expires.truncatedTo(ChronoUnit.SECONDS)));
        return new Issued(asked.id(), secret, expires);
    }
}
