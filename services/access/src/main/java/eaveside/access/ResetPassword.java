package eaveside.access;

import eaveside.access.internal.Browsers;
import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Gives a user who forgot the password a new one; the owner does it, and tells the user. */
@Shared
public class ResetPassword {
    private final Users users;
    private final PasswordHasher hasher;
    private final SignInGate gate;
    private final Browsers browsers;
    private final ReadCompanyWords companyWords;
    private final RecordAudit audit;

    @Inject
    public ResetPassword(
            Users users,
            PasswordHasher hasher,
            SignInGate gate,
            Browsers browsers,
            ReadCompanyWords companyWords,
            RecordAudit audit) {
        this.users = users;
        this.hasher = hasher;
        this.gate = gate;
        this.browsers = browsers;
        this.companyWords = companyWords;
        this.audit = audit;
    }

    /**
     * Ends the user's sessions and tokens and forgets the failures of the username. The user has to choose another password at the
     * next sign-in. The same again, before they have, is a retry. Refuses one's own with {@link AccessRefusal.OwnReset}: that asks for the password.
     *
     * @param  replaces the user's credentials as they were known ({@link ReadUsers#credentials}); where they are others by now,
     *     refused with {@link AccessRefusal.CredentialsChanged}
     */
    @Transactional
    public void reset(UserId id, NewPassword password, int replaces, UserId by) {
        if (id.equals(by)) {
            throw new AccessRefusal.OwnReset();
        }
        String hash = hasher.hash(password.characters());
        UserRow row = users.locked(id);
        String given = row.givenPasswordHash();
        if (given != null && hasher.matches(password.characters(), given)) {
            return;
        }
        if (row.credentials() != replaces) {
            throw new AccessRefusal.CredentialsChanged();
        }
        User user = row.toUser();
        password.requireUnlike(new Username(user.username()), user.name(), companyWords.words());
        row.givePassword(hash);
        users.revokeTokens(id, by);
        browsers.forget(id);
        gate.forget(user.username());
        audit.done(AuditEvent.done("password.reset", by, user.username()));
    }
}
