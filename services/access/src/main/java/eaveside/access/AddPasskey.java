package eaveside.access;

import eaveside.access.internal.Passkeys;
import eaveside.access.internal.SignInGate;
import eaveside.kernel.Check;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Makes a passkey of a user's device good for signing in, or takes it away. */
@Shared
public class AddPasskey {
    private final Passkeys passkeys;
    private final SignInGate gate;
    private final ReadUsers users;
    private final RecordAudit audit;

    @Inject
    public AddPasskey(Passkeys passkeys, SignInGate gate, ReadUsers users, RecordAudit audit) {
        this.passkeys = passkeys;
        this.gate = gate;
        this.users = users;
        this.audit = audit;
    }

    @Transactional
    public PasskeyQuestion ask(UserId user, Site site) {
        return passkeys.askToMake(users.user(user), site);
    }

    /**
     * Takes the browser's answer; whoever made the passkey has shown it. Refuses with {@link AccessRefusal.BadPasskey} one that answers nothing that was asked, and
     * one that was made for another site.
     *
     * @param  credential the browser's {@code PublicKeyCredential}, as JSON
     */
    @Transactional
    public SignedIn add(UserId user, Site site, String name, String label, String credential) {
        Check check = new Check();
        String known = check.required("label", label, 100);
        check.done();
        SignedIn strong = passkeys.make(users.user(user), site, name, known, credential);
        audit.done(AuditEvent.done("passkey.added", user, users.user(user).username())
                .with(known));
        return strong;
    }

    /** Refuses one that is not of that user. */
    @Transactional
    public void remove(PasskeyId id, UserId user) {
        audit.done(AuditEvent.done("passkey.removed", user, users.user(user).username())
                .with(passkeys.remove(id, user)));
        gate.secondStepTaken(user);
    }
}
