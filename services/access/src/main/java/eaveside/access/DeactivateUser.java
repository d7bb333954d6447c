package eaveside.access;

import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Shuts a person out at once: no sign-in, sessions and tokens end. What they did keeps their name. */
@Shared
public class DeactivateUser {
    private final Users users;
    private final RecordAudit audit;

    @Inject
    public DeactivateUser(Users users, RecordAudit audit) {
        this.users = users;
        this.audit = audit;
    }

    /** Refuses the last active owner; someone deactivated already stays so. */
    @Transactional
    public User deactivate(UserId id, UserId by) {
        UserRow row = users.lockedBesideOwners(id);
        User before = row.toUser();
        if (!before.active()) {
            return before;
        }
        User after = before.with(before.role(), false);
        users.requireAnOwnerBeside(before, after);
        users.write(row, after);
        users.revokeTokens(id, by);
        audit.done("user.deactivated", by, before.username());
        return row.toUser();
    }
}
