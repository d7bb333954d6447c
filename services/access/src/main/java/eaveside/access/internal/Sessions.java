package eaveside.access.internal;

import eaveside.access.Admitted;
import eaveside.access.Session;
import eaveside.access.SessionId;
import eaveside.access.SessionLimits;
import eaveside.access.SignedIn;
import eaveside.kernel.Digest;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Makes, finds and ends sessions. */
@Shared
public class Sessions {
    private static final int LONGEST_AGENT = 300;

    /** Sessions that nobody has used for so long are deleted. */
    private static final Duration KEPT = Duration.ofDays(90);

    private final EntityManager entities;
    private final AccessQueries queries;
    private final Clock clock;

    @Inject
    public Sessions(EntityManager entities, AccessQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    public SessionId begin(SignedIn signedIn, String secret, String address, String agent) {
        SessionId id = SessionId.next();
        String named = agent.codePoints()
                .filter(c -> !Character.isISOControl(c))
                .limit(LONGEST_AGENT / 2)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        entities.persist(new SessionRow(
                id,
                signedIn.user().id(),
                Digest.sha256(secret),
                signedIn.credentials(),
                signedIn.strong(),
                Moments.asKept(clock.instant()),
                address,
                named));
        entities.flush();
        entities.createNativeQuery("delete from user_session where id in (select id from user_session "
                        + "where seen_at < :horizon limit 100 for update skip locked)")
                .setParameter("horizon", Moments.asKept(clock.instant()).minus(KEPT))
                .executeUpdate();
        return id;
    }

    /** Notes that it was seen, not more often than each {@link SessionLimits#STEP}. */
    public Optional<Admitted> admitted(String secret, boolean ownersNeedTwo) {
        return queries.sessions(Digest.sha256(secret)).stream()
                .findFirst()
                .flatMap(row -> userOf(row).map(user -> {
                    Instant now = Moments.asKept(clock.instant());
                    if (!now.isBefore(row.seenAt.plus(SessionLimits.STEP))) {
                        seen(row, now);
                    }
                    return user.toAdmitted(new SessionId(row.id), row.secondAt, ownersNeedTwo);
                }));
    }

    /** By a statement of its own: two requests of one session at once are no conflict. */
    private void seen(SessionRow row, Instant now) {
        entities.createNativeQuery("update user_session set seen_at = :now where id = :id and seen_at < :now")
                .setParameter("now", now)
                .setParameter("id", row.id)
                .executeUpdate();
    }

    private Optional<UserRow> userOf(SessionRow row) {
        UserRow user = entities.find(UserRow.class, row.userId.value());
        SessionLimits limits =
                user.owesSecondFactor(row.secondAt) ? SessionLimits.HALF_SIGNED_IN : SessionLimits.of(user.role);
        boolean lasts = row.endedAt == null
                && user.admits(row.credentials)
                && limits.allow(row.beganAt, row.seenAt, Moments.asKept(clock.instant()));
        return lasts ? Optional.of(user) : Optional.empty();
    }

    public List<Session> open(UserId user) {
        return queries.sessionsOf(user).stream()
                .filter(row -> userOf(row).isPresent())
                .map(SessionRow::toSession)
                .toList();
    }

    public @Nullable SessionRow locked(SessionId id) {
        return entities.find(SessionRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
    }

    public Optional<SessionRow> lockedBy(String secret) {
        return queries.sessions(Digest.sha256(secret)).stream().findFirst().map(row -> locked(new SessionId(row.id)));
    }

    /** Whether it was open until now. */
    public boolean end(SessionRow row) {
        if (row.endedAt != null) {
            return false;
        }
        row.endedAt = Moments.asKept(clock.instant());
        return true;
    }

    /** Ends every open session of the user but that one, if it is one of theirs; how many there were. */
    public int endOthers(UserId user, @Nullable SessionId kept) {
        return (int) queries.sessionsOf(user).stream()
                .filter(row -> kept == null || !row.id.equals(kept.value()))
                .filter(row -> userOf(row).isPresent())
                .filter(this::end)
                .count();
    }
}
