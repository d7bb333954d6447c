package eaveside.access;

import eaveside.access.internal.AppCodes;
import eaveside.access.internal.SignInGate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Ties an authenticator app to a user, or takes it away. */
@Shared
public class SetUpApp {
    private final AppCodes codes;
    private final SignInGate gate;
    private final ReadUsers users;
    private final ReadCompanyWords companyWords;
    private final RecordAudit audit;

    @Inject
    public SetUpApp(
            AppCodes codes, SignInGate gate, ReadUsers users, ReadCompanyWords companyWords, RecordAudit audit) {
        this.codes = codes;
        this.gate = gate;
        this.users = users;
        this.companyWords = companyWords;
        this.audit = audit;
    }

    /**
     * A key for the app. It counts only once {@link #confirm} has seen a code of it; before, asking again gives another.
     * Refuses where an app is set up already.
     *
     * @param  session that has given the password for it: no other sees the key, and it only for ten minutes
     */
    @Transactional
    public AppKey begin(UserId user, SessionId session) {
        AppKey key = codes.begin(user, session, users.user(user).username(), companyName());
        audit.done("app.begun", user, users.user(user).username());
        return key;
    }

    /** The secret that is waiting for a code; refuses where none is. */
    @Transactional
    public AppKey pending(UserId user, SessionId session) {
        return codes.pending(user, session, users.user(user).username(), companyName());
    }

    /**
     * Takes a code of the app, whose codes count from now on; whoever entered it has shown it. Refuses a wrong one with
     * {@link AccessRefusal.WrongCode}.
     */
    @Transactional
    public SignedIn confirm(UserId user, SessionId session, String code) {
        SignedIn strong = codes.confirm(user, session, code);
        gate.forgetCodes(user);
        audit.done("app.set-up", user, users.user(user).username());
        return strong;
    }

    /** Takes the app away; where there is none, nothing changes. */
    @Transactional
    public void remove(UserId user) {
        if (codes.remove(user)) {
            gate.secondStepTaken(user);
            audit.done("app.removed", user, users.user(user).username());
        }
    }

    /** Shown by the app above the codes. */
    private String companyName() {
        return companyWords.words().stream().findFirst().orElse("Eaveside");
    }
}
