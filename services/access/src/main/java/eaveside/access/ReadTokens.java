package eaveside.access;

import eaveside.access.internal.AccessQueries;
import eaveside.access.internal.TokenRow;
import eaveside.access.internal.Tokens;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The bearer tokens that were issued, without their secrets. */
@Dependent
public class ReadTokens {
    private final AccessQueries queries;
    private final Tokens tokens;

    @Inject
    public ReadTokens(AccessQueries queries, Tokens tokens) {
        this.queries = queries;
        this.tokens = tokens;
    }

    /** A token as a list shows it. */
    public record Token(
            TokenId id,
            UserId user,
            String label,
            Instant issued,
            Instant expires,
            @Nullable Instant revoked) {
        /** Whether it opens anything at that moment, its user being active. */
        public boolean isInForce(Instant at) {
            return revoked == null && at.isBefore(expires);
        }
    }

    /** Refuses an unknown id. */
    @Transactional
    public Token token(TokenId id) {
        return tokens.required(id).toToken();
    }

    /** Newest first. */
    @Transactional
    public List<Token> of(UserId user) {
        return queries.tokensOf(user.value()).stream().map(TokenRow::toToken).toList();
    }
}
