package eaveside.access.internal;

import eaveside.kernel.Digest;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The browsers that users have signed in with before. */
@Shared
public class Browsers {
    /** Forgotten after so long without a sign-in. */
    public static final Duration REMEMBERED = Duration.ofDays(365);

    /** Of one user; more than the devices that somebody has. */
    private static final int MOST = 20;

    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public Browsers(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /** The digest of its secret, where that user has signed in with it. */
    Optional<String> known(UserId user, @Nullable String secret) {
        if (secret == null) {
            return Optional.empty();
        }
        String hash = Digest.sha256(secret);
        boolean is = count(
                        "select count(*) from known_browser where hash = :hash and user_id = :user "
                                + "and used_at > :horizon",
                        hash,
                        user)
                > 0;
        return is ? Optional.of(hash) : Optional.empty();
    }

    /** Knows the browser as that user's from now on; what it says is kept where it was made here, else it gets a secret of its own. */
    public String know(UserId user, @Nullable String said) {
        String secret = said != null && isOurs(said) ? said : Secrets.random();
        entities.createNativeQuery("insert into known_browser (user_id, hash, used_at) values (:user, :hash, :now) "
                        + "on conflict (user_id, hash) do update set used_at = excluded.used_at")
                .setParameter("user", user.value())
                .setParameter("hash", Digest.sha256(secret))
                .setParameter("now", Moments.asKept(clock.instant()))
                .executeUpdate();
        entities.createNativeQuery("delete from known_browser where user_id = :user and hash in (select hash "
                        + "from known_browser where user_id = :user order by used_at desc, hash offset " + MOST + ")")
                .setParameter("user", user.value())
                .executeUpdate();
        return secret;
    }

    /** Forgets all of that user's. */
    public void forget(UserId user) {
        entities.createNativeQuery("delete from known_browser where user_id = :user")
                .setParameter("user", user.value())
                .executeUpdate();
    }

    private boolean isOurs(String secret) {
        return count(
                        "select count(*) from known_browser where hash = :hash and used_at > :horizon",
                        Digest.sha256(secret),
                        null)
                > 0;
    }

    private long count(String sql, String hash, @Nullable UserId user) {
        var query = entities.createNativeQuery(sql, Long.class)
                .setParameter("hash", hash)
                .setParameter("horizon", Moments.asKept(clock.instant()).minus(REMEMBERED));
        if (user != null) {
            query.setParameter("user", user.value());
        }
        return (Long) query.getSingleResult();
    }
}
