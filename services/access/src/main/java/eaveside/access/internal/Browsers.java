package eaveside.access.internal;

import eaveside.access.SignedIn;
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

    /** The digest of its secret, where that user has given the password with it. */
    Optional<String> known(UserId user, @Nullable String secret) {
        return known(user, secret, "");
    }

    /** The digest of its secret, where that user has shown the second step with it as well. */
    Optional<String> knownBySecondStep(UserId user, @Nullable String secret) {
        return known(user, secret, " and second_step");
    }

    private Optional<String> known(UserId user, @Nullable String secret, String also) {
        return Optional.ofNullable(secret)
                .map(Digest::sha256)
                .filter(hash -> count(
                                "select count(*) from known_browser where hash = :hash and user_id = :user "
                                        + "and used_at > :horizon" + also,
                                hash,
                                user)
                        > 0);
    }

    /**
     * Knows the browser as that user's from now on; what it says is kept where it was made here, else it gets a secret of its own. Beside
     * it those are kept in which the second step was shown, then those that were used last: the password alone pushes out none of the first.
     */
    public String know(SignedIn signedIn, @Nullable String said) {
        UserId user = signedIn.user().id();
        String secret = said != null && isOurs(said) ? said : Secrets.random();
        entities.createNativeQuery("insert into known_browser (user_id, hash, used_at, second_step) "
                        + "values (:user, :hash, :now, :strong) on conflict (user_id, hash) do update set "
                        + "used_at = excluded.used_at, second_step = known_browser.second_step or excluded.second_step")
                .setParameter("user", user.value())
                .setParameter("hash", Digest.sha256(secret))
                .setParameter("now", Moments.asKept(clock.instant()))
                .setParameter("strong", signedIn.strong())
                .executeUpdate();
        entities.createNativeQuery(
                        "delete from known_browser where user_id = :user and (used_at <= :horizon or hash in "
                                + "(select hash from known_browser where user_id = :user and used_at > :horizon "
                                + "order by hash = :hash desc, second_step desc, used_at desc, hash offset " + MOST
                                + "))")
                .setParameter("user", user.value())
                .setParameter("hash", Digest.sha256(secret))
                .setParameter("horizon", Moments.asKept(clock.instant()).minus(REMEMBERED))
                .executeUpdate();
        return secret;
    }

    /** Forgets all of that user's. */
    public void forget(UserId user) {
        entities.createNativeQuery("delete from known_browser where user_id = :user")
                .setParameter("user", user.value())
                .executeUpdate();
    }

    /** What was shown beside the password there counts no more. */
    void forgetSecondSteps(UserId user) {
        entities.createNativeQuery("update known_browser set second_step = false where user_id = :user and second_step")
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
