package eaveside.access.internal;

import eaveside.access.NewToken;
import eaveside.access.TokenId;
import eaveside.kernel.Digest;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Makes, hashes, stores and finds bearer tokens. */
@Shared
public class Tokens {
    /** Lets a scanner for leaked secrets know one of ours when it sees it. */
    private static final String PREFIX = "eaveside_";

    private final EntityManager entities;

    @Inject
    public Tokens(EntityManager entities) {
        this.entities = entities;
    }

    public static String newSecret() {
        return PREFIX + Secrets.random();
    }

    public static String hash(String secret) {
        return Digest.sha256(secret);
    }

    /** Whether the token could be inserted: false where the id is taken. */
    public boolean insertIfFree(NewToken token, String secret, Instant issued, Instant expires) {
        UserId by = token.by();
        return entities.createNativeQuery(
                                "insert into api_token (id, user_id, label, scope, hash, issued_at, issued_by, "
                                        + "expires_at) values (:id, :user, :label, :scope, :hash, :issued, cast(:by as uuid), :expires) "
                                        + "on conflict (id) do nothing")
                        .setParameter("id", token.id().value())
                        .setParameter("user", token.user().value())
                        .setParameter("label", token.label())
                        .setParameter("scope", token.scope().name())
                        .setParameter("hash", hash(secret))
                        .setParameter("issued", issued)
                        .setParameter("by", by == null ? null : by.toString())
                        .setParameter("expires", expires)
                        .executeUpdate()
                == 1;
    }

    public TokenRow required(TokenId id) {
        return existing(entities.find(TokenRow.class, id.value()), id);
    }

    public TokenRow locked(TokenId id) {
        return existing(entities.find(TokenRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE), id);
    }

    private static TokenRow existing(@Nullable TokenRow row, TokenId id) {
        if (row == null) {
            throw new KernelRefusal.NotFound("token", id);
        }
        return row;
    }
}
