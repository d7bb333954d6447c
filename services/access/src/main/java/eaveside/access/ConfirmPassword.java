package eaveside.access;

import eaveside.access.internal.PasswordHasher;
import eaveside.access.internal.SignInGate;
import eaveside.access.internal.SignInGate.Candidate;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Asks somebody who is signed in for their password once more, before they change how they come in. */
@Shared
public class ConfirmPassword {
    private final ReadUsers users;
    private final SignInGate gate;
    private final PasswordHasher hasher;
    private final RecordAudit audit;

    @Inject
    public ConfirmPassword(ReadUsers users, SignInGate gate, PasswordHasher hasher, RecordAudit audit) {
        this.users = users;
        this.gate = gate;
        this.hasher = hasher;
        this.audit = audit;
    }

    /** Refuses like {@link SignIn#signIn}. */
    public void confirm(UserId id, char[] password, String address, @Nullable String browser) {
        User user = users.user(id);
        Candidate candidate = gate.admit(user.username(), address, browser);
        boolean right;
        try {
            right = hasher.matches(password, candidate.hash(), PasswordHasher.Caller.user(id))
                    && gate.complete(candidate, "password.confirmed", Optional.empty())
                            .isPresent();
        } catch (AccessRefusal.Busy busy) {
            gate.withdraw(candidate);
            throw busy;
        }
        if (!right) {
            audit.record(AuditEvent.refused("password.confirmed", id, user.username())
                    .from(address));
            throw new AccessRefusal.WrongCredentials();
        }
    }
}
