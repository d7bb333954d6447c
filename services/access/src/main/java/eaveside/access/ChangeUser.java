package eaveside.access;

import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Gives a user another name or role, or lets a deactivated one in again (whose tokens stay revoked). */
@Dependent
public class ChangeUser {
    private final Users users;
    private final RecordAudit audit;

    @Inject
    public ChangeUser(Users users, RecordAudit audit) {
        this.users = users;
        this.audit = audit;
    }

    /**
     * How the user shall be.
     *
     * @param  version as read by {@link ReadUsers#versioned}
     */
    public record Change(UserId user, int version, String name, Role role, boolean active, UserId by) {
        public Change {
            name = Texts.required("name", name, 100);
        }
    }

    /**
     * Refuses where someone else changed the user meanwhile, and where no active owner would be left. A user who
     * already is as asked stays as is: that is a retry.
     */
    @Transactional
    public User change(Change asked) {
        UserRow row = users.lockedBesideOwners(asked.user());
        User before = row.toUser();
        User after = new User(before.id(), before.username(), asked.name(), asked.role(), asked.active());
        if (after.equals(before)) {
            return before;
        }
        if (row.version() != asked.version()) {
            throw new AccessRefusal.ChangedMeanwhile(before);
        }
        users.requireAnOwnerBeside(before, after);
        row.become(after);
        if (!after.active()) {
            users.revokeTokens(asked.user(), asked.by());
        }
        audit.recordWithin(AuditEvent.done("user.changed", asked.by(), before.username())
                .with(before.role() + " " + state(before) + " to " + after.role() + " " + state(after)));
        return after;
    }

    private static String state(User user) {
        return user.active() ? "active" : "deactivated";
    }
}
