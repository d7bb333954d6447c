package eaveside.access;

import eaveside.access.internal.TokenRow;
import eaveside.access.internal.Tokens;
import eaveside.access.internal.Users;
import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Gives a script a bearer token that acts as a user, until it expires or is revoked. */
@Dependent
public class IssueToken {
    /** The longest that a token is valid, in days. */
    public static final int LONGEST_DAYS = 366;

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
     * A token to be made.
     *
     * @param  user  whom it acts as, with that user's role at the time of use
     * @param  label what it is for, to know it by in a list
     * @param  days  of validity, 1 to {@link #LONGEST_DAYS}
     * @param  by    null from the command line
     */
    public record NewToken(
            TokenId id,
            UserId user,
            String label,
            int days,
            @Nullable UserId by) {
        public NewToken {
            Check check = new Check();
            label = check.required("label", label, 100);
            check.between("days", days, 1, LONGEST_DAYS);
            check.done();
        }
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
                .with(asked.label() + ", until " + expires));
        return new Issued(asked.id(), secret, expires);
    }
}
