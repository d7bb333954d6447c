package eaveside.access;

import eaveside.access.internal.AccessQueries;
import eaveside.access.internal.Tokens;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Tells whom a script's bearer token acts as. */
@Shared
public class AuthenticateToken {
    private final AccessQueries queries;
    private final Users users;
    private final Clock clock;

    @Inject
    public AuthenticateToken(AccessQueries queries, Users users, Clock clock) {
        this.queries = queries;
        this.users = users;
        this.clock = clock;
    }

    /**
     * The active user of a token in force. Every other token is refused alike with {@link AccessRefusal.BadToken}.
     *
     * @param  secret as it came in the header, without {@code Bearer}
     */
    @Transactional
    public Admitted authenticate(String secret) {
        return queries.tokensInForce(Tokens.hash(secret), clock.instant()).stream()
                .findFirst()
                .map(token -> users.required(token.user()).toAdmitted(token.scope()))
                .orElseThrow(AccessRefusal.BadToken::new);
    }
}
