package eaveside.access;

import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Gives a user another name or role, or lets a deactivated one in again (whose tokens stay revoked). */
@Shared
public class ChangeUser {
    private final Users users;
    private final RecordAudit audit;

    @Inject
    public ChangeUser(Users users, RecordAudit audit) {
        this.users = users;
        this.audit = audit;
    }

    /**
     * Answers what is stored, with its version. Refuses another username, a version that another user has saved over, and
     * a change that would leave no active owner. A user who already is as asked stays as is: that is a retry.
     */
    @Transactional
    public User change(User wanted, UserId by) {
        UserRow row = users.lockedBesideOwners(wanted.id());
        User before = row.toUser();
        if (before.saysTheSameAs(wanted)) {
            return before;
        }
        if (!before.username().equals(wanted.username())) {
            throw new KernelRefusal.Fixed("user", "username");
        }
        if (before.version() != wanted.version()) {
            throw new KernelRefusal.Stale(wanted.what(), wanted, before);
        }
        users.requireAnOwnerBeside(before, wanted);
        users.write(row, wanted);
        if (!wanted.active()) {
            users.revokeTokens(wanted.id(), by);
        }
        audit.done(AuditEvent.done("user.changed", by, before.username())
                .with(before.role() + " " + state(before) + " to " + wanted.role() + " " + state(wanted)));
        return row.toUser();
    }

    private static String state(User user) {
        return user.active() ? "active" : "deactivated";
    }
}
