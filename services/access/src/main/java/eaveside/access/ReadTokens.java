package eaveside.access;

import eaveside.access.internal.AccessQueries;
import eaveside.access.internal.TokenRow;
import eaveside.access.internal.Tokens;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** The bearer tokens that were issued, without their secrets. */
@Shared
public class ReadTokens {
    private final AccessQueries queries;
    private final Tokens tokens;

    @Inject
    public ReadTokens(AccessQueries queries, Tokens tokens) {
        this.queries = queries;
        this.tokens = tokens;
    }

    /** Refuses an unknown id. */
    @Transactional
    public Token token(TokenId id) {
        return tokens.required(id).toToken();
    }

    /** Newest first. */
    @Transactional
    public List<Token> of(UserId user) {
        return queries.tokensOf(user).stream().map(TokenRow::toToken).toList();
    }
}
