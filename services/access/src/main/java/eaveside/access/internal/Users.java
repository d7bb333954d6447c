package eaveside.access.internal;

import eaveside.access.AccessRefusal;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.access.Username;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/**
 * Finds and locks users. Locks are taken in one order: owners by id, another user, an address's failures, a username's.
 */
@Shared
public class Users {
    private final EntityManager entities;
    private final AccessQueries queries;
    private final Clock clock;

    @Inject
    public Users(EntityManager entities, AccessQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    /**
     * Whether the user could be inserted: false where the id or the username is taken, also by a rival.
     *
     * @param  given whether somebody else has chosen the password
     */
    public boolean insertIfFree(
            UserId id, Username username, String name, Role role, String passwordHash, boolean given) {
        return entities.createNativeQuery(
                                "insert into app_user (id, username, name, role, password_hash, password_given, "
                                        + "version) values (:id, :username, :name, :role, :hash, :given, 1) on conflict do nothing")
                        .setParameter("id", id.value())
                        .setParameter("username", username.value())
                        .setParameter("name", name)
                        .setParameter("role", role.name())
                        .setParameter("hash", passwordHash)
                        .setParameter("given", given)
                        .executeUpdate()
                == 1;
    }

    public @Nullable UserRow find(UserId id) {
        return entities.find(UserRow.class, id.value());
    }

    public UserRow required(UserId id) {
        return existing(find(id), id.toString());
    }

    public UserRow locked(UserId id) {
        return existing(entities.find(UserRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE), id.toString());
    }

    public UserRow lockedByUsername(Username username) {
        UserRow found =
                queries.usersByUsername(username.value()).stream().findFirst().orElse(null);
        UserRow row = existing(found, username.value());
        entities.refresh(row, LockModeType.PESSIMISTIC_WRITE);
        return row;
    }

    /** The user, locked, and every active owner with them: two owners cannot deactivate each other at once. */
    public UserRow lockedBesideOwners(UserId id) {
        queries.lockableOwners(Role.OWNER)
                .setLockMode(LockModeType.PESSIMISTIC_WRITE)
                .getResultList();
        return locked(id);
    }

    /** Refuses a change after which no active owner is left; the owners are locked. */
    public void requireAnOwnerBeside(User before, User after) {
        boolean was = before.role() == Role.OWNER && before.active();
        boolean stays = after.role() == Role.OWNER && after.active();
        if (was
                && !stays
                && queries.activeUsers(Role.OWNER).stream()
                        .allMatch(owner -> owner.toUser().id().equals(before.id()))) {
            throw new AccessRefusal.LastOwner();
        }
    }

    /** Writes the user, whose version goes up. */
    public void write(UserRow row, User user) {
        row.become(user);
        entities.flush();
    }

    /** Ends every token of the user that is still in force. */
    public void revokeTokens(UserId user, @Nullable UserId by) {
        queries.tokensOf(user).forEach(token -> token.revoke(clock.instant(), by));
    }

    private static UserRow existing(@Nullable UserRow row, String asked) {
        if (row == null) {
            throw new KernelRefusal.NotFound("user", asked);
        }
        return row;
    }
}
