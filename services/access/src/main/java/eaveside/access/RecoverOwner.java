package eaveside.access;

import eaveside.access.internal.AppCodes;
import eaveside.access.internal.Browsers;
import eaveside.access.internal.Passkeys;
import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/**
 * Lets an owner in again who lost the password: for the command line, where being on the machine proves the right. The
 * trail shows that it happened.
 */
@Shared
public class RecoverOwner {
    private final Users users;
    private final PasswordHasher hasher;
    private final SignInGate gate;
    private final Browsers browsers;
    private final Passkeys passkeys;
    private final AppCodes codes;
    private final ReadCompanyWords companyWords;
    private final RecordAudit audit;

    @Inject
    public RecoverOwner(
            Users users,
            PasswordHasher hasher,
            SignInGate gate,
            Browsers browsers,
            Passkeys passkeys,
            AppCodes codes,
            ReadCompanyWords companyWords,
            RecordAudit audit) {
        this.users = users;
        this.hasher = hasher;
        this.gate = gate;
        this.browsers = browsers;
        this.passkeys = passkeys;
        this.codes = codes;
        this.companyWords = companyWords;
        this.audit = audit;
    }

    /**
     * Sets the password, reactivates the owner, ends their sessions and tokens, takes away their second factors and forgets the failures of the username. Refuses a
     * username that is unknown or not an owner's.
     */
    @Transactional
    public User recover(Username username, NewPassword password) {
        String hash = hasher.hash(password.characters());
        UserRow row = users.lockedByUsername(username);
        User before = row.toUser();
        if (before.role() != Role.OWNER) {
            throw new AccessRefusal.NotAnOwner(username.value());
        }
        password.requireUnlike(username, before.name(), companyWords.words());
        User after = before.with(before.role(), true);
        row.givePassword(hash);
        users.write(row, after);
        users.revokeTokens(after.id(), null);
        browsers.forget(after.id());
        passkeys.removeAll(after.id());
        codes.remove(after.id());
        gate.forget(username.value());
        audit.done(AuditEvent.done("owner.recovered", null, username.value()).with("from the command line"));
        return row.toUser();
    }
}
