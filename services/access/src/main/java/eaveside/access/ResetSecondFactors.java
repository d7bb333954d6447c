package eaveside.access;

import eaveside.access.internal.AppCodes;
import eaveside.access.internal.Passkeys;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Takes away the passkeys and the authenticator app of somebody who has lost them; the owner does it. Sessions end with them. */
@Shared
public class ResetSecondFactors {
    private final Users users;
    private final Passkeys passkeys;
    private final AppCodes codes;
    private final SignInGate gate;
    private final RecordAudit audit;

    @Inject
    public ResetSecondFactors(Users users, Passkeys passkeys, AppCodes codes, SignInGate gate, RecordAudit audit) {
        this.users = users;
        this.passkeys = passkeys;
        this.codes = codes;
        this.gate = gate;
        this.audit = audit;
    }

    /**
     * Where there is nothing to take away, nothing changes. Refuses one's own with {@link AccessRefusal.OwnReset}: that asks for the
     * password.
     *
     * @param  replaces the user's credentials as they were known ({@link ReadUsers#credentials}); where they are others by now,
     *     refused with {@link AccessRefusal.CredentialsChanged}
     */
    @Transactional
    public void reset(UserId id, int replaces, UserId by) {
        if (id.equals(by)) {
            throw new AccessRefusal.OwnReset();
        }
        UserRow row = users.locked(id);
        boolean app = codes.remove(id);
        if (passkeys.removeAll(id) || app) {
            if (row.credentials() != replaces) {
                throw new AccessRefusal.CredentialsChanged(); // and nothing is taken away
            }
            gate.secondStepTaken(id);
            row.endSessions();
            audit.done("second-factors.reset", by, row.toUser().username());
        }
    }
}
