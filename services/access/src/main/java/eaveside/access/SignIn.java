package eaveside.access;

import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.SignInGate.Candidate;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Checks a username and a password. Not transactional on purpose: the password is hashed between two short transactions,
 * so that a flood of attempts holds no database connections while it waits for its turn.
 */
@Shared
public class SignIn {
    private final SignInGate gate;
    private final PasswordHasher hasher;
    private final RecordAudit audit;

    @Inject
    public SignIn(SignInGate gate, PasswordHasher hasher, RecordAudit audit) {
        this.gate = gate;
        this.hasher = hasher;
        this.audit = audit;
    }

    /**
     * Whoever the username and the password are of. An unknown username takes the same time and gets the same answer as a
     * wrong password.
     *
     * @param  address the network address that the attempt comes from
     * @param  browser the secret of a browser that may have been let in before ({@link BeginSession.Begun#browser}); null for
     *     none. Guesses made elsewhere do not make such a browser wait
     * @throws AccessRefusal.WrongCredentials after counting a failure of the username and of the address, or of the known
     *     browser alone
     * @throws AccessRefusal.TooSoon where earlier failures still make this attempt wait; not counted
     * @throws AccessRefusal.Busy where too many passwords are being checked; not counted
     */
    public SignedIn signIn(String username, char[] password, String address, @Nullable String browser) {
        String typed = Username.normal(username);
        Candidate candidate = gate.admit(typed, address, browser);
        Optional<SignedIn> signedIn;
        try {
            signedIn = hasher.matches(password, candidate.hash(), candidate.caller())
                    ? gate.complete(candidate, "sign-in", hasher.stronger(password, candidate.hash()))
                    : Optional.empty();
        } catch (AccessRefusal.Busy busy) {
            gate.withdraw(candidate);
            throw busy;
        }
        return signedIn.orElseThrow(() -> refusal(candidate, address));
    }

    /** What was typed as an unknown username stays off the audit log: it may be a password in the wrong field. */
    private AccessRefusal refusal(Candidate candidate, String address) {
        audit.record(AuditEvent.refused(
                        "sign-in", candidate.user(), candidate.isKnown() ? candidate.username() : "unknown username")
                .from(address));
        return new AccessRefusal.WrongCredentials();
    }
}
